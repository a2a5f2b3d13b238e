import type { RigId } from '../gear/ids.ts';
import { fadeAt, fadeOver } from '../light/fade.ts';
import type { Exposure } from '../light/forecast.ts';
import type { Scene } from '../light/scene.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import { type HeatSpan, heatCourseOf } from '../plan/heatCourse.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import { type Timeline, timelineOf } from '../plan/timeline.ts';
import { heatAfter, midExposureHeat } from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { later, type Seconds, type Stops, type UtcMs } from '../science/units.ts';
import { openedAt } from './exposure.ts';
import { type HeatHistory, heatsInside, heatsNow, historyOf } from './heat.ts';
import type { EventId } from './ids.ts';
import type { Instant } from './instant.ts';
import { sceneOf } from './light.ts';
import { next, type Tap } from './next.ts';
import type { RunState } from './state.ts';
import { kindOf } from './together.ts';

/*
 * What a change in mid-outing costs against going on. Both ways are laid out with the plan's
 * allowances from now on, under the scene as the readings have it now and from the heat that the
 * sensors have now; what was really made counts as it was made. A rest that the plan takes is reckoned
 * as if the sensors were rested now, in both ways alike.
 */

/** A pair whose frames a change moves, as its set's plain mean will have it. */
export interface PairLeft {
  readonly set: SetId;
  readonly reference: RigId;
  readonly other: RigId;
  /** What the fade leaves of the pair: + where the other renders brighter; null = not known. */
  readonly fade: Stops | null;
  /** In stops of dark current; null = nobody knows. */
  readonly heat: Doublings | null;
  /** Passes with a frame of either. */
  readonly passes: number;
}

/** A pair as it will be and as it would have been; null = no pass of it is complete. */
export interface PairMoved {
  /** False for a wall lit by hand, on which the sky's fade has no say. */
  readonly isUnderTheSky: boolean;
  readonly going: PairLeft | null;
  readonly changed: PairLeft | null;
}

/** What a change costs. */
export interface ChangeCost {
  /** The rest of the list lasts so much longer; below zero = shorter. */
  readonly longerS: Seconds;
  /** More swaps; below zero = fewer. */
  readonly swaps: number;
  /** Of the sets whose frames it moves, drops or sets otherwise. */
  readonly pairs: readonly PairMoved[];
}

/** The taps that change the list. */
export type ListTap = Extract<Tap, { tap: 'swap-next-two' | 'drop-set' | 'rematch' }>;

/** What a change of the list costs; null where it makes no sense now, or a rig is gone. */
export function changeCost(state: RunState, tap: ListTap, now: Instant): ChangeCost | null {
  const drafts = next(state, tap, { now, newId: () => '' as EventId });
  const [draft] = isRefusal(drafts) ? [] : drafts;
  if (draft?.kind !== 'replanned') return null;
  const sets = touchedBy(state.queue, draft.data.remaining);
  const { remaining } = draft.data;
  const alike = alikeAtEnd([state.queue, remaining], sets);
  const going = laidOut(state, state.queue.slice(0, state.queue.length - alike), now);
  const changed = laidOut(state, remaining.slice(0, remaining.length - alike), now);
  if (!going || !changed) return null;
  return {
    longerS: (changed.timeline.wallS - going.timeline.wallS) as Seconds,
    swaps: changed.swaps - going.swaps,
    pairs: state.plan.sets
      .filter(({ id, kind }) => sets.has(id) && (kind === 'light' || kind === 'flat'))
      .flatMap(({ id, kind, reference }) =>
        state.plan.rigs.flatMap((other) =>
          other === reference
            ? []
            : [
                {
                  isUnderTheSky: kind === 'light',
                  going: pairLeft(going, id, reference, other),
                  changed: pairLeft(changed, id, reference, other),
                },
              ],
        ),
      ),
  };
}

/** The sets of frames that stand elsewhere, at other settings, or not at all. */
function touchedBy(
  before: readonly PlannedFrame[],
  after: readonly PlannedFrame[],
): ReadonlySet<SetId> {
  const kept = new Map(after.map((frame) => [frame.key, frame]));
  const sets = new Set<SetId>();
  const stay: PlannedFrame[] = [];
  for (const frame of before) {
    const now = kept.get(frame.key);
    if (now) stay.push(frame);
    if (!now || now.settings !== frame.settings) sets.add(frame.set);
  }
  for (const [place, { key, set }] of stay.entries()) if (after[place]?.key !== key) sets.add(set);
  return sets;
}

/** So many frames after the last that is moved still tell of a swap or a dial; later ones are alike. */
const BEYOND = 20;

/** How many frames at the end of both lists tell nothing: what a long list leaves out. */
function alikeAtEnd(lists: readonly (readonly PlannedFrame[])[], sets: ReadonlySet<SetId>): number {
  const tails = lists.map(
    (frames) => frames.length - 1 - frames.findLastIndex(({ set }) => sets.has(set)),
  );
  return Math.max(0, Math.min(...tails) - BEYOND);
}

/** The rest of a list laid out from now on. */
interface LaidOut {
  readonly state: RunState;
  readonly frames: readonly PlannedFrame[];
  readonly timeline: Timeline;
  readonly swaps: number;
  readonly startMs: UtcMs;
  readonly scene: Scene | null;
  readonly history: HeatHistory;
  /** In the middle of the frames to come; a rig is left out where nobody knows. */
  readonly heats: ReadonlyMap<RigId, ReadonlyMap<FrameKey, Doublings>>;
}

