import { type Refusal, refuse } from './refusal.ts';
import type { Electrons, Snr, SnrStops } from './sensorUnits.ts';
import type { Pixels, Ratio, Share, SquareMillimetres, Stops } from './units.ts';

/*
 * The noise of a pixel: photons, dark current and read-out,
 *
 *   variance = signal + dark + read²        in e²
 *
 * Unevenness from pixel to pixel drops out of repeats and is left out. Derived. Stops of
 * signal-to-noise ratio are not stops of exposure: pushing multiplies signal and noise alike, and
 * where photons rule one stop of light is half a stop of signal-to-noise ratio.
 */

/** What a pixel holds: signal and dark signal as mean counts, read noise as a deviation. */
export interface PixelCounts {
  readonly signal: Electrons;
  readonly dark: Electrons;
  readonly read: Electrons;
}

const floor = ({ dark, read }: Pick<PixelCounts, 'dark' | 'read'>): number => dark + read ** 2;
const variance = (of: PixelCounts): number => of.signal + floor(of);

/** The signal-to-noise ratio of one pixel. Refuses a pixel with nothing in it ('nothing-in-pixel'). */
export const snrPerPixel = (of: PixelCounts): Snr | Refusal =>
  variance(of) > 0 ? ((of.signal / Math.sqrt(variance(of))) as Snr) : refuse('nothing-in-pixel');

/** The same picture at another number of pixels, for white noise: x sqrt(sensor / output pixels). */
export function snrAtOutput(of: PixelCounts, sensor: Pixels, output: Pixels): Snr | Refusal {
  const snr = snrPerPixel(of);
  return typeof snr === 'number' ? ((snr * Math.sqrt(sensor / output)) as Snr) : snr;
}

/**
 * What is lost when a frame gets so many stops less light and is pushed: from half of them (photons
 * rule) to all of them (read-out rules). Refuses a frame without signal ('no-signal').
 */
export function snrLostByPushing(of: PixelCounts, push: Stops): SnrStops | Refusal {
  if (of.signal === 0) return refuse('no-signal');
  const less = { ...of, signal: (of.signal / 2 ** push) as Electrons };
  return (push + Math.log2(Math.sqrt(variance(less) / variance(of)))) as SnrStops;
}

/** The part of a pixel's variance that is dark current; refuses where there is none ('no-dark-current'). */
export const darkShare = (of: PixelCounts): Share | Refusal =>
  of.dark > 0 ? ((of.dark / variance(of)) as Share) : refuse('no-dark-current');

/** By how much noise rises, in stops, when the dark current rises by a ratio. */
export const noiseFromDarkRatio = (of: PixelCounts, ratio: Ratio): SnrStops | Refusal =>
  variance(of) > 0
    ? ((0.5 *
        Math.log2(
          variance({ ...of, dark: (of.dark * ratio) as Electrons }) / variance(of),
        )) as SnrStops)
    : refuse('nothing-in-pixel');

/**
 * The ratio of dark currents that changes the noise by what is tolerated, 1 + (2^(2 eps) - 1) /
 * share of the dark current in the variance. Heat matters in the deep shadows only.
 */
export const darkRatioLimit = (share: Share, tolerated: SnrStops): Ratio =>
  (1 + (2 ** (2 * tolerated) - 1) / share) as Ratio;

/**
 * By how much noise rises when one unscaled dark frame is subtracted in the camera: dark and read
 * variance then count twice. What a body really does is not published (from memory).
 */
export const noiseOfDarkFrame = (of: PixelCounts): SnrStops | Refusal =>
  variance(of) > 0
    ? ((0.5 * Math.log2((variance(of) + floor(of)) / variance(of))) as SnrStops)
    : refuse('nothing-in-pixel');

/**
 * The signal per pixel that reaches a signal-to-noise ratio in the output, (Q + sqrt(Q² + 4 n Q v))
 * / 2n with Q its square and v = dark + read².
 *
 * @param perOutput sensor pixels per output pixel, n.
 */
export function signalForSnr(
  snr: Snr,
  { dark, read }: Pick<PixelCounts, 'dark' | 'read'>,
  perOutput: Ratio,
): Electrons {
  const q = snr ** 2;
  return ((q + Math.sqrt(q ** 2 + 4 * perOutput * q * floor({ dark, read }))) /
    (2 * perOutput)) as Electrons;
}

/** A frame of a sensor with so many pixels. */
export interface SensorFrame extends PixelCounts {
  readonly pixels: Pixels;
}

/**
 * How many stops less light frame A could have and still match B at the output size, in stops of
 * exposure: log2 of the ratio of the areas where photons rule, half of it where read-out rules.
 * Refuses a frame without signal ('no-signal').
 */
export function exposureAdvantage(a: SensorFrame, b: SensorFrame, output: Pixels): Stops | Refusal {
  if (a.signal === 0 || b.signal === 0) return refuse('no-signal');
  const wanted = snrAtOutput(b, b.pixels, output);
  if (typeof wanted !== 'number') return wanted;
  const enough = signalForSnr(wanted, a, (a.pixels / output) as Ratio);
  return Math.log2(a.signal / enough) as Stops;
}

/** What the larger area gains at the same exposure, log2(a/b), in stops of light in the picture. */
export const areaGain = (a: SquareMillimetres, b: SquareMillimetres): Stops =>
  Math.log2(a / b) as Stops;

/** The same in signal-to-noise ratio where photons rule: half. */
export const snrGainOfArea = (a: SquareMillimetres, b: SquareMillimetres): SnrStops =>
  (areaGain(a, b) / 2) as SnrStops;
