import type { RigId } from '../gear/ids.ts';
import { LETTERS } from '../gear/letter.ts';
import { readDate, readExact, readSettings } from '../gear/parse.ts';
import {
  also,
  type Fault,
  type Fields,
  fault,
  id,
  line,
  list,
  name,
  nullable,
  number,
  object,
  oneOf,
  type Reader,
  table,
  tagged,
  text,
  truth,
  whole,
  within,
} from '../gear/read.ts';
import { readCloud, readUtc } from '../light/readSky.ts';
import type { SiteId } from '../light/site.ts';
import { parseRatioLimit, parseTolerance } from '../science/sensorUnits.ts';
import { parseDuration, parseMillimetres, parseStops } from '../science/units.ts';
import { frameKey, type PlannedFrame } from './frame.ts';
import type { FrameKey, PlanId, SetId } from './ids.ts';
import {
  type Allowances,
  type ApertureRule,
  type HeatLimit,
  type Hold,
  type LightLimits,
  ORDERS,
  type Plan,
  type PlanEvening,
  type PlanSet,
  type Rest,
  type RestRule,
  type TurnPlace,
} from './plan.ts';

/*
 * What may be stored as a plan. The bounds are our own. A plan may be unfinished (no rigs yet, a
 * reference that was taken out): that is `preparePlan`'s to say, not a fault of the file.
 */

const MOST_NAME = 60;
const MOST_INTENT = 200;
const MOST_NOTE = 2000;
const MOST_SETS = 100;
const MOST_PASSES = 16;
const MOST_REPEATS = 64;
/** More than any evening holds; what is worked out at each tap stays quick. */
const MOST_FRAMES = 2000;
const MOST_STOPS = 10;
const HOUR_S = 3600;
const DAY_S = 86_400;

const readStops = number(parseStops, -MOST_STOPS, MOST_STOPS, 'stop');

const readApertureRule: Reader<ApertureRule> = object<ApertureRule>({
  rule: oneOf(['same-f-number', 'same-depth-of-field']),
  plus: readStops,
});

const readHold: Reader<Hold> = tagged<Hold, 'kind'>('kind', {
  'same-iso-and-time': object<Extract<Hold, { kind: 'same-iso-and-time' }>>({
    kind: oneOf(['same-iso-and-time']),
    aperture: readApertureRule,
  }),
  'same-picture': object<Extract<Hold, { kind: 'same-picture' }>>({
    kind: oneOf(['same-picture']),
  }),
  'same-exposure': object<Extract<Hold, { kind: 'same-exposure' }>>({
    kind: oneOf(['same-exposure']),
  }),
  free: object<Extract<Hold, { kind: 'free' }>>({
    kind: oneOf(['free']),
    settings: table(id<RigId>(), readSettings, LETTERS.length),
  }),
});

/** A reader for each field of a set, for a form that checks a field as it is left. */
export const setFields: Fields<PlanSet> = {
  id: id<SetId>(),
  intent: line(MOST_INTENT),
  kind: oneOf(['light', 'capped-dark', 'flat', 'capped-series']),
  reference: id<RigId>(),
  settings: readSettings,
  targetOffset: readStops,
  framing: oneOf(['width', 'height', 'diagonal', 'pixels-per-degree']),
  hold: readHold,
  passes: whole(1, MOST_PASSES),
  repeats: whole(1, MOST_REPEATS),
  restBeforeS: nullable(number(parseDuration, 0, DAY_S, 's')),
};

export const readSet: Reader<PlanSet> = object<PlanSet>(setFields);

/** A reader for each allowance, in seconds. */
export const allowanceFields: Fields<Allowances> = {
  swapS: number(parseDuration, 0, HOUR_S, 's'),
  reframeS: number(parseDuration, 0, HOUR_S, 's'),
  dialChangeS: number(parseDuration, 0, HOUR_S, 's'),
  settleS: number(parseDuration, 0, HOUR_S, 's'),
  writeS: number(parseDuration, 0, HOUR_S, 's'),
};

/** A reader for each field of the rule of thumb. */
export const restRuleFields: Fields<RestRule> = {
  factor: number((value) => value, 0, 10),
  offUpToS: number(parseDuration, 0, DAY_S, 's'),
  longestS: number(parseDuration, 0, DAY_S, 's'),
};

/** A reader for each field of the limit on heat. */
export const heatLimitFields: Fields<HeatLimit> = {
  tolerated: number(parseTolerance, 0.001, MOST_STOPS, 'stop'),
  unknownRatio: number(parseRatioLimit, 1.001, 100),
  longestS: number(parseDuration, 0, DAY_S, 's'),
};