function laidOut(
  state: RunState,
  remaining: readonly PlannedFrame[],
  now: Instant,
): LaidOut | null {
  const { plan, gear } = state;
  const history = historyOf(state);
  const scene = sceneOf(state);
  const frames = inVisits(state, remaining);
  const nowMs = now.wallMs as UtcMs;
  const timeline = timelineOf(plan, gear, frames, (at) => scene && fadeAt(scene, later(nowMs, at)));
  if (isRefusal(timeline)) return null;
  const course = heatCourseOf(plan, gear, frames, timeline);
  if (isRefusal(course)) return null;
  const [first] = frames;
  const mustMount =
    first !== undefined &&
    kindOf(state, first.set) !== 'capped-series' &&
    !state.mounted.includes(first.rig);
  const { swapS, reframeS } = plan.allowances;
  // The timeline begins with its first rig on the tripod.
  const firstS = mustMount ? swapS + reframeS : 0;
  return {
    state,
    frames,
    timeline: { ...timeline, wallS: (timeline.wallS + firstS) as Seconds },
    swaps: timeline.swaps.length + (mustMount ? 1 : 0),
    startMs: later(nowMs, firstS),
    scene,
    history,
    heats: new Map(
      plan.rigs.flatMap((rig) => {
        const heats = heatsToCome(history, rig, now, firstS, course.get(rig) ?? []);
        return heats ? [[rig, heats] as const] : [];
      }),
    ),
  };
}

/** Frames with a visit for each stay of a rig, as the run would mount them. */
function inVisits(state: RunState, frames: readonly PlannedFrame[]): readonly PlannedFrame[] {
  if (state.plan.order === 'side-by-side') return frames.map((frame) => ({ ...frame, visit: 1 }));
  let visit = 1;
  let mounted: RigId | null = null;
  return frames.map((frame) => {
    if (kindOf(state, frame.set) !== 'capped-series') {
      if (mounted !== null && mounted !== frame.rig) visit += 1;
      mounted = frame.rig;
    }
    return { ...frame, visit };
  });
}

interface PairFrame extends Exposure {
  readonly pass: number;
  readonly heat: Doublings | null;
}

/** The frames of one rig in a set: those that were made, and those to come. */
function framesOf(laid: LaidOut, set: SetId, rig: RigId): readonly PairFrame[] {
  const { state, frames, timeline, startMs, history, heats } = laid;
  const newest = new Map<FrameKey, PairFrame>();
  for (const { id, planned, discarded, startedAt, leadInS } of state.made) {
    if (planned.set !== set || planned.rig !== rig || discarded) continue;
    const inside = heatsInside(history, rig, id);
    newest.set(planned.key, {
      pass: planned.pass,
      startMs: openedAt({ startedAt, leadInS }).wallMs as UtcMs,
      t: planned.exact.t,
      heat: 'why' in inside ? null : inside.usual,
    });
  }
  for (const [place, frame] of frames.entries()) {
    const times = timeline.frames[place];
    if (!times || frame.set !== set || frame.rig !== rig) continue;
    newest.set(frame.key, {
      pass: frame.pass,
      startMs: later(startMs, times.startS),
      t: frame.exact.t,
      heat: heats.get(rig)?.get(frame.key) ?? null,
    });
  }
  return [...newest.values()];
}

/** How warm a rig will be in the middle of its frames, from where it stands now. */
function heatsToCome(
  history: HeatHistory,
  rig: RigId,
  now: Instant,
  firstS: number,
  course: readonly HeatSpan[],
): ReadonlyMap<FrameKey, Doublings> | null {
  const start = heatsNow(history, rig, now);
  const reading = history.rigs.get(rig)?.usual;
  if (!start || !reading) return null;
  const { tau, plateaus } = reading.model;
  const mids = new Map<FrameKey, Doublings>();
  let heat = heatAfter(start.usual, plateaus[reading.lane.course.waits], firstS, tau);
  for (const { mode, lasts, frame } of course) {
    if (frame !== null) mids.set(frame, midExposureHeat(heat, plateaus[mode], lasts, tau));
    heat = heatAfter(heat, plateaus[mode], lasts, tau);
  }
  return mids;
}

function pairLeft(laid: LaidOut, set: SetId, reference: RigId, other: RigId): PairLeft | null {
  const [ours, theirs] = [framesOf(laid, set, reference), framesOf(laid, set, other)];
  const passes = [...new Set(ours.map(({ pass }) => pass))].filter((pass) =>
    theirs.some((frame) => frame.pass === pass),
  );
  if (passes.length === 0) return null;
  const inPass = (frames: readonly PairFrame[], pass: number) =>
    frames.filter((frame) => frame.pass === pass);
  const pairs = passes.map((pass) => ({
    reference: inPass(ours, pass),
    other: inPass(theirs, pass),
  }));
  const heats = pairs.map((pair) => difference(meanHeatOf(pair.reference), meanHeatOf(pair.other)));
  return {
    set,
    reference,
    other,
    fade: (laid.scene && fadeOver(laid.scene, pairs)?.stops) ?? null,
    heat: heats.some((heat) => heat === null) ? null : meanOf(heats as readonly Doublings[]),
    passes: passes.length,
  };
}

const meanOf = (heats: readonly Doublings[]): Doublings =>
  (heats.reduce((sum, heat) => sum + heat, 0) / heats.length) as Doublings;

const meanHeatOf = (frames: readonly PairFrame[]): Doublings | null =>
  frames.some(({ heat }) => heat === null)
    ? null
    : meanOf(frames.map(({ heat }) => heat as Doublings));

const difference = (one: Doublings | null, two: Doublings | null): Doublings | null =>
  one === null || two === null ? null : ((two - one) as Doublings);
