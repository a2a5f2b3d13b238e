import {
  chiSquareQuantile,
  type DegreesOfFreedom,
  normalQuantile,
  type Probability,
  tQuantile,
} from './quantiles.ts';
import { type Refusal, refuse } from './refusal.ts';
import type { Dn, SnrStops } from './sensorUnits.ts';
import type { Ratio } from './units.ts';

/*
 * How sure a measured noise is. These hold for white noise: correlated noise (demosaicing,
 * denoising, JPEG) has far fewer independent pixels. Counting pixels understates: light, motion and
 * focus change between sets, so show the wider of the interval from pixels and the one from sets.
 */

/** The probability that so much lies below the upper end of a two-sided interval. */
const upperEnd = (level: Probability): Probability => ((1 + level) / 2) as Probability;
const lowerEnd = (level: Probability): Probability => ((1 - level) / 2) as Probability;

/** The factors on a measured deviation that bound the true one. */
export const deviationFactors = (
  dof: DegreesOfFreedom,
  level: Probability,
): { readonly low: Ratio; readonly high: Ratio } => ({
  low: Math.sqrt(dof / chiSquareQuantile(upperEnd(level), dof)) as Ratio,
  high: Math.sqrt(dof / chiSquareQuantile(lowerEnd(level), dof)) as Ratio,
});

/**
 * The relative standard uncertainty of a deviation from so many repeats, 1 / sqrt(2 (n - 1)): 13 %
 * at 30. Source: JCGM 100:2008, G.1.2. Refuses fewer than two ('too-few-repeats').
 */
export const deviationUncertainty = (repeats: number): Ratio | Refusal =>
  Number.isInteger(repeats) && repeats >= 2
    ? ((1 / Math.sqrt(2 * (repeats - 1))) as Ratio)
    : refuse('too-few-repeats');

/** Half the width of the interval of a ratio of two deviations, in stops. */
export const deviationRatioHalfWidth = (
  a: DegreesOfFreedom,
  b: DegreesOfFreedom,
  level: Probability,
): SnrStops =>
  ((normalQuantile(upperEnd(level)) * Math.sqrt(1 / (2 * a) + 1 / (2 * b))) / Math.LN2) as SnrStops;

/** A mean with the interval that holds the true one. */
export interface MeanInterval<T extends number> {
  readonly mean: T;
  readonly low: T;
  readonly high: T;
}

/**
 * The mean over sets, +- t sd / sqrt(m). Refuses a single set, of which only pixel statistics can
 * be told ('one-set-only').
 */
export function meanInterval<T extends number>(
  values: readonly T[],
  level: Probability,
): MeanInterval<T> | Refusal {
  const count = values.length;
  if (count < 2) return refuse('one-set-only');
  const mean = values.reduce((sum, value) => sum + value, 0) / count;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const standardError = Math.sqrt(squares / (count - 1) / count);
  const half = tQuantile(upperEnd(level), (count - 1) as DegreesOfFreedom) * standardError;
  return { mean: mean as T, low: (mean - half) as T, high: (mean + half) as T };
}

/** The median of a variance over its mean, near (1 - 2 / 9 dof)³: what a median of tiles is over. */
export const medianOverMean = (dof: DegreesOfFreedom): Ratio =>
  (chiSquareQuantile(0.5 as Probability, dof) / dof) as Ratio;

/** The deviation behind a median absolute deviation, for a normal distribution: x 1.4826. */
export const deviationFromMad = (mad: Dn): Dn => (mad / normalQuantile(0.75 as Probability)) as Dn;
