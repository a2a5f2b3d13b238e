import { isRefusal, type Refusal, refuse } from './refusal.ts';
import { type Doublings, doublings, type KelvinDifference } from './sensorUnits.ts';
import type { Ranged } from './thermalRange.ts';
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

/** How far off each heat is taken to be (68 %), as where the figures above come from (our choice). */
export const HEAT_ERROR: Doublings = doublings(0.02);

/** What three heats say of a body at first, with what `HEAT_ERROR` leaves open (68 %). */
export interface FirstValues {
  readonly tau: Ranged<Seconds>;
  /** Over the rested body. */
  readonly plateau: Ranged<Doublings>;
}

/**
 * Time constant and plateau of a rise with their ranges, by the first order of the errors: those of
 * the time constant in the logarithm of the ratio of the rises, where they lie evenly.
 *
 * @returns a refusal where the heats do not rise ('not-rising') or do not settle ('not-settling'),
 * where the steps are shorter than half the time constant that they give ('step-too-short'), or the
 * rise is lost in the error of the heats ('rise-within-error').
 */
export function firstValues(heats: ThreeHeats, step: Seconds): FirstValues | Refusal {
  const rise = heats.second - heats.first;
  if (rise <= 0) return refuse('not-rising');
  const share = shareOfRise(heats);
  const tau = fittedTimeConstant(heats, step);
  const plateau = fittedPlateau(heats);
  if (isRefusal(share)) return share;
  if (isRefusal(tau)) return tau;
  if (isRefusal(plateau)) return plateau;
  // Half to within rounding.
  if (step < (tau / 2) * (1 - 1e-9)) return refuse('step-too-short');
  const fall = -Math.log(share);
  const fallError = (HEAT_ERROR / rise) * Math.sqrt(1 + (1 + 1 / share) ** 2 + 1 / share ** 2);
  if (fallError >= fall) return refuse('rise-within-error');
  const plateauError = (HEAT_ERROR * Math.sqrt(share ** 4 + 4 * share ** 2 + 1)) / (1 - share) ** 2;
  return {
    tau: {
      usual: tau,
      least: (step / (fall + fallError)) as Seconds,
      most: (step / (fall - fallError)) as Seconds,
    },
    plateau: {
      usual: plateau,
      least: (plateau - plateauError) as Doublings,
      most: (plateau + plateauError) as Doublings,
    },
  };
}

/**
 * Heats from three dark levels at equal steps of unbroken exposing, in any unit that goes with the
 * dark current: log2 of each over the first, over the heat that the same rise gives the first one.
 *
 * @param after from the rested body to the middle of the first level.
 * @returns a refusal ('level-not-positive', 'not-settling').
 */
export function heatsOfLevels(
  levels: readonly [number, number, number],
  step: Seconds,
  after: Seconds,
): ThreeHeats | Refusal {
  if (!levels.every((level) => level > 0)) return refuse('level-not-positive');
  const over = (level: number) => Math.log2(level / levels[0]) as Doublings;
  const heats: ThreeHeats = {
    first: over(levels[0]),
    second: over(levels[1]),
    third: over(levels[2]),
  };
  const share = shareOfRise(heats);
  const left = fittedPlateau(heats);
  if (isRefusal(share)) return share;
  if (isRefusal(left)) return left;
  // What is left to rise falls by the share in each step: so it was larger at rest.
  const first = left * (share ** (-after / step) - 1);
  return {
    first: first as Doublings,
    second: (first + heats.second) as Doublings,
    third: (first + heats.third) as Doublings,
  };
}

/** The standard uncertainty of a temperature that is told in steps, step / sqrt 12. */
export const steppedUncertainty = (step: KelvinDifference): KelvinDifference =>
  (step / Math.sqrt(12)) as KelvinDifference;
