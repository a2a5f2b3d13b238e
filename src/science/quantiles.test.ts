import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  chiSquareQuantile,
  type DegreesOfFreedom,
  fQuantile,
  normalQuantile,
  type Probability,
  parseDegreesOfFreedom,
  parseProbability,
  tQuantile,
} from './quantiles.ts';
import { isRefusal, must } from './refusal.ts';

const p = (value: number): Probability => must(parseProbability(value));
const dof = (value: number): DegreesOfFreedom => must(parseDegreesOfFreedom(value));
const anyP = fc.double({ min: 0.001, max: 0.999, noNaN: true }).map(p);
const anyDof = fc.integer({ min: 1, max: 400 }).map(dof);

/** Ten digits and more agree. */
const close = (got: number, wanted: number) => expect(got / wanted).toBeCloseTo(1, 10);

// Computed with a statistics library (scipy 1.17.1), except where a closed form is named.
describe('quantiles', () => {
  test('of chi-square hold from half a degree of freedom to a quarter of a million', () => {
    close(chiSquareQuantile(p(0.025), dof(0.5)), 5.273202591259991e-7);
    close(chiSquareQuantile(p(0.975), dof(9999)), 10278.056320256948);
    close(chiSquareQuantile(p(0.025), dof(249_999)), 248614.99422501517);
    // Two degrees of freedom: an exponential, -2 ln(1 - p).
    for (const each of [0.01, 0.5, 0.99]) {
      close(chiSquareQuantile(p(each), dof(2)), -2 * Math.log(1 - each));
    }
  });

  test('of t hold to the widest, and one degree of freedom is a tangent', () => {
    close(tQuantile(p(0.975), dof(100_000)), 1.9599877075346095);
    for (const each of [0.05, 0.3, 0.7, 0.99]) {
      close(tQuantile(p(each), dof(1)), Math.tan(Math.PI * (each - 0.5)));
    }
    expect(tQuantile(p(0.5), dof(7))).toBe(0);
  });

  test('of F hold, and two and one degrees of freedom have a closed form', () => {
    close(fQuantile(p(0.025), dof(3), dof(7)), 0.06837889693755993);
    close(fQuantile(p(0.975), dof(249_999), dof(249_999)), 1.0078707018997095);
    for (const each of [0.1, 0.5, 0.975]) {
      close(fQuantile(p(each), dof(2), dof(1)), ((1 - each) ** -2 - 1) / 2);
    }
  });

  test('of the normal distribution', () => {
    close(normalQuantile(p(0.975)), 1.959963984540054);
    close(normalQuantile(p(0.001)), -3.090232306167813);
  });

  test('rise with the probability, and mirror where the distribution does', () => {
    fc.assert(
      fc.property(anyP, anyP, anyDof, anyDof, (a, b, d1, d2) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(chiSquareQuantile(low, d1)).toBeLessThanOrEqual(chiSquareQuantile(high, d1));
        expect(fQuantile(low, d1, d2)).toBeLessThanOrEqual(fQuantile(high, d1, d2));
        expect(fQuantile(a, d1, d2) * fQuantile(p(1 - a), d2, d1)).toBeCloseTo(1, 8);
        expect(tQuantile(a, d1) + tQuantile(p(1 - a), d1)).toBeCloseTo(0, 6);
      }),
      { numRuns: 50 },
    );
  });

  test('are refused outside of what they are defined for', () => {
    for (const value of [0, 1, -0.1, Number.NaN]) {
      expect(isRefusal(parseProbability(value))).toBe(true);
    }
    for (const value of [0, -3, Number.POSITIVE_INFINITY, Number.NaN]) {
      expect(isRefusal(parseDegreesOfFreedom(value))).toBe(true);
    }
  });
});
