import type { RigId } from '../gear/ids.ts';
import type { Settings } from '../gear/settings.ts';
import type { SiteId } from '../light/site.ts';
import type { SkyCondition } from '../science/cloud.ts';
import type { Millimetres, Seconds, Stops, UtcMs } from '../science/units.ts';
import type { PlanId, SetId } from './ids.ts';

/** How the aperture of the other rigs follows the reference when ISO and time are held. */
export interface ApertureRule {
  readonly rule: 'same-f-number' | 'same-depth-of-field';
  /** Stops from there; positive opens the aperture. */
  readonly plus: Stops;
}

/** What a set keeps equal between rigs. */
export type Hold =
  | { readonly kind: 'same-iso-and-time'; readonly aperture: ApertureRule }
  | { readonly kind: 'same-picture' }
  | { readonly kind: 'same-exposure' }
  | { readonly kind: 'free'; readonly settings: Readonly<Record<RigId, Settings>> };

/** Which dimension of the frames is made to coincide. */
export type Framing = 'width' | 'height' | 'diagonal' | 'pixels-per-degree';

export type SetKind = 'light' | 'capped-dark' | 'flat';

/** One line of the shot list: the frames of one intent. */
export interface PlanSet {
  readonly id: SetId;
  readonly intent: string;
  /** A capped dark takes ISO and time of the light set before it and follows each of its visits. */
  readonly kind: SetKind;
  readonly reference: RigId;
  readonly settings: Settings;
  /** Where the exposure should lie against the metered one; -2 = two stops under. */
  readonly targetOffset: Stops;
  readonly framing: Framing;
  readonly hold: Hold;
  readonly passes: number;
  readonly repeats: number;
}

/** The named orders of frames. */
export const ORDERS = [
  'rig-by-rig',
  'forward',
  'mirror',
  'alternate',
  'double-mirror',
  'side-by-side',
] as const;
/**
 * 'forward' is A B, 'mirror' A B B A, 'alternate' A B A B, 'double-mirror'
 * A B B A B A A B; three and four rigs follow the same pattern.
 */
export type OrderName = (typeof ORDERS)[number];

/** Times that the hands and the camera need besides exposing. */
export interface Allowances {
  readonly swapS: Seconds;
  readonly dialChangeS: Seconds;
  readonly settleS: Seconds;
  readonly writeS: Seconds;
}

/** The trade's rule of thumb: rest as long as you exposed (common practice, no source). */
export interface RestRule {
  readonly on: boolean;
  /** Rest as a multiple of the exposure. */
  readonly factor: number;
  /** No rest up to and including this exposure. */
  readonly offUpToS: Seconds;
  /** Never longer than this. */
  readonly longestS: Seconds;
}

/** Where and when a list is meant to be shot. */
export interface PlanEvening {
  readonly site: SiteId;
  /** Of the noon before the evening, YYYY-MM-DD by the site's calendar. */
  readonly date: string;
  /** When the first act begins; null = when the light is right for the list. */
  readonly startMs: UtcMs | null;
  /** What the sky is expected to be like; null = nobody has said. */
  readonly cloud: SkyCondition | null;
}

/** How far the light may stray before the plan says so. */
export interface LightLimits {
  /** How far a set may come out from what is meant, either way. */
  readonly tolerance: Stops;
  /** How much the light may change between the two frames of a pair. */
  readonly mostFade: Stops;
}

export interface Plan {
  readonly id: PlanId;
  readonly name: string;
  readonly note: string;
  readonly rigs: readonly RigId[];
  readonly sets: readonly PlanSet[];
  readonly order: OrderName;
  readonly allowances: Allowances;
  readonly rest: RestRule;
  /** Distance of the nearest subject that counts; null = not stated. */
  readonly nearestSubjectMm: Millimetres | null;
  /** How far the lens axes of two rigs stand apart on the tripod; null = not stated. */
  readonly axesApartMm: Millimetres | null;
  /** Null = not stated; the light then stays unknown. */
  readonly evening: PlanEvening | null;
  readonly light: LightLimits;
  readonly invented: boolean;
}
