import { type Refusal, refuse } from '../../science/refusal.ts';
import { type Srgb, srgbToLinear } from '../../science/toneCurve.ts';
import { type Stops, stops } from '../../science/units.ts';

/*
 * How bright a region of a picture is, from what a browser decodes: eight bits of sRGB a channel. The
 * transfer of IEC 61966-2-1 is undone, and linear values are averaged. A camera's own picture is no
 * sRGB of the scene (tone curve, saturation), so a ratio of two regions holds only where both pictures
 * were developed alike and flat, and where nothing in the region is cut off.
 */

/** The mean of a region, 0 to 1, in linear light. */
export interface RegionMean {
  readonly mean: number;
  /** The part of its pixels at either end of the scale, which say no more than 'beyond'. */
  readonly cut: number;
}

/** More of a region than this at either end of the scale, and its mean means nothing (our choice). */
export const CUT_AT_MOST = 0.01;

/** The parts of red, green and blue in luminance. IEC 61966-2-1. */
const LUMINANCE = [0.2126, 0.7152, 0.0722] as const;
const LINEAR: readonly number[] = Array.from({ length: 256 }, (_, code) =>
  srgbToLinear((code / 255) as Srgb),
);

/** @param rgba four bytes a pixel, as a canvas gives them. Refuses an empty region ('region-empty'). */
export function regionMean(rgba: Uint8ClampedArray | readonly number[]): RegionMean | Refusal {
  const pixels = Math.floor(rgba.length / 4);
  if (pixels === 0) return refuse('region-empty');
  let sum = 0;
  let cut = 0;
  for (let at = 0; at < 4 * pixels; at += 4) {
    let ends = false;
    for (let channel = 0; channel < 3; channel++) {
      const code = rgba[at + channel] ?? 0;
      if (code <= 0 || code >= 255) ends = true;
      sum += (LUMINANCE[channel] ?? 0) * (LINEAR[code] ?? 0);
    }
    if (ends) cut += 1;
  }
  return { mean: sum / pixels, cut: cut / pixels };
}

/**
 * The brightening that brings the other's region to the reference's, in stops. Refuses regions with
 * too much at the ends of the scale ('region-cut') and black ones ('no-signal').
 */
export function neededBetween(reference: RegionMean, other: RegionMean): Stops | Refusal {
  if (reference.cut > CUT_AT_MOST || other.cut > CUT_AT_MOST) return refuse('region-cut');
  if (reference.mean <= 0 || other.mean <= 0) return refuse('no-signal');
  return stops(Math.log2(reference.mean / other.mean));
}
