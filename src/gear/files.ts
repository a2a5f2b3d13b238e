import type { FileNames } from './body.ts';

/** The name a body gives a file, without its ending: prefix and number, `ALD_0042`. */
export const fileName = (files: FileNames, number: number): string =>
  `${files.prefix}${String(number).padStart(files.digits, '0')}`;

/**
 * The number a file gets `frames` frames after the one with `number`. The counter
 * starts again at 1; a body that gives a raw and its JPEG a number each counts
 * two a frame.
 *
 * @param frames whole, may be negative: how far back a number was.
 */
export function nextNumber(files: FileNames, number: number, frames: number): number {
  const on = number - 1 + frames * (files.rawAndJpegShareNumber ? 1 : 2);
  const turn = files.rollsOverAfter;
  return (((on % turn) + turn) % turn) + 1;
}
