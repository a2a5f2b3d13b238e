import { signalForSnr } from './noise.ts';
import type { Dn, DnVariance, Electrons, Gain, Snr } from './sensorUnits.ts';
import type { Decibels, Pixels, Ratio, Share, Stops } from './units.ts';

/*
 * Dynamic range, by EMVA 1288 (R3.1, R4 Linear, as its reference implementation computes it) for one
 * pixel, and ours at an output size. A figure means nothing without the signal-to-noise ratio and
 * the output pixels it was taken at: name them beside it.
 */

/** The variance that rounding to whole raw values adds. */
const ROUNDING_VARIANCE = 1 / 12;
/** A dark variance below this in DN² is mostly rounding and counts as this. */
const LEAST_DARK_VARIANCE = 0.24;

/** The read noise behind a dark variance of rounded values, sqrt(max(s², 0.24) - 1/12) / K. */
export const darkNoise = (darkVariance: DnVariance, gain: Gain): Electrons =>
  (Math.sqrt(Math.max(darkVariance, LEAST_DARK_VARIANCE) - ROUNDING_VARIANCE) / gain) as Electrons;

/** The electrons at which signal equals noise, by the standard's approximation. */
const thresholdElectrons = (darkDeviation: Dn, gain: Gain): number => darkDeviation / gain + 0.5;

/** The photons at which signal equals noise, (deviation / K + 1/2) / quantum efficiency. */
export const absoluteThreshold = (darkDeviation: Dn, gain: Gain, efficiency: Share): number =>
  thresholdElectrons(darkDeviation, gain) / efficiency;

/** Saturation over that threshold, in stops. */
export const pixelDynamicRange = (saturation: Electrons, darkDeviation: Dn, gain: Gain): Stops =>
  Math.log2(saturation / thresholdElectrons(darkDeviation, gain)) as Stops;

/** The best signal-to-noise ratio of a pixel, that of photons at saturation, as 20 log10. */
export const bestSnr = (saturation: Electrons): Decibels =>
  (20 * Math.log10(Math.sqrt(saturation))) as Decibels;

/** Saturation over the signal that reaches a least signal-to-noise ratio at the output size. */
export const outputDynamicRange = (
  pixel: { readonly saturation: Electrons; readonly dark: Electrons; readonly read: Electrons },
  sensor: Pixels,
  output: Pixels,
  least: Snr,
): Stops =>
  Math.log2(pixel.saturation / signalForSnr(least, pixel, (sensor / output) as Ratio)) as Stops;

/** Pixels per cm of print at which the noise-based speed judges 'first excellent', and its ratio. */
const FIRST_EXCELLENT = { snr: 40, pixelsPerCm: 70 };

/**
 * The signal-to-noise ratio that stands for 'first excellent' at other pixels per cm of print, (70 /
 * P) x 40. Source: ISO 12232:2019 6.3, note.
 */
export const firstExcellentSnr = (pixelsPerCm: Ratio): Snr =>
  ((FIRST_EXCELLENT.pixelsPerCm / pixelsPerCm) * FIRST_EXCELLENT.snr) as Snr;
