import { deviationRatioHalfWidth, type MeanInterval } from './intervals.ts';
import type { DegreesOfFreedom, Probability } from './quantiles.ts';
import { isRefusal, type Refusal } from './refusal.ts';
import { pairMean, type Region, twoFrameVariance } from './repeats.ts';
import type { Dn, SnrStops } from './sensorUnits.ts';
import type { Ratio } from './units.ts';

/** A measured noise with the signal it was measured at, black taken off. */
export interface Noise {
  readonly deviation: Dn;
  readonly mean: Dn;
}

/**
 * How much noisier A is than B in stops, log2 of the ratio of deviation over mean; negative where A
 * is cleaner. Both at the output size. These are stops of signal-to-noise ratio: 'worth in light' is
 * another figure.
 */
export const noiseRelative = (a: Noise, b: Noise): SnrStops =>
  Math.log2(a.deviation / a.mean / (b.deviation / b.mean)) as SnrStops;

/** White raw noise as measured, with what brings it to the output size and says how sure it is. */
export interface RawNoise extends Noise {
  /** Sensor pixels of the measured plane per output pixel. */
  readonly perOutput: Ratio;
  readonly dof: DegreesOfFreedom;
}

/** The noise of one rig from two of its frames, black taken off. */
export function measuredNoise(first: Region, second: Region, perOutput: Ratio): RawNoise | Refusal {
  const variance = twoFrameVariance(first, second);
  const mean = pairMean(first, second);
  if (isRefusal(variance)) return variance;
  if (isRefusal(mean)) return mean;
  const dof = (first.length - 1) as DegreesOfFreedom;
  return { deviation: Math.sqrt(variance) as Dn, mean, perOutput, dof };
}

/** How much noisier A is than B from white raw noise, brought to the output size, with its interval from pixels. */
export function noiseRelativeAtOutput(
  a: RawNoise,
  b: RawNoise,
  level: Probability,
): MeanInterval<SnrStops> {
  const atOutput = ({ deviation, mean, perOutput }: RawNoise): Noise => ({
    deviation: (deviation / Math.sqrt(perOutput)) as Dn,
    mean,
  });
  const mean = noiseRelative(atOutput(a), atOutput(b));
  const half = deviationRatioHalfWidth(a.dof, b.dof, level);
  return { mean, low: (mean - half) as SnrStops, high: (mean + half) as SnrStops };
}
