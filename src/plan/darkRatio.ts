import type { Body } from '../gear/body.ts';
import type { Exact } from '../gear/settings.ts';
import { ev100 } from '../science/exposure.ts';
import type { Doublings, ElectronsPerSecond } from '../science/sensorUnits.ts';
import { DARK_CURRENT_AT_20 } from '../science/thermalRange.ts';
import type { Ev, Ratio } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import { darkLimit } from './heatLimit.ts';
import type { HeatLimit, PlanSet } from './plan.ts';
import { SHADOWS_BELOW, shadowCounts, USUAL_READ_NOISE } from './shadows.ts';

/** The scene that a set's exposure is made for: that in which its reference comes out as meant. */
export const sceneOfSet = ({ targetOffset }: PlanSet, { n, t, s }: Exact): Ev =>
  (ev100(n, t, s) + targetOffset) as Ev;

/** The scene that a set's frames are made for; null where no light is compared, or none can be set. */
export function sceneUnder(set: PlanSet, frames: readonly PlannedFrame[]): Ev | null {
  if (set.kind !== 'light') return null;
  const own = frames.find((frame) => frame.set === set.id && frame.rig === set.reference);
  return own ? sceneOfSet(set, own.exact) : null;
}

/**
 * How much more dark current a frame may have than a rested body's, as a ratio: what the noise
 * tolerated in its shadows allows, or the limit for unknown light under a cap.
 *
 * @param scene null where no light falls on the sensor.
 * @param dark of a rested pixel: known to two decades only.
 */
export const darkRatio = (
  limit: HeatLimit,
  body: Body,
  exact: Exact,
  scene: Ev | null,
  rested: Doublings,
  dark: ElectronsPerSecond = DARK_CURRENT_AT_20.usual,
): Ratio =>
  darkLimit(
    scene === null
      ? null
      : shadowCounts(body, exact, {
          scene,
          below: SHADOWS_BELOW,
          read: USUAL_READ_NOISE,
          dark,
          heat: rested,
        }),
    limit,
  );