const readRest: Reader<Rest> = tagged<Rest, 'kind'>('kind', {
  none: object<Extract<Rest, { kind: 'none' }>>({ kind: oneOf(['none']) }),
  thumb: object<Extract<Rest, { kind: 'thumb' }>>({
    kind: oneOf(['thumb']),
    rule: object<RestRule>(restRuleFields),
  }),
  limit: object<Extract<Rest, { kind: 'limit' }>>({
    kind: oneOf(['limit']),
    limit: object<HeatLimit>(heatLimitFields),
  }),
});

const readTurnPlace: Reader<TurnPlace> = object<TurnPlace>({
  set: id<SetId>(),
  rig: nullable(id<RigId>()),
});

/** A reader for each field of the evening that a plan is for. */
export const eveningFields: Fields<PlanEvening> = {
  site: id<SiteId>(),
  date: readDate,
  startMs: nullable(readUtc),
  cloud: readCloud,
};

/** A reader for each limit of the light, in stops. */
export const lightFields: Fields<LightLimits> = {
  tolerance: number(parseStops, 0.05, MOST_STOPS, 'stop'),
  mostFade: number(parseStops, 0.01, MOST_STOPS, 'stop'),
};

/** A reader for each field of a plan, for a form that checks a field as it is left. */
export const planFields: Fields<Plan> = {
  id: id<PlanId>(),
  name: name(MOST_NAME),
  note: text(MOST_NOTE),
  rigs: list(id<RigId>(), LETTERS.length),
  sets: list(readSet, MOST_SETS),
  order: oneOf(ORDERS),
  oneRigAtATime: truth,
  arranged: nullable(list(readTurnPlace, MOST_FRAMES)),
  locked: list(id<SetId>(), MOST_SETS),
  swapWorth: number(parseStops, 0, MOST_STOPS, 'stop'),
  allowances: object<Allowances>(allowanceFields),
  rest: readRest,
  nearestSubjectMm: nullable(number(parseMillimetres, 10, 1e9, 'mm')),
  axesApartMm: nullable(number(parseMillimetres, 1, 10_000, 'mm')),
  evening: nullable(object<PlanEvening>(eveningFields)),
  light: object<LightLimits>(lightFields),
  invented: truth,
};

/** The place in a list of the first id that stands twice. */
function twice(listName: string, ids: readonly string[]): Fault | null {
  const index = ids.findIndex((one, place) => ids.indexOf(one) !== place);
  const repeated = ids[index];
  return repeated === undefined
    ? null
    : within(listName, within(`[${index}]`, fault('id-twice', { id: repeated })));
}

/** The frames that a plan comes to; a capped dark has the passes of the set before it. */
function frameCount({ rigs, sets }: Plan): number {
  let frames = 0;
  let passes = 0;
  for (const set of sets) {
    if (set.kind !== 'capped-dark') passes = set.passes;
    frames += passes * set.repeats * rigs.length;
  }
  return frames;
}

/** A plan in which no rig and no set stands twice, of a length that an evening could hold. */
export const readPlan: Reader<Plan> = also(object<Plan>(planFields), (plan) => {
  const repeated =
    twice('rigs', plan.rigs) ??
    twice(
      'sets',
      plan.sets.map((set) => set.id),
    );
  if (repeated) return repeated;
  if (plan.oneRigAtATime && plan.order !== 'rig-by-rig') {
    return within('oneRigAtATime', fault('order-comes-back'));
  }
  return frameCount(plan) > MOST_FRAMES
    ? within('sets', fault('too-many-frames', { most: MOST_FRAMES }))
    : null;
});

const readKey: Reader<FrameKey> = (value) =>
  typeof value === 'string' ? (value as FrameKey) : fault('not-text');

/** A planned frame whose name says what it is. */
export const readPlannedFrame: Reader<PlannedFrame> = also(
  object<PlannedFrame>({
    key: readKey,
    set: id<SetId>(),
    rig: id<RigId>(),
    pass: whole(1, MOST_PASSES),
    repeat: whole(1, MOST_REPEATS),
    visit: whole(1, MOST_FRAMES),
    settings: readSettings,
    exact: readExact,
  }),
  ({ key, set, rig, pass, repeat }) =>
    key === frameKey(set, rig, pass, repeat) ? null : within('key', fault('key-not-of-this-frame')),
);
