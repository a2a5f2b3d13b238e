import { isRefusal, type Refusal, refuse } from './refusal.ts';
import type { Dn, DnVariance } from './sensorUnits.ts';

/*
 * Noise from two frames of the same rig at the same settings: the difference drops what both have,
 * fixed pattern, texture and vignetting, which one frame alone shows as noise. Values are linear;
 * take no clipped and no near-black region. The divisor is N - 1.
 */

/** The linear values of one region of a frame. */
export type Region = ArrayLike<number>;

function meanOf(values: Region): number {
  let sum = 0;
  for (let index = 0; index < values.length; index += 1) sum += values[index] as number;
  return sum / values.length;
}

/** The variance of something that is told pixel by pixel. */
function varianceOf(count: number, value: (index: number) => number): DnVariance {
  let sum = 0;
  for (let index = 0; index < count; index += 1) sum += value(index);
  const mean = sum / count;
  let squares = 0;
  for (let index = 0; index < count; index += 1) squares += (value(index) - mean) ** 2;
  return (squares / (count - 1)) as DnVariance;
}

/** What keeps two regions from being compared; null if nothing does. */
function unfit(first: Region, second: Region): Refusal | null {
  if (first.length !== second.length) return refuse('regions-differ-in-size');
  return first.length < 2 ? refuse('too-few-pixels') : null;
}

const at = (region: Region, index: number): number => region[index] as number;

/** The noise variance of one frame from two, var(y1 - y2) / 2. */
export const twoFrameVariance = (first: Region, second: Region): DnVariance | Refusal =>
  unfit(first, second) ??
  ((varianceOf(first.length, (index) => at(first, index) - at(second, index)) / 2) as DnVariance);

/**
 * The same where the light faded between the two: the second is brought to the first's mean by g =
 * mean1 / mean2, s² = var(y1 - g y2) / (1 + g²). Black must have been taken off.
 */
export function twoFrameVarianceScaled(first: Region, second: Region): DnVariance | Refusal {
  const no = unfit(first, second);
  if (no) return no;
  const g = meanOf(first) / meanOf(second);
  if (!Number.isFinite(g)) return refuse('second-frame-black');
  const difference = (index: number): number => at(first, index) - g * at(second, index);
  return (varianceOf(first.length, difference) / (1 + g ** 2)) as DnVariance;
}

/** The variance within one frame, which holds pattern and texture as well as noise. */
export const singleFrameVariance = (frame: Region): DnVariance | Refusal =>
  frame.length < 2
    ? refuse('too-few-pixels')
    : varianceOf(frame.length, (index) => at(frame, index));

/** The mean of two frames, black and all. */
export const pairMean = (first: Region, second: Region): Dn | Refusal =>
  unfit(first, second) ?? (((meanOf(first) + meanOf(second)) / 2) as Dn);

/** The deviation within one frame. */
export function singleFrameDeviation(frame: Region): Dn | Refusal {
  const variance = singleFrameVariance(frame);
  return isRefusal(variance) ? variance : (Math.sqrt(variance) as Dn);
}
