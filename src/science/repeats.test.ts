import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { averageAreas } from './areaAverage.ts';
import { isRefusal, must } from './refusal.ts';
import {
  pairMean,
  singleFrameVariance,
  twoFrameVariance,
  twoFrameVarianceScaled,
} from './repeats.ts';
import { TILE_SIDE, tiledNoise } from './tiles.ts';

const anyRegion = fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 2, maxLength: 64 });
const pairOf = anyRegion.chain((first) =>
  fc
    .array(fc.integer({ min: 1, max: 4000 }), {
      minLength: first.length,
      maxLength: first.length,
    })
    .map((second) => ({ first, second })),
);

describe('two frames', () => {
  test('show nothing of what both have', () => {
    fc.assert(
      fc.property(pairOf, anyRegion, ({ first, second }, pattern) => {
        const marked = (region: readonly number[]) =>
          region.map((value, index) => value + 7 * (pattern[index % pattern.length] ?? 0));
        expect(must(twoFrameVariance(marked(first), marked(second)))).toBeCloseTo(
          must(twoFrameVariance(first, second)),
          6,
        );
      }),
    );
  });

  test('of which one is the other made brighter have no noise once evened up', () => {
    fc.assert(
      fc.property(anyRegion, fc.integer({ min: 50, max: 200 }), (first, percent) => {
        const second = first.map((value) => (value * percent) / 100);
        expect(must(twoFrameVarianceScaled(first, second))).toBeCloseTo(0, 6);
      }),
    );
  });

  test('must be of one size and have two pixels', () => {
    const no = (rule: string) => ({ refused: true, rule });
    expect(twoFrameVariance([1, 2], [1])).toEqual(no('regions-differ-in-size'));
    expect(pairMean([1], [1])).toEqual(no('too-few-pixels'));
    expect(singleFrameVariance([1])).toEqual(no('too-few-pixels'));
    expect(twoFrameVarianceScaled([1, 2], [0, 0])).toEqual(no('second-frame-black'));
  });
});

describe('tiles', () => {
  const side = 4 * TILE_SIDE;
  /** A checkerboard of +-1 that both frames turn round: every tile has the same variance. */
  const board = (sign: number) =>
    Float64Array.from({ length: side ** 2 }, (_, index) =>
      (index + Math.floor(index / side)) % 2 === 0 ? sign : -sign,
    );
  const planes = (moved: (index: number) => number) =>
    [
      { values: board(1).map((value, index) => value + moved(index)), width: side },
      { values: board(-1), width: side },
    ] as const;

  test('leave out the ones in which something moved, and say so', () => {
    const inCorner = (index: number) =>
      index % side < TILE_SIDE && Math.floor(index / side) < TILE_SIDE ? 50 : 0;
    const found = must(tiledNoise(...planes(inCorner)));
    expect(found).toMatchObject({ kept: 15, dropped: 1 });
    expect(found.keptVariance).toBeCloseTo(2 * (256 / 255), 9);
  });

  test('refuse a figure where most of the frame moved', () => {
    const most = (index: number) => (index % side < 3 * TILE_SIDE ? index % 7 : 0) * 30;
    expect(tiledNoise(...planes(most))).toEqual({ refused: true, rule: 'too-much-moved' });
  });

  test('need two planes of one shape, a tile at least', () => {
    const plane = { values: board(1), width: side };
    expect(isRefusal(tiledNoise(plane, { ...plane, width: side / 2 }))).toBe(true);
    expect(tiledNoise({ values: [1, 2], width: 2 }, { values: [1, 2], width: 2 })).toEqual({
      refused: true,
      rule: 'too-few-pixels',
    });
  });
});

describe('averaging areas', () => {
  test('keeps the mean of what it covers', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.array(fc.integer({ min: 0, max: 999 }), { minLength: 1, maxLength: 30 }),
        (by, columns, rows, some) => {
          const width = columns * by;
          const values = Array.from(
            { length: width * rows * by },
            (_, index) => some[index % some.length] ?? 0,
          );
          const reduced = must(averageAreas({ values, width }, by));
          const mean = (of: ArrayLike<number>) =>
            Array.from(of).reduce((sum, value) => sum + value, 0) / of.length;
          expect(reduced.width).toBe(columns);
          expect(reduced.values.length).toBe(columns * rows);
          expect(mean(reduced.values)).toBeCloseTo(mean(values), 9);
        },
      ),
    );
  });

  test('is by whole pixels', () => {
    expect(averageAreas({ values: [1, 2, 3, 4], width: 2 }, 1.5)).toEqual({
      refused: true,
      rule: 'side-not-whole',
    });
  });
});
