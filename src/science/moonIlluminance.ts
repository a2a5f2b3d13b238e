import type { Degrees, Lux, Ratio } from './units.ts';

/** The horizontal parallax at the moon's mean distance, for which the altitude law holds. */
const MEAN_PARALLAX = 0.951;

/**
 * log10 of the full moon's light in lx as cubics in altitude / 90, from each altitude up.
 * Source: Explanatory Supplement to the Astronomical Almanac, 1992, ch. 9 (Yallop & Hohenkerk),
 * pp. 490-493, through two independent public transcriptions. Stated error: 0.03 at most.
 */
const ALTITUDE_LAWS = [
  { from: 20, cubic: [-1.95, 4.06, -4.24, 1.56] },
  { from: 5, cubic: [-2.58, 12.58, -42.58, 59.06] },
  { from: -0.8, cubic: [-2.79, 24.27, -252.95, 1321.29] },
] as const;

/**
 * The moon's light at a phase angle (0 = full, in degrees) over its light at full without the
 * opposition surge. Source: Krisciunas & Schaefer, PASP 103 (1991) 1033, eq. 20, through public
 * codes; within 2 % of JPL Horizons magnitudes from 10 to 150 degrees. Within 7 degrees of full the
 * surge adds up to 35 %, and the waxing and waning quarters differ by about 20 %: not modelled.
 */
export const moonPhaseLightRatio = (phaseAngle: Degrees): Ratio =>
  (10 ** (-0.4 * (0.026 * Math.abs(phaseAngle) + 4e-9 * phaseAngle ** 4))) as Ratio;

/**
 * The light of the moon on level ground in lx: airless topocentric altitude, phase angle and
 * equatorial horizontal parallax, all in degrees. Zero below -0.8 degrees. Expect 0.3 stop either
 * way under a clear sky.
 */
export function moonIlluminance(
  altitude: Degrees,
  phaseAngle: Degrees,
  horizontalParallax: Degrees,
): Lux {
  const law = ALTITUDE_LAWS.find(({ from }) => altitude >= from);
  if (!law) return 0 as Lux;
  const x = altitude / 90;
  const [c0, c1, c2, c3] = law.cubic;
  const full = 10 ** (c0 + x * (c1 + x * (c2 + x * c3)));
  const nearness = (horizontalParallax / MEAN_PARALLAX) ** 2;
  return (full * moonPhaseLightRatio(phaseAngle) * nearness) as Lux;
}
