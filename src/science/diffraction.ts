import type { CyclesPerMm, FNumber, Micrometres, Ratio } from './units.ts';

/*
 * The blur of a perfect lens. 'Diffraction-limited' has no one definition: show a gradual cost,
 * not a cliff.
 */

/** The first zero of the Bessel function J1; mathematical tables, from memory. */
const FIRST_ZERO_OF_J1 = 3.83170597020751;

/** The Bessel function J0 at that place; mathematical tables, from memory. */
const J0_AT_FIRST_ZERO_OF_J1 = -0.402759395702553;

/** The trade's rounding of the coefficient below. */
const TRADE_COEFFICIENT = 2.44;

/** The diameter of the first dark ring over wavelength and f-number, 2.43934. */
export const AIRY_COEFFICIENT = ((2 * FIRST_ZERO_OF_J1) / Math.PI) as Ratio;

/** The part of a point's light that falls inside the first dark ring, 0.838. */
export const LIGHT_IN_FIRST_DARK_RING = (1 - J0_AT_FIRST_ZERO_OF_J1 ** 2) as Ratio;

/**
 * The diameter of the first dark ring on the sensor in µm, 2.44 x wavelength x f-number; focused
 * close, the effective f-number. Rounded as the trade does.
 */
export const airyDiameter = (wavelength: Micrometres, n: FNumber): Micrometres =>
  (TRADE_COEFFICIENT * wavelength * n) as Micrometres;

/**
 * The f-number at which that diameter is `pixelsAcross` pixels (2, 2.5 and 3 are seen). Common
 * practice, no source.
 */
export const fNumberOfAiryPixels = (
  pitch: Micrometres,
  wavelength: Micrometres,
  pixelsAcross: Ratio,
): FNumber => ((pixelsAcross * pitch) / (TRADE_COEFFICIENT * wavelength)) as FNumber;

/** Independent blurs taken together, the root of the sum of squares. Common practice. */
export const combinedBlur = (...blurs: readonly Micrometres[]): Micrometres =>
  Math.hypot(...blurs) as Micrometres;

/** The frequency past which a perfect lens passes no detail, 1 / (wavelength x f-number). */
export const cutoffFrequency = (wavelength: Micrometres, n: FNumber): CyclesPerMm =>
  (1000 / (wavelength * n)) as CyclesPerMm;

/** The finest frequency that pixels can record, one cycle in two pixels. */
export const nyquistFrequency = (pitch: Micrometres): CyclesPerMm =>
  (1000 / (2 * pitch)) as CyclesPerMm;
