import type { Refusal } from './refusal.ts';
import {
  type Density,
  parseSeconds,
  type Ratio,
  type Seconds,
  type Stops,
  type Transmittance,
} from './units.ts';

/*
 * Neutral density filters. Density is log10, stops are log2: a factor of 1000 is 9.966 stops, not
 * ten. Marked and real density can be a third of a stop apart (common practice, no source), so
 * one and the same filter goes on both bodies.
 */

/** The stops a density takes, D / log10(2): zero or more. */
export const stopsOfDensity = (density: Density): Stops => (density / Math.log10(2)) as Stops;

/** The stops a filter factor takes, log2(factor). */
export const stopsOfFactor = (factor: Ratio): Stops => Math.log2(factor) as Stops;

/** The filter factor of a density, 10^D. */
export const factorOfDensity = (density: Density): Ratio => (10 ** density) as Ratio;

/** The part of the light that passes a filter of so many stops, 2^-stops. */
export const transmittanceOfStops = (loss: Stops): Transmittance => (2 ** -loss) as Transmittance;

/** The time in seconds that makes up for a filter, t 2^stops; refuses one beyond all numbers. */
export const timeWithFilter = (t: Seconds, loss: Stops): Seconds | Refusal =>
  parseSeconds(t * 2 ** loss);
