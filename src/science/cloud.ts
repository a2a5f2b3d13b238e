import { type Ratio, ratio, type Stops } from './units.ts';

/**
 * What the sky is like, and by how much it divides the light. 'clear' includes broken cloud over
 * less than 70 % of the sky with the sun free; 'thin-cloud-over-sun' still shows the disc.
 * Source: sky conditions of the U.S. Naval Observatory (Janiczek & DeYoung 1987; illuminance code
 * 1996).
 */
const DIVISORS = {
  clear: ratio(1),
  'thin-cloud-over-sun': ratio(2),
  'average-cloud': ratio(3),
  'dark-stratus': ratio(10),
} as const;

export type SkyCondition = keyof typeof DIVISORS;

/** From the brightest to the darkest. */
export const SKY_CONDITIONS = Object.keys(DIVISORS) as readonly SkyCondition[];

/** By how much a sky divides the light of sun, sky and moon. */
export const cloudDivisor = (sky: SkyCondition): Ratio => DIVISORS[sky];

/**
 * The same in stops, zero or negative. A rough figure: high cloud lit from below can add light
 * after sunset, and a bank of cloud under the horizon takes it away early.
 */
export const cloudStops = (sky: SkyCondition): Stops => -Math.log2(cloudDivisor(sky)) as Stops;
