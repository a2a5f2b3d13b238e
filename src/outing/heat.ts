import { thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble } from '../gear/rig.ts';
import { HEAT_MODES, type HeatMode, partLeft, type ThermalModel } from '../science/heat.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import {
  cornerModels,
  type Ranged,
  type ThermalRange,
  usualModel,
} from '../science/thermalRange.ts';
import type { Seconds } from '../science/units.ts';
import type { MadeId } from './ids.ts';
import type { Instant } from './instant.ts';
import { perState } from './perState.ts';
import {
  type Clock,
  type Courses,
  coursesOf,
  gapBetween,
  type HeatDoubt,
  type RigCourse,
} from './rigCourse.ts';
import type { RunState } from './state.ts';

/*
 * Heat from what really happened, in stops of dark current over each rig's own rested state; never
 * to be added to stops of exposure.
 *
 * A sensor's heat is a mean of the plateaus of all it went through, each weighted by how lately: y =
 * sum of share x plateau, with the shares summing to 1. The shares depend on tau alone, so that one
 * walk for each tau gives the heat under every model of a range, exactly.
 */

/** What part of each mode's plateau a sensor has taken on. They sum to 1. */
export type Shares = Readonly<Record<HeatMode, number>>;

const RESTED: Shares = { off: 1, idle: 0, exposing: 0, 'live-view': 0 };

/** The shares after a time in a mode. Exact, so that steps compose. */
export function sharesAfter(from: Shares, mode: HeatMode, dt: number, tau: Seconds): Shares {
  const left = partLeft(dt, tau);
  const after = {
    off: from.off * left,
    idle: from.idle * left,
    exposing: from.exposing * left,
    'live-view': from['live-view'] * left,
  };
  after[mode] += 1 - left;
  return after;
}

const heatUnder = (shares: Shares, { plateaus }: ThermalModel): Doublings =>
  HEAT_MODES.reduce((sum, mode) => sum + shares[mode] * plateaus[mode], 0) as Doublings;

/** One rig's evening by one clock and one tau. */
interface Lane {
  readonly course: RigCourse;
  readonly tau: Seconds;
  /** At the opening of each frame: its place among the stretches, and the shares there. */
  readonly openings: ReadonlyMap<MadeId, { readonly place: number; readonly shares: Shares }>;
  readonly end: Shares;
}

function laneOf(course: RigCourse, tau: Seconds): Lane {
  const openings = new Map<MadeId, { place: number; shares: Shares }>();
  let shares = RESTED;
  for (const [place, { mode, fromS, toS, made }] of course.stretches.entries()) {
    if (made !== null) openings.set(made, { place, shares });
    shares = sharesAfter(shares, mode, toS - fromS, tau);
  }
  return { course, tau, openings, end: shares };
}

function sharesAt({ course, tau, openings, end }: Lane, s: number): Shares {
  const { stretches, endS, waits } = course;
  if (s >= endS) return sharesAfter(end, waits, s - endS, tau);
  const started = [...openings.values()].findLast(
    ({ place }) => (stretches[place]?.fromS ?? 0) <= s,
  );
  let shares = started?.shares ?? RESTED;
  for (let place = started?.place ?? 0; place < stretches.length; place += 1) {
    const stretch = stretches[place];
    if (!stretch || stretch.fromS >= s) break;
    shares = sharesAfter(shares, stretch.mode, Math.min(s, stretch.toS) - stretch.fromS, tau);
  }
  return shares;
}

/** A model with the lane that it reads its shares from. */
interface Reading {
  readonly model: ThermalModel;
  readonly lane: Lane;
}

/** One rig's evening under every model of what is known of its body. */
export interface RigHeat {
  readonly usual: Reading;
  /** By each clock that tells it otherwise, at the corners of the ranges, always in this order. */
  readonly corners: readonly Reading[];
}

/** How warm all rigs were, at any instant up to the last act and on. */
export interface HeatHistory {
  readonly byClock: ReadonlyMap<Clock, Courses>;
  readonly rigs: ReadonlyMap<RigId, RigHeat>;
}

/**
 * A view through the finder warms no more than being on: without a word of which was used, framing
 * lies anywhere between that and live view, which is worked with.
 */
const withFinder = (range: ThermalRange): ThermalRange => ({
  ...range,
  liveView: { ...range.liveView, least: range.idle.least },
});

const warmAsBeingOn = (model: ThermalModel): ThermalModel => ({
  ...model,
  plateaus: {
    ...model.plateaus,
    'live-view': Math.max(model.plateaus.idle, model.plateaus['live-view']) as Doublings,
  },
});

