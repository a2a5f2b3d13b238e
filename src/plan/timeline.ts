import { thermalRangeOf } from '../gear/bodyHeat.ts';
import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import { type Settings, sameSettings } from '../gear/settings.ts';
import { heatAfter } from '../science/heat.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { type Doublings, doublings } from '../science/sensorUnits.ts';
import { usualModel } from '../science/thermalRange.ts';
import { duration, type Seconds, type StopsPerMinute } from '../science/units.ts';
import { darkRatio, sceneUnder } from './darkRatio.ts';
import type { PlannedFrame } from './frame.ts';
import type { FrameKey, SetId } from './ids.ts';
import { nextFrameOf, waitsIn } from './nextFrame.ts';
import type { Plan, PlanSet, SetKind } from './plan.ts';
import { isProposed, type LimitRest, restByLimit, restOwed } from './rest.ts';

/** When a frame is made, in seconds from the start of the list. */
export interface FrameTimes {
  readonly key: FrameKey;
  readonly rig: RigId;
  /** The shutter opens. */
  readonly startS: Seconds;
  readonly midS: Seconds;
  /** The shutter closes. */
  readonly endS: Seconds;
  /** The body answers again: its own dark frame is done and the file is written. */
  readonly freeS: Seconds;
}

/** A stretch of the evening in which a rig comes onto the tripod or cools, in seconds from the start. */
export interface Span {
  readonly rig: RigId;
  readonly fromS: Seconds;
  readonly toS: Seconds;
}

/**
 * A rest that was weighed before a frame which would be outside of its limit: what it wins and what
 * it costs. Of no length where no rest is enough.
 */
export interface WeighedRest {
  readonly key: FrameKey;
  readonly rig: RigId;
  readonly rest: LimitRest;
}

/** The estimated course of a list of frames. */
export interface Timeline {
  /** In the order of the list. */
  readonly frames: readonly FrameTimes[];
  readonly swaps: readonly Span[];
  readonly rests: readonly Span[];
  /** From the first act to the last file written. */
  readonly wallS: Seconds;
}

/** A timeline with the rests that the limit on heat asked for, taken or not. */
export interface Course extends Timeline {
  readonly weighed: readonly WeighedRest[];
}

/** How fast the light changes so many seconds after the start; null = not known. */
export type FadeAfter = (at: Seconds) => StopsPerMinute | null;

/** What a rig has behind it. */
interface Past {
  readonly settings: Settings;
  readonly exposed: Seconds;
  /** When it was free again, and its heat then. */
  readonly freeS: Seconds;
  readonly heat: Doublings;
  /** When its sensor stopped working. */
  readonly idleFromS: Seconds;
}

/**
 * Frames that start together: with all rigs side by side, or in a capped series, those of one repeat;
 * else each by itself.
 */
function startsOf(plan: Plan, frames: readonly PlannedFrame[]): readonly PlannedFrame[][] {
  const starts: PlannedFrame[][] = [];
  const series = setsOfKind(plan, 'capped-series');
  for (const frame of frames) {
    const last = starts.at(-1);
    const first = last?.[0];
    const together =
      first !== undefined &&
      (plan.order === 'side-by-side' || series.has(frame.set)) &&
      first.set === frame.set &&
      first.pass === frame.pass &&
      first.repeat === frame.repeat;
    if (last && together) last.push(frame);
    else starts.push([frame]);
  }
  return starts;
}

const setsOfKind = ({ sets }: Plan, kind: SetKind): ReadonlySet<SetId> =>
  new Set(sets.filter((set) => set.kind === kind).map(({ id }) => id));

const at = (value: number): Seconds => duration(value);

/**
 * When each frame, swap and rest of a list falls, by the plan's allowances, in seconds from the
 * start, with the first rig already on the tripod.
 *
 * Each start runs through: swap and finding the framing again if another rig's visit begins; dial change for each rig whose marks
 * differ from its last frame's (its first frame counts); rest still owed, the swap and the dial
 * change having counted as rest; settle; the body's self-timer; exposure; the body's own dark frame
 * by its rule; write. A capped dark follows straight after its frame and waits for no rest. By the
 * limit on heat a rest is taken only if it is not known to cost more than it wins. Rigs side by side are dialled one after the other, start by one tap and wait for the slowest.
 *
 * @returns a refusal ('rig-gone') if a frame's rig is not among the gear.
 */
