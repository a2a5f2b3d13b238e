import { restIsMeasured } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import { fadeAt } from '../light/fade.ts';
import { USUAL_WEIGHTS } from '../plan/costWeights.ts';
import { darkRatio, sceneUnder } from '../plan/darkRatio.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { RestRange } from '../plan/heat.ts';
import { heatAbove } from '../plan/heatLimit.ts';
import { nextFrameOf } from '../plan/nextFrame.ts';
import type { HeatLimit, PlanSet } from '../plan/plan.ts';
import { isProposed, restByLimit, restOwed } from '../plan/rest.ts';
import { type RestWorth, restWorth } from '../plan/restWorth.ts';
import type { ThermalModel } from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import {
  midHeatAfterRest,
  type NextFrame,
  restedMidHeat,
  restNeeded,
} from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { DARK_CURRENT_AT_20, type Ranged } from '../science/thermalRange.ts';
import {
  duration,
  type Ev,
  type Ratio,
  type Seconds,
  type Stops,
  type StopsPerMinute,
  type UtcMs,
} from '../science/units.ts';
import {
  type Heats,
  heatsAtEnd,
  heatsBetween,
  heatsInside,
  historyOf,
  type RigHeat,
  rangeOf,
  secondsAt,
  underAll,
} from './heat.ts';
import type { Instant } from './instant.ts';
import { sceneOf } from './light.ts';
import { perState } from './perState.ts';
import type { HeatDoubt, RigCourse } from './rigCourse.ts';
import type { RunState } from './state.ts';
import { nextTogether } from './together.ts';

/** The next frame of a resting rig against the reference's frame of its set, both as they are. */
export interface AfterRest {
  readonly reference: RigId;
  /** In stops of dark current, + where this rig will be warmer. */
  readonly heat: Ranged<Doublings>;
}

/** A rest of a rig before its next frame, counted from what really happened. */
export interface Rest {
  readonly rig: RigId;
  readonly next: PlannedFrame;
  /** The plan's rule of thumb, its limit on heat, or a wait that the set asks for. */
  readonly why: 'thumb' | 'limit' | 'asked';
  /** All of it, from the end of the rig's last work. */
  readonly owedS: Seconds;
  /** A lens that loses its focus when switched off rests on. */
  readonly mode: 'off' | 'idle';
  /** The next frame's dark current over a rested body's first such frame, in stops. */
  readonly without: Doublings;
  readonly with: Doublings;
  /** What it wins and costs; null where the fade is not known. */
  readonly worth: RestWorth | null;
  /** How much the light changes while it lasts; null = not known. */
  readonly fade: Stops | null;
  /** How long it would have to be over what is known of the body; null where a rule says it. */
  readonly range: RestRange | null;
  /** Nobody has measured how this body cools. */
  readonly isSuggestion: boolean;
  /** Whether it is to be waited for: a rule asks for it, or it is not known to cost more than it wins. */
  readonly isProposed: boolean;
  /** Null where the reference has no such frame yet, is this rig, or nobody knows. */
  readonly against: AfterRest | null;
  /** Why nobody knows how warm it is; what is said of heat is then what it would be without that. */
  readonly doubt: HeatDoubt | null;
}

/** A rig that should wait, and how long still. */
export interface Resting extends Rest {
  readonly leftS: Seconds;
}

interface Due {
  readonly rest: Rest;
  /** In seconds from the start of the outing. */
  readonly untilS: number;
}

/**
 * The rest that each rig owes before its next frame, weighed when its last act was over, so that it
 * stands until something happens to it. A capped dark stands for the warmth of the frame before it
 * and follows straight after.
 */
const duesOf = perState((state: RunState): ReadonlyMap<RigId, Due> => {
  const dues = new Map<RigId, Due>();
  const history = historyOf(state);
  const courses = history.byClock.get('wall');
  for (const [rig, heat] of history.rigs) {
    const run = state.rigs.get(rig);
    const next = state.queue.find((frame) => frame.rig === rig);
    const set = state.plan.sets.find(({ id }) => id === next?.set);
    const course = courses?.rigs.get(rig);
    const parts = assemble(state.gear, rig);
    if (!run || !next || !set || !course?.lastWork || !course.isTimed || !parts) continue;
    if (set.kind === 'capped-dark' || run.restSkippedAfter === run.lastMade) continue;
    const scene = sceneUnder(set, [...state.planned.values()]);
    const due = dueBefore({ state, next, set, scene, course, heat, parts });
    if (due) dues.set(rig, due);
  }
  return dues;
});

