import { describe, expect, it } from 'vitest';
import { isRefusal, must } from '../../science/refusal.ts';
import { neededBetween, regionMean } from './region.ts';

const grey = (code: number, count = 4) =>
  Array.from({ length: count }, () => [code, code, code, 255]).flat();

describe('the mean of a region', () => {
  // IEC 61966-2-1: code 188 is 0.5029 in linear light, code 99 is 0.1248.
  it('is taken in linear light', () => {
    expect(must(regionMean(grey(188))).mean).toBeCloseTo(0.5029, 3);
    const both = must(regionMean([...grey(0), ...grey(188)])).mean;
    expect(both).toBeCloseTo(0.5029 / 2, 3);
  });

  it('tells the brightening in stops: 188 against 99 is two stops', () => {
    const [bright, dark] = [must(regionMean(grey(188))), must(regionMean(grey(99)))];
    expect(must(neededBetween(bright, dark))).toBeCloseTo(2.01, 2);
    expect(must(neededBetween(dark, bright))).toBeCloseTo(-2.01, 2);
  });

  it('refuses what is cut off, black or empty', () => {
    const half = must(regionMean([...grey(255, 2), ...grey(120, 98)]));
    expect(neededBetween(half, must(regionMean(grey(100))))).toMatchObject({ rule: 'region-cut' });
    expect(isRefusal(regionMean([]))).toBe(true);
  });
});
