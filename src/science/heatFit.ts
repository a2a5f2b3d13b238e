import { isRefusal, type Refusal, refuse } from './refusal.ts';
import type { Doublings, KelvinDifference } from './sensorUnits.ts';
import type { Seconds } from './units.ts';

/*
 * First values for a body's own heat from three heats at equal steps of a capped series. The steps
 * must be at least half the time constant: with +-0.02 doublings on each heat a true 480 s comes
 * out (68 %) as 437 to 532 s for steps of 480 s, as 276 to 968 s for steps of 120 s (simulated).
 */

/** Three heats at equal steps of time. */
export interface ThreeHeats {
  readonly first: Doublings;
  readonly second: Doublings;
  readonly third: Doublings;
}

/** The part of each rise that the next has; refuses a rise that does not settle ('not-settling'). */
function shareOfRise({ first, second, third }: ThreeHeats): number | Refusal {
  const share = (third - second) / (second - first);
  return share > 0 && share < 1 ? share : refuse('not-settling');
}

/** The time constant, -step / ln q with q the ratio of the rises. */
export function fittedTimeConstant(heats: ThreeHeats, step: Seconds): Seconds | Refusal {
  const share = shareOfRise(heats);
  return isRefusal(share) ? share : ((-step / Math.log(share)) as Seconds);
}

/** The plateau that the heats go to. */
export function fittedPlateau(heats: ThreeHeats): Doublings | Refusal {
  const share = shareOfRise(heats);
  if (isRefusal(share)) return share;
  return (heats.first + (heats.second - heats.first) / (1 - share)) as Doublings;
}

/** The standard uncertainty of a temperature that is told in steps, step / sqrt 12. */
export const steppedUncertainty = (step: KelvinDifference): KelvinDifference =>
  (step / Math.sqrt(12)) as KelvinDifference;