interface Before {
  readonly state: RunState;
  readonly next: PlannedFrame;
  readonly set: PlanSet;
  /** The scene that the set is exposed for; null where no light is compared. */
  readonly scene: Ev | null;
  readonly course: RigCourse;
  readonly heat: RigHeat;
  readonly parts: Assembled;
}

function dueBefore(before: Before): Due | null {
  const { state, next, set, course, heat, parts } = before;
  const { plan } = state;
  if (!course.lastWork) return null;
  const { idleFromS, exposedS } = course.lastWork;
  const asked = next.repeat === 1 ? (set.restBeforeS ?? 0) : 0;
  const byThumb = plan.rest.kind === 'thumb' ? restOwed(plan.rest.rule, exposedS, duration(0)) : 0;
  const fade = fadeThen(state, course.endS);
  const frame = nextFrameOf(plan, parts.body, next.exact.t);
  // A series is there to warm.
  const limit = plan.rest.kind === 'limit' && set.kind !== 'capped-series' ? plan.rest.limit : null;
  const atEnd = heatsAtEnd(heat);
  const byLimit =
    limit &&
    restByLimit(
      { model: heat.usual.model, heat: atEnd.usual, mode: course.waits, next: frame },
      ratioFor(before, limit, heat.usual.model, frame),
      limit.longestS,
      fade,
    );
  const untilRule = idleFromS + Math.max(byThumb, asked);
  // One that does not pay is told of while others work, and never stands above a rule.
  const untilLimit =
    byLimit && byLimit.s > 0 && (isProposed(byLimit) || untilRule <= course.endS)
      ? course.endS + byLimit.s
      : 0;
  const untilS = Math.max(untilRule, untilLimit);
  if (untilS <= course.endS) return null;
  const why = untilLimit > untilRule ? 'limit' : asked > byThumb ? 'asked' : 'thumb';
  const s = duration(untilS - course.endS);
  const over = (rest: Seconds): Doublings =>
    (midHeatAfterRest(heat.usual.model, atEnd.usual, course.waits, rest, frame) -
      restedMidHeat(heat.usual.model, frame)) as Doublings;
  const [without, rested] = [over(duration(0)), over(s)];
  const worth = fade === null ? null : restWorth(s, fade, { without, with: rested }, USUAL_WEIGHTS);
  const after = underAll(heat, (model, place) =>
    midHeatAfterRest(
      model,
      (place < 0 ? atEnd.usual : atEnd.corners[place]) as Doublings,
      course.waits,
      s,
      frame,
    ),
  );
  return {
    untilS,
    rest: {
      rig: next.rig,
      next,
      why,
      owedS: duration(untilS - (why === 'limit' ? course.endS : idleFromS)),
      mode: course.waits,
      without,
      with: rested,
      worth,
      fade: fade === null ? null : (((fade * s) / 60) as Stops),
      range: why === 'limit' && limit ? restRange(before, limit, atEnd, frame) : null,
      isSuggestion: !restIsMeasured(parts.body),
      isProposed: why !== 'limit' || (byLimit !== null && isProposed(byLimit)),
      against: course.doubt ? null : againstReference(state, next, set, after),
      doubt: course.doubt,
    },
  };
}

/** The fade when a rig's last act is over; null = not known. */
function fadeThen(state: RunState, endS: number): StopsPerMinute | null {
  const scene = sceneOf(state);
  const last = historyOf(state).byClock.get('wall')?.last;
  if (!scene || !last) return null;
  return fadeAt(scene, (last.at.wallMs + (endS - last.s) * 1000) as UtcMs);
}

const ratioFor = (
  { next, scene, parts }: Before,
  limit: HeatLimit,
  model: ThermalModel,
  frame: NextFrame,
  dark = DARK_CURRENT_AT_20.usual,
): Ratio => darkRatio(limit, parts.body, next.exact, scene, restedMidHeat(model, frame), dark);

