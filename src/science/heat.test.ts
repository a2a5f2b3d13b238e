import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cyclicStartHeat,
  firstToSettled,
  HEAT_MODES,
  type HeatSegment,
  heatAfter,
  heatFactor,
  heatThrough,
  meanHeatFactor,
  meanHeatFactorBySimpson,
  midExposureHeat,
  pairHeat,
} from './heat.ts';
import { isRefusal, must } from './refusal.ts';
import { midHeatAfterRest, restAfterRested, restedMidHeat, restNeeded } from './sensorRest.ts';
import { type Doublings, doublings } from './sensorUnits.ts';
import { cornerModels, overCorners, UNMEASURED, usualModel } from './thermalRange.ts';
import { duration, ratio, seconds } from './units.ts';

const model = usualModel(UNMEASURED);
const anyModel = fc.constantFrom(model, ...cornerModels(UNMEASURED));
const anyHeat = fc.integer({ min: 0, max: 4000 }).map((each) => doublings(each / 1000));
const anyTime = fc.integer({ min: 1, max: 3000 }).map(seconds);
const anyShortTime = fc.integer({ min: 1, max: 600 }).map(seconds);
const anySegments: fc.Arbitrary<readonly HeatSegment[]> = fc.array(
  fc.record({ mode: fc.constantFrom(...HEAT_MODES), lasts: anyTime }),
  { maxLength: 12 },
);
const rested = doublings(0);

