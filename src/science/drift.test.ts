import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  driftFreeWeights,
  fadeWithinFrame,
  linearAverageResidual,
  noisePrice,
  orderResidual,
  type PairSide,
  settlingResidual,
} from './drift.ts';
import { isRefusal, must } from './refusal.ts';
import { duration, parseStopsPerMinute, ratio, type Seconds, seconds, stops } from './units.ts';

const sides = (order: string): readonly PairSide[] => [...order] as PairSide[];
const anyOrder = fc
  .array(fc.constantFrom<PairSide>('A', 'B'), { minLength: 2, maxLength: 16 })
  .filter((order) => order.includes('A') && order.includes('B'));
/** Instants in order, no two alike. */
const timesFor = (count: number) =>
  fc
    .array(fc.integer({ min: 20, max: 900 }), { minLength: count, maxLength: count })
    .map((gaps) => {
      let now = 0;
      return gaps.map((gap) => {
        now += gap;
        return duration(now);
      });
    });
const anyList = anyOrder.chain((order) =>
  timesFor(order.length).map((times) => ({ order, times })),
);
const anyCoefficient = fc.double({ min: -0.5, max: 0.5, noNaN: true });

describe('what a drift leaves', () => {
  test('is nothing where a mirror order meets an odd drift, whatever the spacing', () => {
    fc.assert(
      fc.property(
        fc
          .array(fc.constantFrom<PairSide>('A', 'B'), { minLength: 1, maxLength: 5 })
          .chain((half) => timesFor(half.length).map((gaps) => ({ half, gaps }))),
        anyCoefficient,
        anyCoefficient,
        ({ half, gaps }, linear, cubic) => {
          fc.pre(half.includes('A') && half.includes('B'));
          const order = [...half.toReversed(), ...half];
          const times = [...gaps.toReversed().map((gap) => -gap as Seconds), ...gaps];
          const odd = (at: Seconds) => stops(linear * (at / 60) + cubic * (at / 600) ** 3);
          expect(must(orderResidual(order, times, odd))).toBeCloseTo(0, 9);
        },
      ),
    );
  });

  test('of the only balanced order of eight without linear and quadratic part is nothing', () => {
    const order = sides('ABBABAAB');
    const times = order.map((_, index) => duration(120 * index));
    const bent = (at: Seconds) => stops(0.3 * (at / 60) - 0.02 * (at / 60) ** 2);
    expect(must(orderResidual(order, times, bent))).toBeCloseTo(0, 12);
    expect(Math.abs(must(orderResidual(sides('ABBA'), times.slice(0, 4), bent)))).toBeGreaterThan(
      0.1,
    );
  });

  test('of a settling drift is the closed form for A B, A B B A and A B B A B A A B', () => {
    const q = Math.exp(-0.5);
    const closed: Readonly<Record<string, number>> = {
      AB: -(1 - q),
      ABAB: -((1 - q) * (1 + q ** 2)) / 2,
      ABBA: -((1 - q) * (1 - q ** 2)) / 2,
      ABBABAAB: -((1 - q) * (1 - q ** 2) * (1 - q ** 4)) / 4,
    };
    for (const [order, wanted] of Object.entries(closed)) {
      const got = must(settlingResidual(sides(order), stops(1), ratio(q)));
      expect(got).toBeCloseTo(wanted, 12);
    }
  });

  test('of means of light is log2(r + 1/r - 1) in A B B A', () => {
    for (const [step, printed] of [
      [0.1, 0.0069],
      [0.25, 0.043],
      [0.5, 0.165],
    ] as const) {
      const left = must(linearAverageResidual(sides('ABBA'), stops(-step)));
      const r = 2 ** step;
      expect(left).toBeCloseTo(Math.log2(r + 1 / r - 1), 12);
      expect(Math.abs(left - printed)).toBeLessThan(0.0006);
    }
  });

  test('needs both sides and all times', () => {
    const still = () => stops(0);
    expect(orderResidual(sides('AA'), [duration(0), duration(1)], still)).toEqual({
      refused: true,
      rule: 'one-sided',
    });
    expect(orderResidual(sides('AB'), [duration(0)], still)).toEqual({
      refused: true,
      rule: 'times-missing',
    });
    expect(linearAverageResidual([], stops(1))).toEqual({ refused: true, rule: 'one-sided' });
  });
});

describe('drift-free weights', () => {
  test('find the true difference under any drift of their degree', () => {
    let separable = 0;
    fc.assert(
      fc.property(
        anyList,
        fc.integer({ min: 0, max: 2 }),
        fc.tuple(anyCoefficient, anyCoefficient, anyCoefficient),
        anyCoefficient,
        ({ order, times }, degree, coefficients, truth) => {
          const weights = driftFreeWeights(order, times, degree);
          if (isRefusal(weights)) return;
          separable += 1;
          const reading = (side: PairSide, at: Seconds) =>
            coefficients
              .slice(0, degree + 1)
              .reduce((sum, each, power) => sum + each * (at / 600) ** power, 0) +
            (side === 'A' ? truth : 0);
          const found = order.reduce(
            (sum, side, index) =>
              sum + (weights[index] ?? 0) * reading(side, times[index] ?? duration(0)),
            0,
          );
          const size = weights.reduce((sum, weight) => sum + Math.abs(weight), 0);
          expect(Math.abs(found - truth)).toBeLessThan(1e-8 * size);
          const onA = weights.reduce((sum, w, index) => sum + (order[index] === 'A' ? w : 0), 0);
          expect(onA).toBeCloseTo(1, 7);
          expect(noisePrice(order, weights)).toBeGreaterThan(1 - 1e-9);
        },
      ),
      { numRuns: 400 },
    );
    expect(separable).toBeGreaterThan(100);
  });

  test('cost 2 % of noise for a skewed A B B A and 12 % for A B A B', () => {
    const price = (order: string, minutes: readonly number[]) => {
      const weights = driftFreeWeights(
        sides(order),
        minutes.map((each) => duration(60 * each)),
        1,
      );
      return noisePrice(sides(order), must(weights));
    };
    expect(price('ABBA', [0, 5, 6.5, 9])).toBeCloseTo(1.02, 2);
    expect(price('ABAB', [0, 2, 4, 6])).toBeCloseTo(1.12, 2);
    expect(price('ABBA', [0, 2, 4, 6])).toBeCloseTo(1, 12);
  });

  test('are refused where the drift could explain the whole difference', () => {
    const two = [duration(0), duration(60)];
    const no = { refused: true, rule: 'drift-not-separable' };
    expect(driftFreeWeights(sides('AB'), two, 1)).toEqual(no);
    expect(driftFreeWeights(sides('AB'), [seconds(9), seconds(9)], 1)).not.toEqual(no);
    expect(driftFreeWeights(sides('ABA'), [...two, duration(90)], 2)).toEqual(no);
  });
});

test('a fade adds little within a frame, and nothing if there is none', () => {
  const at = (fade: number, t: number) =>
    fadeWithinFrame(must(parseStopsPerMinute(fade)), seconds(t));
  expect(at(0, 120)).toBe(1);
  expect(at(-0.12, 120)).toBe(at(0.12, 120));
  expect(Math.log2(at(-0.12, 120))).toBeCloseTo(0.0017, 4);
});
