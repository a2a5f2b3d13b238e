import type { Micrometres, MicrowattsPerCm2, Seconds, SquareMicrometres } from './units.ts';

/** The Planck constant in J s; SI, exact. */
const PLANCK = 6.62607015e-34;
/** The speed of light in m/s; SI, exact. */
const LIGHT = 299_792_458;

/**
 * The photons that fall on a pixel, A t E wavelength / (h c). Source: EMVA Standard 1288 3.1,
 * eq. 4 (50.34 photons for 1 µm², 1 ms, 1 µm and 1 µW/cm²).
 */
export const photonsPerPixel = (
  pixelArea: SquareMicrometres,
  t: Seconds,
  wavelength: Micrometres,
  irradiance: MicrowattsPerCm2,
): number =>
  // µm² to m², µm to m, µW/cm² to W/m².
  (pixelArea * 1e-12 * t * (wavelength * 1e-6) * (irradiance * 1e-2)) / (PLANCK * LIGHT);
