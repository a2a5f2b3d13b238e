import type { RigId } from '../gear/ids.ts';
import type { Settings } from '../gear/settings.ts';
import type { SiteId } from '../light/site.ts';
import type { SkyCondition } from '../science/cloud.ts';
import type { SnrStops } from '../science/sensorUnits.ts';
import type { Millimetres, Ratio, Seconds, Stops, UtcMs } from '../science/units.ts';
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

/**
 * A capped series is shot before the list, cap on, by all rigs at once and on no tripod: to warm
 * them up, or to learn how a body warms. Nothing is compared in it.
 */
export type SetKind = 'light' | 'capped-dark' | 'flat' | 'capped-series';

/** Whether its frames are shot under the cap, so that no light and no pair is to be judged. */
export const isCapped = (kind: SetKind | undefined): boolean =>
  kind === 'capped-dark' || kind === 'capped-series';

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
  /** A rig waits so long before each visit's first frame, counted from its last one; null = not asked for. */
  readonly restBeforeS: Seconds | null;
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

/**
 * How the rigs stand: one tripod and swaps, all side by side, or one rig at a time, which does not
 * come back once it has left the tripod.
 */
export const MOUNTINGS = ['swaps', 'side-by-side', 'one-rig-at-a-time'] as const;
export type Mounting = (typeof MOUNTINGS)[number];

export const mountingOf = ({
  order,
  oneRigAtATime,
}: Pick<Plan, 'order' | 'oneRigAtATime'>): Mounting =>
  order === 'side-by-side' ? order : oneRigAtATime ? 'one-rig-at-a-time' : 'swaps';

/** One rig's frames of one set in one pass, capped darks included; side by side (null) those of all rigs. */
export interface TurnPlace {
  readonly set: SetId;
  readonly rig: RigId | null;
}

/** Times that the hands and the camera need besides exposing. */
export interface Allowances {
  readonly swapS: Seconds;
  /** Finding the framing again after a swap. */
  readonly reframeS: Seconds;
  readonly dialChangeS: Seconds;
  readonly settleS: Seconds;
  readonly writeS: Seconds;
}

/** The trade's rule of thumb: rest as long as you exposed (common practice, no source). */
export interface RestRule {
  /** Rest as a multiple of the exposure. */
  readonly factor: number;
  /** No rest up to and including this exposure. */
  readonly offUpToS: Seconds;
  /** Never longer than this. */
  readonly longestS: Seconds;
}

/**
 * How long a rig rests before a frame. By the limit it cools until its next frame has at most so
 * much more dark current than a rested body's first such frame.
 */
export type Rest =
  | { readonly kind: 'none' }
  | { readonly kind: 'thumb'; readonly rule: RestRule }
  | { readonly kind: 'limit'; readonly limit: HeatLimit };

/** How much heat is let pass, and how long one waits for it at most. */
export interface HeatLimit {
  /** By how much the noise of the shadows may grow, where their light is known. */
  readonly tolerated: SnrStops;
  /** The ratio of dark currents where it is not. */
  readonly unknownRatio: Ratio;
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
  /** A rig that has left the tripod does not come back; 'rig-by-rig' is the only order for it. */
  readonly oneRigAtATime: boolean;
  /**
   * Turns in an order of their own, from a search or by hand; null = the named order. Turns that the
   * list no longer has are passed over, those that it lacks come last in the named order.
   */
  readonly arranged: readonly TurnPlace[] | null;
  /** Sets whose turns keep their places when an order is looked for. */
  readonly locked: readonly SetId[];
  /** What sparing a swap is worth when an order is looked for, in stops by which a pair is unfair. */
  readonly swapWorth: Stops;
  readonly allowances: Allowances;
  readonly rest: Rest;
  /** Distance of the nearest subject that counts; null = not stated. */
  readonly nearestSubjectMm: Millimetres | null;
  /** How far the lens axes of two rigs stand apart on the tripod; null = not stated. */
  readonly axesApartMm: Millimetres | null;
  /** Null = not stated; the light then stays unknown. */
  readonly evening: PlanEvening | null;
  readonly light: LightLimits;
  readonly invented: boolean;
}