describe('heat', () => {
  test('does not hang on how a time is cut into steps', () => {
    fc.assert(
      fc.property(anyModel, anyHeat, anySegments, (of, start, segments) => {
        const halves = segments.flatMap(({ mode, lasts }) => [
          { mode, lasts: seconds(lasts / 3) },
          { mode, lasts: seconds((2 * lasts) / 3) },
        ]);
        const whole = heatThrough(of, start, segments).end;
        expect(heatThrough(of, start, halves).end).toBeCloseTo(whole, 10);
      }),
    );
  });

  test('stays between the lowest and the highest plateau it has been drawn to', () => {
    fc.assert(
      fc.property(anyModel, anySegments, (of, segments) => {
        const { mids, end } = heatThrough(of, rested, segments);
        const highest = Math.max(0, ...segments.map(({ mode }) => of.plateaus[mode]));
        for (const heat of [...mids, end]) {
          expect(heat).toBeGreaterThanOrEqual(0);
          expect(heat).toBeLessThanOrEqual(highest);
        }
      }),
    );
  });

  test('goes back by a step below zero', () => {
    fc.assert(
      fc.property(anyHeat, fc.double({ min: 0, max: 1500, noNaN: true }), (start, dt) => {
        const plateau = model.plateaus.idle;
        const later = heatAfter(start, plateau, dt, model.tau);
        expect(heatAfter(later, plateau, -dt, model.tau)).toBeCloseTo(start, 9);
      }),
    );
  });

  test('of a rhythm that has settled comes back after each round', () => {
    fc.assert(
      fc.property(anyModel, anyTime, anyTime, (of, t, rest) => {
        const { exposing, off } = of.plateaus;
        const rhythm = { exposing, resting: off, t, rest, tau: of.tau };
        const start = must(cyclicStartHeat(rhythm));
        const after = heatAfter(heatAfter(start, exposing, t, of.tau), off, rest, of.tau);
        expect(after).toBeCloseTo(start, 9);
        expect(must(firstToSettled(rhythm))).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('averages over a frame as a fine sum does, and Simpson comes within what is said of it', () => {
    fc.assert(
      fc.property(anyModel, anyHeat, anyShortTime, (of, start, t) => {
        const { exposing } = of.plateaus;
        const parts = 4000;
        let sum = 0;
        for (let part = 0; part < parts; part += 1) {
          sum += heatFactor(heatAfter(start, exposing, ((part + 0.5) / parts) * t, of.tau));
        }
        expect(meanHeatFactor(start, exposing, t, of.tau) / (sum / parts)).toBeCloseTo(1, 5);
      }),
      { numRuns: 40 },
    );
    // A rested 240 s frame: 0.002 % with the usual values, 0.6 % in the worst corner.
    const worst = Math.max(
      ...cornerModels(UNMEASURED).map(({ tau, plateaus }) => {
        const args = [rested, plateaus.exposing, seconds(240), tau] as const;
        return Math.abs(meanHeatFactorBySimpson(...args) / meanHeatFactor(...args) - 1);
      }),
    );
    expect(worst).toBeGreaterThan(0.0005);
    expect(worst).toBeLessThan(0.006);
  });
});

describe('rest', () => {
  const next = fc.record({
    t: anyShortTime,
    leadIn: fc.array(fc.record({ mode: fc.constant('idle' as const), lasts: anyShortTime }), {
      maxLength: 1,
    }),
  });

  test('meets the limit exactly, or none is needed, or none is enough', () => {
    let met = 0;
    fc.assert(
      fc.property(
        anyModel,
        anyHeat,
        fc.constantFrom('off' as const, 'idle' as const),
        next,
        anyHeat,
        (of, now, mode, frame, most) => {
          const rest = restNeeded(of, now, mode, frame, most);
          if (isRefusal(rest)) {
            const forever = midHeatAfterRest(of, now, mode, duration(1e7), frame);
            expect(forever).toBeGreaterThanOrEqual(most - 1e-9);
          } else if (rest === 0) {
            expect(midHeatAfterRest(of, now, mode, rest, frame)).toBeLessThanOrEqual(most + 1e-9);
          } else {
            met += 1;
            expect(midHeatAfterRest(of, now, mode, rest, frame)).toBeCloseTo(most, 8);
          }
        },
      ),
      { numRuns: 500 },
    );
    expect(met).toBeGreaterThan(20);
  });

  // The table of what 'rest as long as you exposed' leaves, with the usual values.
  test.each([
    [15, 0.05, 0.05, 0.74, 0, 0],
    [60, 0.17, 0.15, 0.68, 101, 0],
    [120, 0.3, 0.23, 0.59, 375, 0],
    [240, 0.47, 0.29, 0.45, 591, 183],
    [480, 0.59, 0.22, 0.25, 699, 291],
  ])(
    'after %i s: what a second frame rises by, and the rest for 1.10 and 1.25',
    (t, noRest, equal, many, tenth, quarter) => {
      const frame = { t: seconds(t), leadIn: [] };
      const exposing = { mode: 'exposing', lasts: seconds(t) } as const;
      const rises = (segments: readonly HeatSegment[]) => {
        const { mids } = heatThrough(model, rested, [exposing, ...segments, exposing]);
        return must(pairHeat(mids.slice(0, 1), mids.slice(1)));
      };
      expect(rises([])).toBeCloseTo(noRest, 1);
      expect(Math.abs(rises([]) - noRest)).toBeLessThan(0.006);
      expect(Math.abs(rises([{ mode: 'off', lasts: seconds(t) }]) - equal)).toBeLessThan(0.006);
      const { exposing: plateau, off } = model.plateaus;
      const rhythm = {
        exposing: plateau,
        resting: off,
        t: seconds(t),
        rest: seconds(t),
        tau: model.tau,
      };
      expect(Math.abs(must(firstToSettled(rhythm)) - many)).toBeLessThan(0.006);
      expect(Math.abs(must(restAfterRested(model, frame, ratio(1.1))) - tenth)).toBeLessThan(0.6);
      expect(Math.abs(must(restAfterRested(model, frame, ratio(1.25))) - quarter)).toBeLessThan(
        0.6,
      );
    },
  );

  test('of the worked A B B A: B needs the 400 s off that A had', () => {
    const leadIn = [{ mode: 'idle', lasts: seconds(20) }] as const;
    const frame = { t: seconds(60), leadIn };
    const shot = [...leadIn, { mode: 'exposing', lasts: seconds(60) }] as const;
    const a = heatThrough(model, rested, [...shot, { mode: 'off', lasts: seconds(400) }, ...shot]);
    const b = heatThrough(model, rested, shot);
    expect(must(restNeeded(model, b.end, 'off', frame, a.mids[1] as Doublings))).toBeCloseTo(
      400,
      6,
    );
    // The second frame of B against its first, over the corners: 0.03 to 0.78.
    const range = overCorners(UNMEASURED, (of) => {
      const { mids } = heatThrough(of, rested, [...shot, ...shot]);
      return must(pairHeat(mids.slice(0, 1), mids.slice(1)));
    });
    expect(range.usual).toBeCloseTo(0.178, 3);
    expect(range.least).toBeCloseTo(0.03, 2);
    expect(range.most).toBeCloseTo(0.78, 2);
  });

  test('after 240 s runs from nothing to 1596 s over the corners', () => {
    const frame = { t: seconds(240), leadIn: [] };
    const range = overCorners(UNMEASURED, (of) => must(restAfterRested(of, frame, ratio(1.1))));
    expect(range.least).toBe(0);
    expect(range.most).toBeCloseTo(1596, 0);
  });

  test('refuses a limit that allows nothing', () => {
    const frame = { t: seconds(60), leadIn: [] };
    expect(restAfterRested(model, frame, ratio(1))).toEqual({
      refused: true,
      rule: 'limit-not-above-one',
    });
    expect(restedMidHeat(model, frame)).toBe(
      midExposureHeat(rested, model.plateaus.exposing, frame.t, model.tau),
    );
  });
});

test('a pair needs frames of both', () => {
  expect(pairHeat([], [rested])).toEqual({ refused: true, rule: 'no-frames' });
  expect(pairHeat([rested], [])).toEqual({ refused: true, rule: 'no-frames' });
});
