import { darkNoise } from './dynamicRange.ts';
import { type Refusal, refuse } from './refusal.ts';
import type { Dn, DnVariance, Electrons, Gain } from './sensorUnits.ts';

/*
 * Gain and read noise from how variance rises with the mean. From raw values only: a JPEG has no
 * gain. Source: EMVA 1288, as its reference implementation computes it.
 */

/** A level of light: mean and two-frame variance of one region. */
export interface Level {
  readonly mean: Dn;
  readonly variance: DnVariance;
}

/**
 * The gain K, the slope of variance on mean over those of a dark pair, through the origin. Use levels
 * up to 70 % of saturation. One level of N pixels knows it to about sqrt(2/N). Refuses levels no
 * brighter than the dark ('no-light').
 */
export function systemGain(dark: Level, levels: readonly Level[]): Gain | Refusal {
  let products = 0;
  let squares = 0;
  for (const { mean, variance } of levels) {
    products += (mean - dark.mean) * (variance - dark.variance);
    squares += (mean - dark.mean) ** 2;
  }
  const gain = products / squares;
  return gain > 0 && Number.isFinite(gain) ? (gain as Gain) : refuse('no-light');
}

/**
 * The read noise in electrons behind a dark pair's variance.
 *
 * @param rounded whether the values were rounded to whole ones, as a camera's are: then what
 * rounding adds is taken off.
 */
export const readNoise = (darkVariance: DnVariance, gain: Gain, rounded: boolean): Electrons =>
  rounded ? darkNoise(darkVariance, gain) : ((Math.sqrt(darkVariance) / gain) as Electrons);
