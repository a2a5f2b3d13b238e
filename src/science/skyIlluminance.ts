import type { Degrees, Lux } from './units.ts';

/**
 * log10 of the illuminance in lx as a Chebyshev series in (altitude - 35) / 55, the first
 * coefficient taken whole. Source: illuminance code of the U.S. Naval Observatory, 1996, a fit to
 * Brown, Natural Illumination Charts, U.S. Navy BuShips Report 374-1, 1952; read from a public
 * code base that carries the routine, the charts themselves not seen.
 */
const COEFFICIENTS = [
  2.936506136978837, 3.62732632756649, -2.233214447344062, 1.015115465301055, -0.1898083125016442,
  -0.2620601965183225, 0.3829581829851666, -0.2879683995474197, 0.1134487130232542,
  0.03092492471913735, -0.09853820413978147, 0.08976982948378892, -0.04151839367722814,
  -0.005982465090666525, 0.02913731978265127, -0.02832367750489338, 0.01326901081959582,
  0.003365892788214903, -0.01123578761200569, 0.009862218049840636, -0.003690281457418281,
  -0.001338196406378107, 0.005060420921563732, -0.003079727252974708, 0.002969002584378676,
] as const;

/** The fit ends here; darker than this it is natural night and the value is held. */
const DARKEST = -20;

/** Clenshaw's sum of a Chebyshev series. */
function chebyshev(coefficients: readonly number[], s: number): number {
  let next = 0;
  let afterNext = 0;
  for (const coefficient of coefficients.slice(1).reverse()) {
    [next, afterNext] = [coefficient + 2 * s * next - afterNext, next];
  }
  return (coefficients[0] ?? 0) + s * next - afterNext;
}

/**
 * The light of sun and clear sky on level ground in lx, at the sun's airless altitude from -90 to
 * 90 degrees. Below -20 degrees the value at -20 is held (0.00052 lx): that is the natural night,
 * starlight and airglow, so no floor must be added.
 *
 * The airless altitude is meant above the horizon as well. The code that the coefficients come
 * from takes the refracted one there, which makes the light jump by 0.56 stop at sunset; a sky does
 * not jump. The price, our own choice: at most 0.38 stop at 0 degrees, 0.10 at 3, 0.02 at 8.
 *
 * Accuracy: published models of a clear sky agree within 0.1 stop down to -9 degrees and 0.5 at
 * -16; clear evenings themselves differ by 0.5 stop at sunset and 0.8 at -6 degrees (Glossary of
 * Meteorology, American Meteorological Society), and the real light by a factor of 10 or more with
 * the weather (Janiczek & DeYoung, USNO Circular 171, 1987).
 */
export const skyIlluminance = (sunAltitude: Degrees): Lux =>
  (10 ** chebyshev(COEFFICIENTS, (Math.max(sunAltitude, DARKEST) - 35) / 55)) as Lux;
