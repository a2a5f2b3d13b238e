import type { RigId } from '../gear/ids.ts';
import type { Settings } from '../gear/settings.ts';
import { tolerance } from '../science/sensorUnits.ts';
import { duration, ratio, type Stops, stops } from '../science/units.ts';
import type { PlanId, SetId } from './ids.ts';
import { DEFAULT_PASSES } from './passes.ts';
import type {
  Allowances,
  HeatLimit,
  Hold,
  LightLimits,
  OrderName,
  Plan,
  PlanSet,
  RestRule,
} from './plan.ts';

/** What hands in gloves need in the dark, in seconds (common practice, no source). */
export const DEFAULT_ALLOWANCES: Allowances = {
  swapS: duration(60),
  reframeS: duration(30),
  dialChangeS: duration(15),
  settleS: duration(5),
  writeS: duration(2),
};

/** Rest as long as you exposed, for exposures over 64 s, ten minutes at most (common practice, no source). */
export const DEFAULT_REST: RestRule = {
  factor: 1,
  offUpToS: duration(64),
  longestS: duration(600),
};

/**
 * A fiftieth of a stop of noise is less than anybody sees; a quarter more dark current where the
 * light of the shadows is unknown; ten minutes at most (our choice).
 */
export const DEFAULT_HEAT_LIMIT: HeatLimit = {
  tolerated: tolerance(0.02),
  unknownRatio: ratio(1.25),
  longestS: duration(600),
};

/** A swap is an occasion for mistakes of framing and focus (our choice). */
export const DEFAULT_SWAP_WORTH: Stops = stops(0.02);

/** The usual choice when noise is the question (common practice, no source). */
export const DEFAULT_HOLD: Hold = {
  kind: 'same-iso-and-time',
  aperture: { rule: 'same-f-number', plus: stops(0) },
};

/**
 * A raw file takes a stop either way without losing what the set is about; a pair that the light
 * parts by less than a third of a stop is parted by less than a click of the dial (our choice).
 */
export const DEFAULT_LIGHT: LightLimits = { tolerance: stops(1), mostFade: stops(1 / 3) };

const DEFAULT_ORDER: OrderName = 'mirror';

/** A plan with no sets yet, for these rigs. */
export const newPlan = (id: PlanId, name: string, rigs: readonly RigId[]): Plan => ({
  id,
  name,
  note: '',
  rigs,
  sets: [],
  order: DEFAULT_ORDER,
  oneRigAtATime: false,
  arranged: null,
  locked: [],
  swapWorth: DEFAULT_SWAP_WORTH,
  allowances: DEFAULT_ALLOWANCES,
  rest: { kind: 'thumb', rule: DEFAULT_REST },
  nearestSubjectMm: null,
  axesApartMm: null,
  evening: null,
  light: DEFAULT_LIGHT,
  invented: false,
});

/** A light set with the passes usual in an order, one repeat, and the default hold. */
export const newSet = (
  id: SetId,
  reference: RigId,
  settings: Settings,
  order: OrderName = DEFAULT_ORDER,
): PlanSet => ({
  id,
  intent: '',
  kind: 'light',
  reference,
  settings,
  targetOffset: stops(0),
  framing: 'diagonal',
  hold: DEFAULT_HOLD,
  passes: DEFAULT_PASSES[order],
  repeats: 1,
  restBeforeS: null,
});
