import type { Kelvin } from './sensorUnits.ts';
import { type Electrons, type PerUm2LuxSecond, response } from './sensorUnits.ts';
import type { LuxSeconds, Micrometres, Ratio, SquareMicrometres } from './units.ts';

/*
 * From light on the sensor to electrons in a pixel.
 */

/** Planck constant in J s, speed of light in m/s, Boltzmann constant in J/K; SI, exact. */
const PLANCK = 6.62607015e-34;
const LIGHT = 299_792_458;
const BOLTZMANN = 1.380649e-23;
/** The luminous efficacy in lm/W at 540 THz; SI, exact. Taken as that at the peak of the eye's curve. */
const EFFICACY = 683;

/**
 * What a pixel makes of light: photons x quantum efficiency behind filter and glass. 0.23 of the
 * photons of daylight. From memory; 1200 to 4000 are possible.
 */
export const USUAL_RESPONSE: PerUm2LuxSecond = response(2500);

/** The mean signal of a pixel in electrons, H x area x response. */
export const electronsPerPixel = (
  h: LuxSeconds,
  pixelArea: SquareMicrometres,
  of: PerUm2LuxSecond,
): Electrons => (h * pixelArea * of) as Electrons;

/** The share of saturation at which the mid-tone stands, of exposures (10/S) / (78/S): 0.128. */
export const midtoneShare = (midtone: LuxSeconds, saturation: LuxSeconds): Ratio =>
  (midtone / saturation) as Ratio;

/** The photons per µm² in 1 lx s of light at the peak of the eye's curve: 4091 at 555 nm. */
export const photonsPerLuxSecond = (wavelength: Micrometres): PerUm2LuxSecond =>
  ((1e-12 / EFFICACY) * ((wavelength * 1e-6) / (PLANCK * LIGHT))) as PerUm2LuxSecond;

/** The eye's curve by two lobes of unequal flanks, in nm: Wyman, Sloan & Shirley 2013, from memory. */
const LOBES = [
  { height: 0.821, peak: 568.8, below: 46.9, above: 40.5 },
  { height: 0.286, peak: 530.9, below: 16.3, above: 31.1 },
] as const;

const eye = (nm: number): number =>
  LOBES.reduce((sum, { height, peak, below, above }) => {
    const away = (nm - peak) / (nm < peak ? below : above);
    return sum + height * Math.exp(-(away ** 2) / 2);
  }, 0);

/** The spectral radiance of a black body, but for a constant. */
const blackBody = (nm: number, at: Kelvin): number =>
  nm ** -5 / Math.expm1((PLANCK * LIGHT) / (nm * 1e-9 * BOLTZMANN * at));

/**
 * The photons per µm² between two wavelengths in 1 lx s of a black body's light: 10 905 at 5500 K
 * and 11 961 at 2856 K from 0.4 to 0.7 µm. Infrared beyond would raise it under lamps. Derived.
 */
export function photonsPerLuxSecondOfBlackBody(
  at: Kelvin,
  from: Micrometres,
  to: Micrometres,
): PerUm2LuxSecond {
  let photons = 0;
  let seen = 0;
  // Steps of 1 nm by the midpoint rule; the curves are smooth over that.
  for (let nm = 360.5; nm < 830; nm += 1) {
    const power = blackBody(nm, at);
    seen += power * eye(nm);
    if (nm > 1000 * from && nm < 1000 * to) {
      photons += power * photonsPerLuxSecond((nm / 1000) as Micrometres);
    }
  }
  return (photons / seen) as PerUm2LuxSecond;
}