/** The rest by the limit over all that is known of the body and, in light, of a pixel's dark current. */
function restRange(before: Before, limit: HeatLimit, atEnd: Heats, frame: NextFrame): RestRange {
  const { scene, course, heat } = before;
  // Longer than any evening stands for 'never' while the corners are compared.
  const never = Number.POSITIVE_INFINITY;
  const { usual, least, most } = DARK_CURRENT_AT_20;
  const rests = (scene !== null ? [usual, least, most] : [usual]).map((dark) =>
    underAll(heat, (model, place) => {
      const now = (place < 0 ? atEnd.usual : atEnd.corners[place]) as Doublings;
      const highest = heatAbove(
        restedMidHeat(model, frame),
        ratioFor(before, limit, model, frame, dark),
      );
      const needed = restNeeded(model, now, course.waits, frame, highest);
      return (isRefusal(needed) ? never : needed) as number as Doublings;
    }),
  );
  const orNull = (s: number | undefined): Seconds | null =>
    s === undefined || s === never ? null : duration(s);
  const all = rests.flatMap((each) => [each.usual, ...each.corners]);
  return {
    usual: orNull(rests[0]?.usual),
    least: orNull(Math.min(...all)),
    most: orNull(Math.max(...all)),
  };
}

/** A rig's next frame against the reference's newest frame of the set, of its pass if there is one. */
function againstReference(
  state: RunState,
  next: PlannedFrame,
  set: PlanSet,
  after: Heats,
): AfterRest | null {
  if (set.reference === next.rig) return null;
  const partners = state.made.filter(
    ({ planned, discarded }) =>
      planned.set === set.id && planned.rig === set.reference && !discarded,
  );
  const partner = partners.findLast(({ planned }) => planned.pass === next.pass) ?? partners.at(-1);
  const heats = partner && heatsInside(historyOf(state), set.reference, partner.id);
  return heats && 'usual' in heats
    ? { reference: set.reference, heat: rangeOf(heatsBetween(heats, after)) }
    : null;
}

/**
 * The rest that a rig still owes at `now` before its next frame. What passed since the sensor last
 * worked counts, whatever it was: a swap, another rig's frame, a pause. Null when nothing is owed,
 * when the wait was skipped, or when the clock was set back: that says nothing about a rest and holds
 * nobody up.
 */
export function restLeft(state: RunState, rig: RigId, now: Instant): Resting | null {
  const nowS = sinceWork(state, rig, now);
  const due = nowS === null ? null : duesOf(state).get(rig);
  return due && nowS !== null && due.untilS > nowS
    ? { ...due.rest, leftS: duration(due.untilS - nowS) }
    : null;
}

/**
 * How long the body will still be at its own in-camera dark frame, which blocks
 * the release; null when it is free.
 */
export function busyFor(state: RunState, rig: RigId, now: Instant): Seconds | null {
  const nowS = sinceWork(state, rig, now);
  const work = historyOf(state).byClock.get('wall')?.rigs.get(rig)?.lastWork;
  return nowS !== null && work && work.idleFromS > nowS ? duration(work.idleFromS - nowS) : null;
}

/**
 * Seconds from the start of the outing to now. Null while the rig's shutter is open, before it has
 * worked, or when the clock was set back.
 */
function sinceWork(state: RunState, rig: RigId, now: Instant): number | null {
  const history = historyOf(state);
  const course = history.byClock.get('wall')?.rigs.get(rig);
  const nowS = secondsAt(history, now, 'wall');
  return nowS !== null && course?.isTimed && course.lastWork && nowS >= course.lastWork.closedS
    ? nowS
    : null;
}

/**
 * Every rig that still owes a rest, for the reminder that runs while others work. A rig in hand whose
 * rest does not pay is not held up by it.
 */
export function allResting(state: RunState, now: Instant): readonly Resting[] {
  const inHand = new Set(nextTogether(state).map(({ rig }) => rig));
  return state.plan.rigs.flatMap((rig) => {
    const resting = restLeft(state, rig, now);
    return resting && (resting.isProposed || !inHand.has(rig)) ? resting : [];
  });
}
