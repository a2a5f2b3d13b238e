import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ev100,
  exposureValue,
  fNumberForScene,
  isoForScene,
  stopsBetweenFNumbers,
  stopsBetweenIsos,
  stopsBetweenTimes,
  timeForScene,
} from './exposure.ts';
import { must } from './refusal.ts';
import { ev, fNumber, iso, type Stops, seconds } from './units.ts';

const anyF = fc.double({ min: 0.5, max: 128, noNaN: true }).map(fNumber);
const anyT = fc.double({ min: 1e-5, max: 1e5, noNaN: true }).map(seconds);
const anyS = fc.double({ min: 1, max: 1e7, noNaN: true }).map(iso);

describe.each([
  { name: 'times', any: anyT as fc.Arbitrary<never>, between: stopsBetweenTimes },
  { name: 'f-numbers', any: anyF as fc.Arbitrary<never>, between: stopsBetweenFNumbers },
  { name: 'ISO speeds', any: anyS as fc.Arbitrary<never>, between: stopsBetweenIsos },
] as readonly {
  name: string;
  any: fc.Arbitrary<never>;
  between: (a: never, b: never) => Stops;
}[])('stops between $name', ({ any, between }) => {
  test('change their sign with the order', () => {
    fc.assert(
      fc.property(any, any, (a, b) => {
        expect(between(a, b) + between(b, a)).toBeCloseTo(0, 12);
      }),
    );
  });

  test('add up', () => {
    fc.assert(
      fc.property(any, any, any, (a, b, c) => {
        expect(between(a, b) + between(b, c)).toBeCloseTo(between(a, c), 11);
      }),
    );
  });

  test('are zero between equals', () => {
    fc.assert(
      fc.property(any, (a) => {
        expect(between(a, a)).toBe(0);
      }),
    );
  });
});

describe('the sign', () => {
  test('is positive where the second frame renders brighter', () => {
    expect(stopsBetweenTimes(seconds(1), seconds(2))).toBe(1);
    expect(stopsBetweenFNumbers(fNumber(8), fNumber(4))).toBe(2);
    expect(stopsBetweenIsos(iso(100), iso(800))).toBe(3);
  });

  test('is the other way round for the EV of a setting', () => {
    fc.assert(
      fc.property(anyF, anyT, anyT, (n, t1, t2) => {
        const rise = exposureValue(n, t2) - exposureValue(n, t1);
        expect(rise).toBeCloseTo(-stopsBetweenTimes(t1, t2), 9);
      }),
    );
  });
});

test('two of time, f-number and ISO give back the third', () => {
  fc.assert(
    fc.property(anyF, anyT, anyS, (n, t, s) => {
      const scene = ev100(n, t, s);
      expect(must(timeForScene(scene, n, s)) / t).toBeCloseTo(1, 9);
      expect(must(fNumberForScene(scene, t, s)) / n).toBeCloseTo(1, 9);
      expect(must(isoForScene(scene, n, t)) / s).toBeCloseTo(1, 9);
    }),
  );
});

test('a scene beyond all numbers is refused', () => {
  expect(timeForScene(ev(-5000), fNumber(8), iso(100))).toHaveProperty('refused', true);
  expect(fNumberForScene(ev(5000), seconds(1), iso(100))).toHaveProperty('refused', true);
  expect(isoForScene(ev(-5000), fNumber(8), seconds(1))).toHaveProperty('refused', true);
});
