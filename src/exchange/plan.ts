import type { RigId } from '../gear/ids.ts';
import { readExact, readSettings } from '../gear/parse.ts';
import {
  also,
  fault,
  id,
  list,
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
import type { PlannedFrame } from '../plan/frame.ts';
import type { FrameKey, PlanId, SetId } from '../plan/ids.ts';
import {
  type Allowances,
  type ApertureRule,
  type Hold,
  ORDERS,
  type Plan,
  type PlanSet,
  type RestRule,
} from '../plan/plan.ts';
import { parseDuration, parseMillimetres, parseStops } from '../science/units.ts';

/*
 * Plans from unknown JSON. A plan that cannot be shot (a reference that is not
 * among its rigs, settings off the dials) is read all the same: `prepare` says
 * what is wrong with it, and an unfinished plan must survive a backup. The bounds
 * are our own and far from any real evening.
 */

const MOST_TEXT = 20_000;
const MOST_SETS = 500;
const MOST_RIGS = 50;
/** Ends of any list of frames that one evening could hold. */
export const MOST_FRAMES = 100_000;
const MOST_STOPS = 40;
const DAY_S = 86_400;

const readStops = number(parseStops, -MOST_STOPS, MOST_STOPS);
const readDuration = number(parseDuration, 0, DAY_S);
const readCount = whole(1, 1000);

const readApertureRule = object<ApertureRule>({
  rule: oneOf(['same-f-number', 'same-depth-of-field']),
  plus: readStops,
});

type HoldOf<K extends Hold['kind']> = Extract<Hold, { kind: K }>;

const readHold: Reader<Hold> = tagged<Hold, 'kind'>('kind', {
  'same-iso-and-time': object<HoldOf<'same-iso-and-time'>>({
    kind: oneOf(['same-iso-and-time']),
    aperture: readApertureRule,
  }),
  'same-picture': object<HoldOf<'same-picture'>>({ kind: oneOf(['same-picture']) }),
  'same-exposure': object<HoldOf<'same-exposure'>>({ kind: oneOf(['same-exposure']) }),
  free: object<HoldOf<'free'>>({
    kind: oneOf(['free']),
    settings: table(id<RigId>(), readSettings, MOST_RIGS),
  }),
});

const readSet: Reader<PlanSet> = object<PlanSet>({
  id: id<SetId>(),
  intent: text(MOST_TEXT),
  kind: oneOf(['light', 'capped-dark', 'flat']),
  reference: id<RigId>(),
  settings: readSettings,
  targetOffset: readStops,
  framing: oneOf(['width', 'height', 'diagonal', 'pixels-per-degree']),
  hold: readHold,
  passes: readCount,
  repeats: readCount,
});

const readAllowances = object<Allowances>({
  swapS: readDuration,
  dialChangeS: readDuration,
  settleS: readDuration,
  writeS: readDuration,
});

const readRest = object<RestRule>({
  on: truth,
  factor: number((value) => value, 0, 100),
  offUpToS: readDuration,
  longestS: readDuration,
});

/** A plan; no set's id may stand twice. */
export const readPlan: Reader<Plan> = also(
  object<Plan>({
    id: id<PlanId>(),
    name: text(MOST_TEXT),
    note: text(MOST_TEXT),
    rigs: list(id<RigId>(), MOST_RIGS),
    sets: list(readSet, MOST_SETS),
    order: oneOf(ORDERS),
    allowances: readAllowances,
    rest: readRest,
    nearestSubjectMm: nullable(number(parseMillimetres, 1, 1e12)),
    axesApartMm: nullable(number(parseMillimetres, 0.1, 1e9)),
    invented: truth,
  }),
  ({ sets }) => {
    const seen = new Set<SetId>();
    for (const [index, set] of sets.entries()) {
      if (seen.has(set.id)) {
        return within(`sets[${index}]`, within('id', fault('id-twice', { id: set.id })));
      }
      seen.add(set.id);
    }
    return null;
  },
);

/** The name of a planned frame: ids and counts joined by strokes. */
export const readFrameKey: Reader<FrameKey> = (value) =>
  typeof value === 'string' && /^[\w.~:/-]{1,400}$/.test(value)
    ? (value as FrameKey)
    : fault('not-an-id');

/** One frame of the shot list in its place in the order. */
export const readPlannedFrame: Reader<PlannedFrame> = object<PlannedFrame>({
  key: readFrameKey,
  set: id<SetId>(),
  rig: id<RigId>(),
  pass: readCount,
  repeat: readCount,
  visit: whole(1, MOST_FRAMES),
  settings: readSettings,
  exact: readExact,
});
