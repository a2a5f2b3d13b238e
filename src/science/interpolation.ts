/** Values at evenly spaced instants. */
export interface Steps {
  /** The instant of the first value, in milliseconds. */
  readonly startMs: number;
  readonly stepMs: number;
  readonly values: readonly number[];
}

/**
 * The value between evenly spaced ones by a cubic through the two neighbours with the slopes of
 * their own neighbours (Catmull-Rom); at either end the missing outer value continues the line.
 *
 * @returns null before the first value and after the last.
 */
export function interpolate({ startMs, stepMs, values }: Steps, atMs: number): number | null {
  const position = (atMs - startMs) / stepMs;
  const index = Math.min(Math.floor(position), values.length - 2);
  const before = values[index];
  const after = values[index + 1];
  if (before === undefined || after === undefined || position > values.length - 1) return null;
  const outerBefore = values[index - 1] ?? 2 * before - after;
  const outerAfter = values[index + 2] ?? 2 * after - before;
  const u = position - index;
  const slopeBefore = (after - outerBefore) / 2;
  const slopeAfter = (outerAfter - before) / 2;
  const rise = after - before;
  return (
    before +
    u *
      (slopeBefore +
        u * (3 * rise - 2 * slopeBefore - slopeAfter + u * (slopeBefore + slopeAfter - 2 * rise)))
  );
}
