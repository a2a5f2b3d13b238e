import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  darkRatioLimit,
  darkShare,
  exposureAdvantage,
  noiseFromDarkRatio,
  noiseOfDarkFrame,
  type PixelCounts,
  signalForSnr,
  snrAtOutput,
  snrLostByPushing,
  snrPerPixel,
} from './noise.ts';
import { must } from './refusal.ts';
import { electrons, tolerance } from './sensorUnits.ts';
import { pixels, ratio, stops } from './units.ts';

const counts = (signal: number, dark: number, read: number): PixelCounts => ({
  signal: electrons(signal),
  dark: electrons(dark),
  read: electrons(read),
});
const some = fc.integer({ min: 1, max: 100_000 }).map((each) => each / 10);
const anyCounts = fc.tuple(some, some, some).map((each) => counts(...each));
const anyRatio = fc.integer({ min: 101, max: 1000 }).map((each) => ratio(each / 100));

describe('noise', () => {
  test('at the limit of the dark ratio is what was tolerated', () => {
    fc.assert(
      fc.property(anyCounts, fc.integer({ min: 1, max: 100 }), (of, hundredths) => {
        const eps = tolerance(hundredths / 100);
        const limit = darkRatioLimit(must(darkShare(of)), eps);
        expect(must(noiseFromDarkRatio(of, limit))).toBeCloseTo(eps, 9);
      }),
    );
  });

  // 60 s, 6 e of dark signal, 3 e of read noise, 0.02 stop tolerated: heat matters in the shadows.
  test.each([
    [5, 1.09],
    [20, 1.16],
    [100, 1.54],
    [1000, 5.8],
  ])('of %i e allows dark currents %f apart', (signal, wanted) => {
    const limit = darkRatioLimit(must(darkShare(counts(signal, 6, 3))), tolerance(0.02));
    expect(Math.abs(limit - wanted)).toBeLessThan(0.05);
  });

  test('rises less than the dark current, and a dark frame costs half a stop at most', () => {
    fc.assert(
      fc.property(anyCounts, anyRatio, (of, by) => {
        const rise = must(noiseFromDarkRatio(of, by));
        expect(rise).toBeGreaterThan(0);
        expect(rise).toBeLessThan(Math.log2(by) / 2);
        expect(must(noiseOfDarkFrame(of))).toBeLessThan(0.5);
      }),
    );
  });

  test('lost by pushing lies between half the push and the whole', () => {
    fc.assert(
      fc.property(anyCounts, fc.integer({ min: 1, max: 60 }), (of, tenths) => {
        const push = stops(tenths / 10);
        const lost = must(snrLostByPushing(of, push));
        expect(lost).toBeGreaterThan(push / 2);
        expect(lost).toBeLessThan(push);
      }),
    );
  });

  test('in the output is what the signal for it was worked out from', () => {
    fc.assert(
      fc.property(anyCounts, fc.integer({ min: 1, max: 400 }), (of, tenths) => {
        const perOutput = ratio(tenths / 10);
        const snr = must(snrAtOutput(of, pixels(1e6 * perOutput), pixels(1e6)));
        expect(signalForSnr(snr, of, perOutput) / of.signal).toBeCloseTo(1, 9);
      }),
    );
  });

  test('turns the advantage of A over B round when they change places, where photons rule', () => {
    fc.assert(
      fc.property(some, some, (a, b) => {
        const frame = (signal: number, count: number) => ({
          ...counts(signal, 0, 0),
          pixels: pixels(count),
        });
        const [one, other] = [frame(a, 5e7), frame(b, 2e7)];
        const there = must(exposureAdvantage(one, other, pixels(8e6)));
        expect(there).toBeCloseTo(-must(exposureAdvantage(other, one, pixels(8e6))), 9);
        expect(there).toBeCloseTo(Math.log2((a * 5e7) / (b * 2e7)), 9);
      }),
    );
  });

  test('is refused where there is nothing to compare', () => {
    const nothing = counts(0, 0, 0);
    expect(snrPerPixel(nothing)).toEqual({ refused: true, rule: 'nothing-in-pixel' });
    expect(darkShare(counts(5, 0, 3))).toEqual({ refused: true, rule: 'no-dark-current' });
    expect(snrLostByPushing(counts(0, 1, 1), stops(1))).toEqual({
      refused: true,
      rule: 'no-signal',
    });
  });
});
