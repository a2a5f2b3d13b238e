import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { sameSettings } from '../gear/settings.ts';
import type { HeatSegment } from '../science/heat.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { FrameKey } from './ids.ts';
import { settlingOf, waitsIn } from './nextFrame.ts';
import type { Plan } from './plan.ts';
import type { Timeline } from './timeline.ts';

/** A stretch of one rig's evening; `frame` names the exposure of a frame. */
export interface HeatSpan extends HeatSegment {
  readonly frame: FrameKey | null;
}

/** What each rig goes through, from the start of the list on. */
export type HeatCourse = ReadonlyMap<RigId, readonly HeatSpan[]>;

/**
 * What each rig goes through in a timeline.
 *
 * A rig is on while it is dialled, from settling to the shutter, and while it writes; it exposes
 * during its own dark frame as well. In between it waits: on the way to the tripod, at a rest, while
 * others work.
 *
 * @returns a refusal ('rig-gone') if a frame's rig is not among the gear, or ('frames-differ') if the
 * timeline is of another list.
 */
export function heatCourseOf(
  plan: Plan,
  gear: Gear,
  frames: readonly PlannedFrame[],
  timeline: Timeline,
): HeatCourse | Refusal {
  const course = new Map<RigId, HeatSpan[]>();
  const past = new Map<RigId, { readonly settings: PlannedFrame['settings']; freeS: Seconds }>();
  for (const [index, { key, rig, settings, exact }] of frames.entries()) {
    const times = timeline.frames[index];
    const assembled = assemble(gear, rig);
    if (!assembled) return refuse('rig-gone');
    if (times?.key !== key) return refuse('frames-differ');
    const { body, lens } = assembled;
    const spans = course.get(rig) ?? [];
    course.set(rig, spans);
    const before = past.get(rig);

    const since = before?.freeS ?? duration(0);
    const settling = settlingOf(plan, body);
    const settledFrom = times.startS - settling;
    const rest = timeline.rests.find(
      (span) => span.rig === rig && span.fromS >= since && span.toS <= settledFrom + 1e-6,
    );
    const dialled =
      before && sameSettings(before.settings, settings) ? 0 : plan.allowances.dialChangeS;
    const dialledUntil = rest?.fromS ?? settledFrom;

    const add = (mode: HeatSpan['mode'], lasts: number, frame: FrameKey | null = null) => {
      if (lasts > 0) spans.push({ mode, lasts: duration(lasts), frame });
    };
    const waiting = waitsIn(lens);
    add(waiting, dialledUntil - dialled - since);
    add('idle', dialled);
    add(waiting, settledFrom - dialledUntil);
    add('idle', settling);
    add('exposing', exact.t, key);
    add('exposing', darkFrameS(body.darkFrame, exact.t));
    add('idle', plan.allowances.writeS);
    past.set(rig, { settings, freeS: times.freeS });
  }
  return course;
}

/** What a rig has gone through up to so many seconds after the start of the list. */
export function behindAt(spans: readonly HeatSpan[], at: Seconds): readonly HeatSegment[] {
  const behind: HeatSegment[] = [];
  let left: number = at;
  for (const { mode, lasts } of spans) {
    // A rounding of the clock is no stretch of time.
    if (left <= 1e-9) break;
    behind.push({ mode, lasts: duration(Math.min(lasts, left)) });
    left -= lasts;
  }
  return behind;
}