/** How warm the rigs of an outing were, from its start to its last act. */
export const historyOf = perState((state: RunState): HeatHistory => {
  const wall = coursesOf(state, 'wall');
  const byClock = new Map<Clock, Courses>([['wall', wall]]);
  if (wall.clocksDisagree) byClock.set('steady', coursesOf(state, 'steady'));
  const rigs = new Map<RigId, RigHeat>();
  for (const rig of state.plan.rigs) {
    const parts = assemble(state.gear, rig);
    if (!parts) continue;
    const range = withFinder(thermalRangeOf(parts.body));
    const lanes = new Map<string, Lane>();
    const under = (model: ThermalModel, clock: Clock): Reading => {
      const name = `${clock} ${model.tau}`;
      const course = byClock.get(clock)?.rigs.get(rig) as RigCourse;
      const lane = lanes.get(name) ?? laneOf(course, model.tau);
      lanes.set(name, lane);
      return { model, lane };
    };
    const corners = cornerModels(range).map(warmAsBeingOn);
    rigs.set(rig, {
      usual: under(usualModel(range), 'wall'),
      corners: [...byClock.keys()].flatMap((clock) => corners.map((model) => under(model, clock))),
    });
  }
  return { byClock, rigs };
});

/** A heat with the value to work with and at each corner of what is known. */
export interface Heats {
  readonly usual: Doublings;
  readonly corners: readonly Doublings[];
}

/** What is worked out for every model of a rig. */
export const underAll = (
  { usual, corners }: RigHeat,
  heat: (model: ThermalModel, place: number) => Doublings,
): Heats => ({
  usual: heat(usual.model, -1),
  corners: corners.map(({ model }, place) => heat(model, place)),
});

const heatsFrom = ({ usual, corners }: RigHeat, shares: (lane: Lane) => Shares): Heats => {
  const known = new Map<Lane, Shares>();
  const read = ({ model, lane }: Reading): Doublings => {
    const own = known.get(lane) ?? shares(lane);
    known.set(lane, own);
    return heatUnder(own, model);
  };
  return { usual: read(usual), corners: corners.map(read) };
};

/** The value to work with, and the smallest and largest of all. */
export const rangeOf = ({ usual, corners }: Heats): Ranged<Doublings> => ({
  usual,
  least: Math.min(usual, ...corners) as Doublings,
  most: Math.max(usual, ...corners) as Doublings,
});

/** A pair's heat line: + where the other was warmer; both in one corner of what is known. */
export const heatsBetween = (reference: Heats, other: Heats): Heats => ({
  usual: (other.usual - reference.usual) as Doublings,
  corners: other.corners.map(
    (heat, place) => (heat - (reference.corners[place] ?? 0)) as Doublings,
  ),
});

/** Where one rig stands when its last act is over. */
export const heatsAtEnd = (rig: RigHeat): Heats => heatsFrom(rig, ({ end }) => end);

/** Seconds from the start to an instant that is no earlier than the last act; null = nobody knows. */
export function secondsAt({ byClock }: HeatHistory, now: Instant, clock: Clock): number | null {
  const courses = byClock.get(clock) ?? byClock.get('wall');
  if (!courses) return null;
  const since = gapBetween(courses.last.at, now, clock);
  return since === null ? null : courses.last.s + since;
}

/** How warm a rig is at an instant that is no earlier than the last act; null = nobody knows. */
export function heatsNow(history: HeatHistory, rig: RigId, now: Instant): Heats | null {
  const own = history.rigs.get(rig);
  const s = secondsAt(history, now, 'wall');
  if (!own || s === null || own.usual.lane.course.doubt) return null;
  const steady = secondsAt(history, now, 'steady') ?? s;
  const wall = history.byClock.get('wall')?.rigs.get(rig);
  return heatsFrom(own, (lane) => sharesAt(lane, lane.course === wall ? s : steady));
}

/** Why the heat of a frame is not known. */
export type WhyNoHeat = HeatDoubt | 'still-open' | 'rig-gone';

/** How warm a sensor was in the middle of a frame, or why nobody knows. */
export function heatsInside(
  history: HeatHistory,
  rig: RigId,
  made: MadeId,
): Heats | { readonly why: WhyNoHeat } {
  const own = history.rigs.get(rig);
  if (!own) return { why: 'rig-gone' };
  const { course } = own.usual.lane;
  const doubt = course.doubtful.get(made);
  if (doubt) return { why: doubt };
  const isOpen = course.stretches.at(-1)?.made === made && course.endS === Number.POSITIVE_INFINITY;
  if (isOpen || !own.usual.lane.openings.has(made)) return { why: 'still-open' };
  return heatsFrom(own, ({ openings, course: { stretches }, tau }) => {
    const { place, shares } = openings.get(made) as { place: number; shares: Shares };
    const stretch = stretches[place];
    const t = stretch ? stretch.toS - stretch.fromS : 0;
    return sharesAfter(shares, 'exposing', t / 2, tau);
  });
}