export function timelineOf(
  plan: Plan,
  gear: Gear,
  frames: readonly PlannedFrame[],
  fade: FadeAfter = () => null,
): Course | Refusal {
  const rigs = new Map<RigId, Assembled>();
  for (const { rig } of frames) {
    const assembled = rigs.get(rig) ?? assemble(gear, rig);
    if (!assembled) return refuse('rig-gone');
    rigs.set(rig, assembled);
  }
  const darks = setsOfKind(plan, 'capped-dark');
  const sets = new Map(plan.sets.map((set) => [set.id, set]));
  const weighed: WeighedRest[] = [];
  const times: FrameTimes[] = [];
  const swaps: Span[] = [];
  const rests: Span[] = [];
  const past = new Map<RigId, Past>();
  let now = 0;
  let visit: number | null = null;

  /** The rest that the plan's way of resting asks for. */
  const byRest = (
    { key, rig, exact }: PlannedFrame,
    set: PlanSet,
    { body, lens }: Assembled,
    before: Past,
    heat: Doublings,
    sinceS: Seconds,
  ): number => {
    if (plan.rest.kind === 'none') return 0;
    if (plan.rest.kind === 'thumb') return restOwed(plan.rest.rule, before.exposed, sinceS);
    // A series is there to warm.
    if (set.kind === 'capped-series') return 0;
    const { limit } = plan.rest;
    const next = nextFrameOf(plan, body, exact.t);
    const model = usualModel(thermalRangeOf(body));
    const rested = restedMidHeat(model, next);
    const ratio = darkRatio(limit, body, exact, sceneUnder(set, frames), rested);
    const rest = restByLimit(
      { model, heat, mode: waitsIn(lens), next },
      ratio,
      limit.longestS,
      fade(at(now)),
    );
    if (rest.without > Math.log2(ratio)) weighed.push({ key, rig, rest });
    return isProposed(rest) ? rest.s : 0;
  };

  for (const start of startsOf(plan, frames)) {
    const [first] = start;
    if (first && visit !== null && first.visit !== visit) {
      const { swapS, reframeS } = plan.allowances;
      swaps.push({ rig: first.rig, fromS: at(now), toS: at(now + swapS + reframeS) });
      now += swapS + reframeS;
    }
    visit = first?.visit ?? visit;

    for (const { rig, settings } of start) {
      const before = past.get(rig);
      if (!before || !sameSettings(before.settings, settings)) now += plan.allowances.dialChangeS;
    }

    const heats = new Map<RigId, Doublings>();
    const owed = start.map((frame) => {
      const { rig } = frame;
      const before = past.get(rig);
      const set = sets.get(frame.set);
      const assembled = rigs.get(rig) as Assembled;
      const dialS =
        before && sameSettings(before.settings, frame.settings) ? 0 : plan.allowances.dialChangeS;
      const { tau, plateaus } = usualModel(thermalRangeOf(assembled.body));
      const waited = Math.max(0, now - dialS - (before?.freeS ?? 0));
      const waiting = plateaus[waitsIn(assembled.lens)];
      const heat = heatAfter(
        heatAfter(before?.heat ?? doublings(0), waiting, waited, tau),
        plateaus.idle,
        dialS,
        tau,
      );
      heats.set(rig, heat);
      if (!before || !set || darks.has(frame.set)) return 0;
      const sinceS = at(Math.max(0, now - before.idleFromS));
      const asked = frame.repeat === 1 ? Math.max(0, (set.restBeforeS ?? 0) - sinceS) : 0;
      return Math.max(asked, byRest(frame, set, assembled, before, heat, sinceS));
    });
    for (const [index, { rig }] of start.entries()) {
      const rest = owed[index] ?? 0;
      if (rest > 0) rests.push({ rig, fromS: at(now), toS: at(now + rest) });
    }
    const pause = Math.max(0, ...owed);
    now += pause + plan.allowances.settleS;

    const tap = now;
    for (const { key, rig, settings, exact } of start) {
      const { body, lens } = rigs.get(rig) as Assembled;
      const startS = tap + (body.selfTimer.usedS ?? 0);
      const endS = startS + exact.t;
      const idleFromS = endS + darkFrameS(body.darkFrame, exact.t);
      const freeS = idleFromS + plan.allowances.writeS;
      times.push({
        key,
        rig,
        startS: at(startS),
        midS: at((startS + endS) / 2),
        endS: at(endS),
        freeS: at(freeS),
      });
      const { tau, plateaus } = usualModel(thermalRangeOf(body));
      const ready = heatAfter(heats.get(rig) ?? doublings(0), plateaus[waitsIn(lens)], pause, tau);
      const settled = heatAfter(ready, plateaus.idle, startS - tap + plan.allowances.settleS, tau);
      const exposed = heatAfter(settled, plateaus.exposing, idleFromS - startS, tau);
      past.set(rig, {
        settings,
        exposed: exact.t,
        idleFromS: at(idleFromS),
        freeS: at(freeS),
        heat: heatAfter(exposed, plateaus.idle, plan.allowances.writeS, tau),
      });
      now = Math.max(now, freeS);
    }
  }
  return { frames: times, swaps, rests, weighed, wallS: at(now) };
}
