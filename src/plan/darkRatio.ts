import type { Body } from '../gear/body.ts';
import type { Exact } from '../gear/settings.ts';
import { ev100 } from '../science/exposure.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { DARK_CURRENT_AT_20 } from '../science/thermalRange.ts';
import type { Ev, Ratio } from '../science/units.ts';
import { darkLimit } from './heat.ts';
import type { HeatLimit, PlanSet } from './plan.ts';
import { SHADOWS_BELOW, shadowCounts, USUAL_READ_NOISE } from './shadows.ts';

/** The scene that a set's exposure is made for: that in which its reference comes out as meant. */
export const sceneOfSet = ({ targetOffset }: PlanSet, { n, t, s }: Exact): Ev =>
  (ev100(n, t, s) + targetOffset) as Ev;

/**
 * How much more dark current a frame may have than a rested body's, as a ratio: what the noise
 * tolerated in its shadows allows, or the limit for unknown light under a cap.
 *
 * @param scene null where no light falls on the sensor.
 */
export const darkRatio = (
  limit: HeatLimit,
  body: Body,
  exact: Exact,
  scene: Ev | null,
  rested: Doublings,
): Ratio =>
  darkLimit(
    scene === null
      ? null
      : shadowCounts(body, exact, {
          scene,
          below: SHADOWS_BELOW,
          read: USUAL_READ_NOISE,
          dark: DARK_CURRENT_AT_20.usual,
          heat: rested,
        }),
    limit,
  );
