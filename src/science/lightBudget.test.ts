import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DialPosition, fNumberPositions, type Step, timePositions } from './dials.ts';
import {
  evenUp,
  exposureDifference,
  lightCauses,
  type Rendering,
  renderedDifference,
  totalLightDifference,
} from './lightBudget.ts';
import { must } from './refusal.ts';
import { fNumber, iso, millimetres, seconds, stops } from './units.ts';

const loss = fc.double({ min: 0, max: 12, noNaN: true }).map(stops);
const anyRendering: fc.Arbitrary<Rendering> = fc.record({
  n: fc.double({ min: 0.9, max: 64, noNaN: true }).map(fNumber),
  t: fc.double({ min: 1e-4, max: 3600, noNaN: true }).map(seconds),
  s: fc.double({ min: 25, max: 1e6, noNaN: true }).map(iso),
  glassLoss: loss,
  filterLoss: loss,
  extensionLoss: loss,
  isoOffset: fc.double({ min: -2, max: 2, noNaN: true }).map(stops),
});
const anyFade = fc.double({ min: -8, max: 8, noNaN: true }).map(stops);
const NO_FADE = stops(0);
const CLEAR = {
  glassLoss: stops(0),
  filterLoss: stops(0),
  extensionLoss: stops(0),
  isoOffset: stops(0),
};

describe('a difference between two frames', () => {
  test('changes its sign with their order', () => {
    fc.assert(
      fc.property(anyRendering, anyRendering, anyFade, (first, second, fade) => {
        const there = renderedDifference(first, second, fade);
        const back = renderedDifference(second, first, stops(-fade));
        expect(there + back).toBeCloseTo(0, 9);
      }),
    );
  });

  test('adds up over a third frame', () => {
    fc.assert(
      fc.property(anyRendering, anyRendering, anyRendering, anyFade, (a, b, c, fade) => {
        const way = renderedDifference(a, b, fade) + renderedDifference(b, c, NO_FADE);
        expect(way).toBeCloseTo(renderedDifference(a, c, fade), 9);
      }),
    );
  });

  test('is evened up by its negative, as by a filter on the second frame', () => {
    fc.assert(
      fc.property(anyRendering, anyRendering, anyFade, (first, second, fade) => {
        const filterLoss = stops(second.filterLoss - evenUp(first, second, fade));
        expect(renderedDifference(first, { ...second, filterLoss }, fade)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('is nothing between a frame and itself', () => {
    fc.assert(
      fc.property(anyRendering, (frame) => {
        expect(renderedDifference(frame, frame, NO_FADE)).toBe(0);
      }),
    );
  });
});

test('a longer, wider, clearer second frame gets more light, by each cause alone', () => {
  const first = { n: fNumber(8), t: seconds(1), s: iso(100), ...CLEAR };
  const lost = { glassLoss: stops(1), filterLoss: stops(2), extensionLoss: stops(4) };
  const causes = lightCauses(
    { ...first, ...lost },
    { ...first, n: fNumber(4), t: seconds(2) },
    stops(-0.5),
  );
  expect(causes).toEqual({ aperture: 2, time: 1, glass: 1, filter: 2, extension: 4, fade: -0.5 });
});

test('a body that renders brighter than its marked ISO renders the second frame brighter', () => {
  const first = { n: fNumber(8), t: seconds(1), s: iso(100), ...CLEAR };
  const second = { ...first, isoOffset: stops(0.3) };
  expect(renderedDifference(first, second, NO_FADE)).toBeCloseTo(0.3, 12);
  expect(exposureDifference(first, second, NO_FADE)).toBe(0);
});

// The design's own reference figures for the practice outing: 0.67 + 0.09 = 0.76 stop more light
// per area, 0.74 stop by area, 1.50 in all.
test('f/6.3 and 64 s on the larger body against f/8 and 60 s on the smaller', () => {
  const exact = <U>(positions: readonly DialPosition<U>[], mark: string): U => {
    const position = positions.find((candidate) => candidate.mark === mark);
    if (position === undefined) throw new Error(`the dial has no ${mark}`);
    return position.exact;
  };
  const apertures = must(
    fNumberPositions({ widest: '4', narrowest: '32', step: 'third', missing: [] }),
  );
  const times = (longest: string, stepFrom1s: Step, beyond30s: 'doubling' | 'minutes') =>
    must(
      timePositions({
        shortest: '1/4000',
        longest,
        step: 'third',
        stepFrom1s,
        beyond30s,
        longMarks: 'exact',
        missing: [],
      }),
    );
  const small = {
    ...CLEAR,
    n: exact(apertures, '8'),
    t: exact(times('60', 'third', 'minutes'), '60'),
    s: iso(100),
    format: { width: millimetres(36), height: millimetres(24) },
  };
  const large = {
    ...small,
    n: exact(apertures, '6.3'),
    t: exact(times('64', 'whole', 'doubling'), '64'),
    format: { width: millimetres(43.8), height: millimetres(32.9) },
  };
  const causes = lightCauses(small, large, NO_FADE);
  expect(causes.aperture).toBeCloseTo(0.67, 2);
  expect(causes.time).toBeCloseTo(0.09, 2);
  expect(exposureDifference(small, large, NO_FADE)).toBeCloseTo(0.76, 2);
  expect(renderedDifference(small, large, NO_FADE)).toBeCloseTo(0.76, 2);
  expect(totalLightDifference(small, large, NO_FADE)).toBeCloseTo(1.5, 2);
});
