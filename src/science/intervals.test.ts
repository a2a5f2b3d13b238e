import { describe, expect, test } from 'vitest';
import { deviationFactors, deviationRatioHalfWidth, meanInterval } from './intervals.ts';
import { noiseRelative, noiseRelativeAtOutput } from './noiseComparison.ts';
import { parseDegreesOfFreedom, parseProbability } from './quantiles.ts';
import { must } from './refusal.ts';
import { parseDeviation } from './sensorUnits.ts';
import { ratio, stops } from './units.ts';

const level = must(parseProbability(0.95));
const dof = (pixels: number) => must(parseDegreesOfFreedom(pixels - 1));

describe('intervals', () => {
  // The table of pixels, one deviation and a ratio, 95 %.
  test.each([
    [1000, 0.044, 0.09],
    [10_000, 0.014, 0.028],
    [250_000, 0.0028, 0.006],
  ])('of %i pixels', (pixels, one, pair) => {
    const { low, high } = deviationFactors(dof(pixels), level);
    expect(Math.abs((high - low) / 2 - one)).toBeLessThan(0.0005);
    expect(low).toBeLessThan(1);
    expect(high).toBeGreaterThan(1);
    const half = deviationRatioHalfWidth(dof(pixels), dof(pixels), level);
    // The table's 0.090 is 0.0895 rounded up.
    expect(Math.abs(half - pair)).toBeLessThan(0.0006);
  });

  test('of one set are not told from sets', () => {
    expect(meanInterval([stops(0.3)], level)).toEqual({ refused: true, rule: 'one-set-only' });
    const two = must(meanInterval([stops(0.2), stops(0.4)], level));
    expect(two.mean).toBeCloseTo(0.3, 12);
    expect(two.high - two.mean).toBeCloseTo(12.706205 * 0.1, 5);
  });

  test('of a comparison move with the output size alone', () => {
    const deviation = (value: number) => must(parseDeviation(value));
    const a = { deviation: deviation(4), mean: deviation(500), perOutput: ratio(6), dof: dof(900) };
    const b = { deviation: deviation(6), mean: deviation(520), perOutput: ratio(6), dof: dof(900) };
    const same = noiseRelativeAtOutput(a, b, level);
    expect(same.mean).toBeCloseTo(noiseRelative(a, b), 12);
    const finer = noiseRelativeAtOutput({ ...a, perOutput: ratio(24) }, b, level);
    expect(finer.mean).toBeCloseTo(same.mean - 1, 12);
    expect(finer.high - finer.low).toBeCloseTo(same.high - same.low, 12);
  });
});
