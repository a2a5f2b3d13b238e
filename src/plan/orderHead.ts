import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { heatAfter } from '../science/heat.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import { type Doublings, doublings } from '../science/sensorUnits.ts';
import { usualModel } from '../science/thermalRange.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { ThermalOf } from './heat.ts';
import { heatCourseOf } from './heatCourse.ts';
import type { SetId } from './ids.ts';
import type { Plan } from './plan.ts';
import { type Timeline, timelineOf } from './timeline.ts';

/** What a rig has behind it when the turns begin. */
export interface RigBehind {
  readonly settings: Settings;
  /** Its last exposure. */
  readonly exposed: Seconds;
  /** When its sensor stopped working, and when it was free again with its heat then. */
  readonly idleFromS: Seconds;
  readonly freeS: Seconds;
  readonly heat: Doublings;
}

/** What is shot before the turns that can be put in order: the capped series. */
export interface OrderHead {
  readonly frames: readonly PlannedFrame[];
  readonly timeline: Timeline;
  /** Only rigs that take part in it. */
  readonly behind: ReadonlyMap<RigId, RigBehind>;
}

/** The set that a frame is shot with: its own, or the one that its capped dark follows. */
export function homesOf(plan: Plan): ReadonlyMap<SetId, SetId> {
  const home = new Map<SetId, SetId>();
  let last: SetId | null = null;
  for (const { id, kind } of plan.sets) {
    if (kind !== 'capped-dark') last = id;
    if (last !== null) home.set(id, last);
  }
  return home;
}

/** Tells the frames of a list that stand before its turns from those that can be put in order. */
export function splitHead(
  plan: Plan,
  frames: readonly PlannedFrame[],
): { readonly before: readonly PlannedFrame[]; readonly turns: readonly PlannedFrame[] } {
  const home = homesOf(plan);
  const series = new Set(
    plan.sets.flatMap(({ id, kind }) => (kind === 'capped-series' ? [id] : [])),
  );
  const isBefore = ({ set }: PlannedFrame): boolean => series.has(home.get(set) ?? set);
  return {
    before: frames.filter(isBefore),
    turns: frames.filter((frame) => !isBefore(frame)),
  };
}

/**
 * Works out what the frames before the turns leave behind.
 *
 * @returns a refusal ('rig-gone') if a frame's rig is not among the gear.
 */
export function orderHead(
  plan: Plan,
  gear: Gear,
  frames: readonly PlannedFrame[],
  thermal: ThermalOf,
): OrderHead | Refusal {
  const timeline = timelineOf(plan, gear, frames);
  if (isRefusal(timeline)) return timeline;
  const course = heatCourseOf(plan, gear, frames, timeline);
  if (isRefusal(course)) return course;
  const behind = new Map<RigId, RigBehind>();
  for (const [rig, spans] of course) {
    const last = frames.findLastIndex((frame) => frame.rig === rig);
    const [frame, times] = [frames[last], timeline.frames[last]];
    const assembled = assemble(gear, rig);
    if (!frame || !times || !assembled) return refuse('rig-gone');
    const { tau, plateaus } = usualModel(thermal(rig));
    behind.set(rig, {
      settings: frame.settings,
      exposed: frame.exact.t,
      idleFromS: duration(times.endS + darkFrameS(assembled.body.darkFrame, frame.exact.t)),
      freeS: times.freeS,
      heat: spans.reduce(
        (heat, { mode, lasts }) => heatAfter(heat, plateaus[mode], lasts, tau),
        doublings(0),
      ),
    });
  }
  return { frames, timeline, behind };
}
