import type { DnVariance } from './sensorUnits.ts';
import type { Pixels, Ratio, Share } from './units.ts';

/*
 * What a two-frame variance shows of things that are no noise, and what processing takes from it.
 * Derived.
 */

/** What a fade g between the frames leaks of the texture's variance if it is not evened up. */
export const brightnessLeak = (g: Ratio, texture: DnVariance): DnVariance =>
  (((1 - g) ** 2 * texture) / 2) as DnVariance;

/**
 * What a shift between the frames leaks, (dx² gx² + dy² gy²) / 2: 0.1 px on an edge of 20 raw values
 * a pixel adds 2.
 *
 * @param gradients mean squared gradients across and down, in raw values² per pixel².
 */
export const shiftLeak = (
  shift: { readonly across: Pixels; readonly down: Pixels },
  gradients: { readonly across: DnVariance; readonly down: DnVariance },
): DnVariance =>
  ((shift.across ** 2 * gradients.across + shift.down ** 2 * gradients.down) / 2) as DnVariance;

const leftOnAxis = (by: Pixels): number => (1 - by) ** 2 + by ** 2;

/**
 * The part of the variance that is left after a shift by parts of a pixel with linear interpolation:
 * half a pixel on one axis leaves half. Shift by whole pixels only.
 *
 * @param across from 0 to 1.
 * @param down from 0 to 1.
 */
export const varianceLeftAfterShift = (across: Pixels, down: Pixels): Share =>
  (leftOnAxis(across) * leftOnAxis(down)) as Share;

/**
 * What is left of white noise's deviation after a mean over a square of `blur` pixels and averaging
 * to one in `reduce` pixels a side. 0.194 for 3 and 4, where the square-root rule from the blurred
 * deviation promises 0.083: reduce in pixels when noise is not white.
 *
 * @param blur a whole number from 1.
 * @param reduce a whole number from 1.
 */
export function deviationAfterBlur(blur: number, reduce: number): Share {
  let squares = 0;
  for (let place = 1 - blur; place < reduce; place += 1) {
    const overlap = Math.min(reduce, place + blur) - Math.max(0, place);
    squares += overlap ** 2;
  }
  // One axis leaves the root of the sum of squared weights; two axes leave its square.
  return (squares / (blur * reduce) ** 2) as Share;
}
