import { thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { firstToSettled } from '../science/heat.ts';
import { must } from '../science/refusal.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { overCorners, type Ranged } from '../science/thermalRange.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import { waitsIn } from './nextFrame.ts';
import type { PlanSet, RestRule } from './plan.ts';
import { restOwed } from './rest.ts';

/** What the rule of thumb makes of one rig's longest frames, over and over. */
export interface Rhythm {
  readonly rig: RigId;
  readonly t: Seconds;
  readonly rest: Seconds;
  /** The settled frame over the first of a rested body: the rule does not bring it back to rested. */
  readonly leaves: Ranged<Doublings>;
}

/** The longest frame of some that are compared, or of one rig's; null if there is none. */
export function longestFrame(
  sets: readonly PlanSet[],
  frames: readonly PlannedFrame[],
  rig?: RigId,
): PlannedFrame | null {
  const series = new Set(sets.flatMap(({ id, kind }) => (kind === 'capped-series' ? [id] : [])));
  return frames
    .filter((frame) => !series.has(frame.set) && (rig === undefined || frame.rig === rig))
    .reduce<PlannedFrame | null>(
      (longest, frame) => (longest && longest.exact.t >= frame.exact.t ? longest : frame),
      null,
    );
}

/** What a rule of thumb leaves on each rig at the longest exposure of its list. */
export function rhythmsOf(
  rule: RestRule,
  gear: Gear,
  sets: readonly PlanSet[],
  frames: readonly PlannedFrame[],
): readonly Rhythm[] {
  const rigs = [...new Set(frames.map(({ rig }) => rig))];
  return rigs.flatMap((rig) => {
    const longest = longestFrame(sets, frames, rig);
    const assembled = assemble(gear, rig);
    if (!longest || !assembled) return [];
    const { t } = longest.exact;
    const rest = restOwed(rule, t, duration(0));
    const waiting = waitsIn(assembled.lens);
    const leaves = overCorners(thermalRangeOf(assembled.body), ({ tau, plateaus }) =>
      // An exposure takes time, so its rhythm does.
      must(
        firstToSettled({
          exposing: plateaus.exposing,
          t,
          resting: plateaus[waiting],
          rest,
          tau,
        }),
      ),
    );
    return [{ rig, t, rest, leaves }];
  });
}
