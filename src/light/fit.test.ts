import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CURVED_DUSK, EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { ev, fNumber, iso, later, seconds, type UtcMs } from '../science/units.ts';
import { fitScene } from './fit.ts';
import { forecastAt, nineInTen } from './forecast.ts';
import { evOfReading, type MeterReading } from './reading.ts';
import type { Contradiction } from './scene.ts';
import { type SkyTable, skyEv } from './skyTable.ts';

const skyAt = (sky: SkyTable, at: UtcMs): number => {
  const found = skyEv(sky, at);
  if (found === null) throw new Error('off the table');
  return found;
};

/** What a meter reads of a scene that stands off its sky and fades by another scale about minute 20. */
const scene =
  (sky: SkyTable, offset: number, scale: number) =>
  (at: UtcMs): number => {
    const pivot = skyAt(sky, minutesOn(20));
    return offset + pivot + scale * (skyAt(sky, at) - pivot);
  };

const read = (minutes: number, value: number, meter = 'spot meter'): MeterReading => ({
  at: minutesOn(minutes),
  meter,
  ev100: ev(value),
});

const codes = (contradictions: readonly Contradiction[]): readonly string[] =>
  contradictions.map(({ code }) => code);

const offset = fc.double({ min: -3, max: 3, noNaN: true });

describe('readings of a scene', () => {
  test('one gives its offset, whatever it is', () => {
    fc.assert(
      fc.property(offset, (b) => {
        const fitted = fitScene(CURVED_DUSK, [read(30, skyAt(CURVED_DUSK, minutesOn(30)) + b)]);
        expect(fitted.offsets[0]?.stops).toBeCloseTo(b, 1);
        expect(fitted.scale).toBe(1);
        expect(fitted.contradictions).toEqual([]);
      }),
    );
  });

  test('six over half an hour give offset and scale', () => {
    fc.assert(
      fc.property(offset, fc.double({ min: 0.85, max: 1.15, noNaN: true }), (b, scale) => {
        const truth = scene(CURVED_DUSK, b, scale);
        const fitted = fitScene(
          CURVED_DUSK,
          [15, 20, 25, 30, 35, 45].map((minute) => read(minute, truth(minutesOn(minute)))),
        );
        expect(Math.abs(fitted.scale - scale)).toBeLessThan(0.02);
        const later = forecastAt(fitted, minutesOn(60))?.ev100 ?? Number.NaN;
        expect(Math.abs(later - truth(minutesOn(60)))).toBeLessThan(0.15);
      }),
    );
  });

  test('do not give a scale from less than ten minutes or a stop of fade', () => {
    const close = [10, 13, 16, 19].map((minute) => read(minute, 8 - 0.1 * minute));
    expect(fitScene(EVEN_DUSK, close).scale).toBe(1);
    const flat = skyOf(() => 5, 120);
    expect(
      fitScene(
        flat,
        [0, 20, 40].map((minute) => read(minute, 5 - minute / 30)),
      ).scale,
    ).toBe(1);
  });

  test('one bad among five moves the forecast by less than a fifth of a stop', () => {
    fc.assert(
      fc.property(
        offset,
        fc.nat(4),
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.boolean(),
        (b, bad, by, over) => {
          const truth = scene(CURVED_DUSK, b, 1);
          const minutes = [15, 19, 23, 27, 31];
          const fitted = fitScene(
            CURVED_DUSK,
            minutes.map((minute, i) =>
              read(minute, truth(minutesOn(minute)) + (i === bad ? (over ? by : -by) : 0)),
            ),
          );
          const now = forecastAt(fitted, minutesOn(31))?.ev100 ?? Number.NaN;
          expect(Math.abs(now - truth(minutesOn(31)))).toBeLessThan(0.2);
          expect(fitted.readings[bad]?.weight).toBeLessThan(0.05);
        },
      ),
    );
  });

  test('two that disagree are both kept, widen the forecast and ask for a third', () => {
    const agreed = fitScene(EVEN_DUSK, [read(10, 7), read(12, 6.6)]);
    const apart = fitScene(EVEN_DUSK, [read(10, 7), read(12, 8.1)]);
    expect(apart.contradictions).toEqual([
      { code: 'two-disagree', meter: 'spot meter', stops: expect.closeTo(1.5, 6) },
    ]);
    expect(apart.readings.map(({ weight }) => weight)).toEqual([1, 1]);
    expect(forecastAt(apart, minutesOn(12))?.sigma).toBeGreaterThan(
      2 * (forecastAt(agreed, minutesOn(12))?.sigma ?? Number.NaN),
    );
    expect(codes(agreed.contradictions)).toEqual([]);
  });

  test('outside of the table are passed over; without any left the model stands', () => {
    const fitted = fitScene(EVEN_DUSK, [read(-30, 9), read(500, 9)]);
    expect(fitted.from).toBe('model');
    expect(fitted.readings).toEqual([]);
  });

  test('count in the order of their time, however they come in', () => {
    const readings = [read(10, 7), read(16, 5.9), read(22, 4.6), read(28, 3.5)];
    expect(fitScene(EVEN_DUSK, [...readings].reverse())).toEqual(fitScene(EVEN_DUSK, readings));
  });
});

test('whatever is read, the fit stays finite and the width above nothing', () => {
  const anyReadings = fc.array(
    fc.record({
      at: fc.integer({ min: -10, max: 190 }).map((minute) => minutesOn(minute)),
      meter: fc.constantFrom('spot meter', 'test frames', 'camera meter'),
      ev100: fc.double({ min: -50, max: 50, noNaN: true }).map(ev),
    }),
    { maxLength: 12 },
  );
  fc.assert(
    fc.property(anyReadings, (readings) => {
      const fitted = fitScene(CURVED_DUSK, readings);
      for (const { stops } of fitted.offsets) expect(Number.isFinite(stops)).toBe(true);
      expect(Number.isFinite(fitted.scale)).toBe(true);
      for (const { weight } of fitted.readings) {
        expect(weight).toBeGreaterThanOrEqual(0);
        expect(weight).toBeLessThanOrEqual(1);
      }
      const sigma = forecastAt(fitted, minutesOn(100))?.sigma ?? Number.NaN;
      expect(sigma).toBeGreaterThan(0.05);
      expect(sigma).toBeLessThan(30);
    }),
  );
});

describe('several meters', () => {
  test('have an offset each, and a change of meter is no fade', () => {
    const readings = [
      read(10, 7),
      read(14, 6.2),
      read(18, 5.4),
      read(20, 3.5, 'test frames'),
      read(24, 2.7, 'test frames'),
    ];
    const fitted = fitScene(EVEN_DUSK, readings);
    expect(fitted.offsets).toEqual([
      { meter: 'spot meter', stops: expect.closeTo(1, 1) },
      { meter: 'test frames', stops: expect.closeTo(-0.5, 1) },
    ]);
    expect(fitted.scale).toBeCloseTo(1, 2);
    expect(fitted.meter).toBe('test frames');
    expect(fitted.contradictions).toEqual([]);
    // What the newest meter would show.
    expect(forecastAt(fitted, minutesOn(24))?.ev100).toBeCloseTo(2.7, 1);
  });
});

describe('a forecast', () => {
  const readings = [10, 15, 20].map((minute) => read(minute, 8 - 0.2 * minute + 0.7));

  test('widens with the time since the last reading, forward as well as back', () => {
    const fitted = fitScene(EVEN_DUSK, readings);
    const ahead = [20, 25, 30, 40, 60, 80].map(
      (minute) => forecastAt(fitted, minutesOn(minute))?.sigma ?? 0,
    );
    for (const [i, sigma] of ahead.slice(1).entries()) expect(sigma).toBeGreaterThan(ahead[i] ?? 9);
    expect(forecastAt(fitted, minutesOn(0))?.sigma).toBeGreaterThan(ahead[0] ?? 9);
  });

  test('without a reading is two stops wide, and three under a sky that nobody has named', () => {
    expect(forecastAt(fitScene(EVEN_DUSK, []), minutesOn(30))?.sigma).toBe(2);
    expect(forecastAt(fitScene({ ...EVEN_DUSK, cloud: null }, []), minutesOn(30))?.sigma).toBe(3);
  });

  test('widens faster under broken cloud', () => {
    const under = (cloud: SkyTable['cloud']) =>
      forecastAt(fitScene({ ...EVEN_DUSK, cloud }, readings), minutesOn(50))?.sigma ?? 0;
    expect(under('average-cloud')).toBeGreaterThan(under('clear') + 0.1);
  });

  test('is not made where the sky is not known', () => {
    expect(forecastAt(fitScene(EVEN_DUSK, readings), minutesOn(121))).toBeNull();
  });
});

describe('contradictions', () => {
  test('a sky that changed: the newest readings alone decide, the others stay readable', () => {
    const readings = [
      ...[0, 4, 8, 12, 16].map((minute) => read(minute, 8 - 0.2 * minute)),
      ...[20, 24].map((minute) => read(minute, 8 - 0.2 * minute - 1.2)),
    ];
    const fitted = fitScene(EVEN_DUSK, readings);
    expect(fitted.contradictions).toEqual([
      {
        code: 'sky-changed',
        stops: expect.closeTo(-1.2, 1),
        lastBefore: minutesOn(16),
        since: minutesOn(20),
      },
    ]);
    expect(forecastAt(fitted, minutesOn(24))?.ev100).toBeCloseTo(8 - 4.8 - 1.2, 1);
    expect(fitted.readings).toHaveLength(7);
    expect(fitted.readings.map(({ weight }) => weight)).toEqual([0, 0, 0, 0, 0, 1, 1]);
  });

  test('one reading off to a side is a bad reading, not a change', () => {
    const readings = [0, 4, 8, 12, 16].map((minute, i) =>
      read(minute, 8 - 0.2 * minute - (i === 4 ? 1.2 : 0)),
    );
    expect(codes(fitScene(EVEN_DUSK, readings).contradictions)).not.toContain('sky-changed');
  });

  test('lamps: the readings stop falling, the fit says where and follows them', () => {
    const lamps = -1;
    const lit = (minute: number): number => Math.log2(2 ** (8 - 0.2 * minute + 0.5) + 2 ** lamps);
    const fitted = fitScene(
      EVEN_DUSK,
      [10, 20, 30, 40, 50, 60, 70].map((minute) => read(minute, lit(minute))),
    );
    expect(fitted.contradictions).toEqual([{ code: 'lamps', ev100: expect.closeTo(lamps, 1) }]);
    expect(fitted.offsets[0]?.stops).toBeCloseTo(0.5, 0);
    expect(forecastAt(fitted, minutesOn(90))?.ev100).toBeCloseTo(lit(90), 1);
    // The sky no longer decides: less wide than the sky alone would make it.
    const dark = fitScene(
      EVEN_DUSK,
      [10, 20, 30].map((minute) => read(minute, lit(minute))),
    );
    expect(forecastAt(fitted, minutesOn(90))?.sigma).toBeLessThan(
      forecastAt(dark, minutesOn(90))?.sigma ?? 0,
    );
  });

  test('a scale far from one is said', () => {
    const readings = [0, 5, 10, 15, 20, 25, 30, 35, 40, 45].map((minute) =>
      read(minute, 8 - 0.2 * minute * 1.35),
    );
    expect(codes(fitScene(EVEN_DUSK, readings).contradictions)).toContain('scale-far-from-one');
  });

  test('scattered readings are said to be', () => {
    const errors = [0.9, -0.8, 0.7, -0.9, 0.8, -0.7];
    const readings = errors.map((error, i) => read(3 * i, 8 - 0.6 * i + error));
    expect(codes(fitScene(EVEN_DUSK, readings).contradictions)).toContain('scattered');
  });

  test('a quiet evening has none', () => {
    const readings = [0, 5, 10, 15, 20].map((minute, i) =>
      read(minute, 8 - 0.2 * minute + (i % 2 ? 0.1 : -0.1)),
    );
    expect(fitScene(EVEN_DUSK, readings).contradictions).toEqual([]);
  });
});

describe('a reading', () => {
  test('by settings or by a test frame is the EV of the scene', () => {
    const settings = { n: fNumber(8), t: seconds(1), s: iso(200) };
    expect(evOfReading({ kind: 'ev', ev100: ev(4.3) })).toBe(4.3);
    expect(evOfReading({ kind: 'settings', ...settings })).toBeCloseTo(5, 9);
    // A frame that came out a stop over saw a stop more light than it was set for.
    expect(evOfReading({ kind: 'test-frame', ...settings, thirdsOver: 3 })).toBeCloseTo(6, 9);
    expect(evOfReading({ kind: 'test-frame', ...settings, thirdsOver: -2 })).toBeCloseTo(
      5 - 2 / 3,
      9,
    );
  });
});

/**
 * The simulation of the handbook, section 7: readings with a noise of 0.1 stop and rounded to
 * thirds, a true scale of 1 +- 0.08, bad ones off by 1 to 3 stops; 95 % of the errors at the last
 * reading and half an hour later. The sky here is made up, with the fade of 47 N at the equinox.
 */
describe('simulated evenings', () => {
  const sky = skyOf(
    (minute) => 7.5 - 0.2 * minute - 0.0011 * minute ** 2 * Math.exp(-minute / 60),
    120,
  );

  /** Repeatable chance: a generator with a fixed seed. */
  function chance(seed: number): () => number {
    let state = seed;
    return () => {
      state = (state * 1664525 + 1013904223) % 4294967296;
      return state / 4294967296;
    };
  }

  test.each([
    { count: 1, minutes: 0, bad: 0, now: 0.3, ahead: 1.3 },
    { count: 3, minutes: 10, bad: 0, now: 0.25, ahead: 1.3 },
    { count: 3, minutes: 10, bad: 1, now: 0.75, ahead: 1.8 },
    { count: 5, minutes: 15, bad: 0, now: 0.25, ahead: 1.1 },
    { count: 5, minutes: 15, bad: 1, now: 0.32, ahead: 1.4 },
    { count: 8, minutes: 25, bad: 2, now: 0.36, ahead: 1.3 },
  ])(
    '$count readings over $minutes minutes, $bad bad',
    ({ count, minutes, bad, now, ahead }) => {
      const random = chance(20270212);
      const normal = (): number =>
        Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
      const errorsNow: number[] = [];
      const errorsAhead: number[] = [];
      let held = 0;
      const evenings = 200;
      for (let evening = 0; evening < evenings; evening += 1) {
        const truth = scene(sky, 2 * normal(), 1 + 0.08 * normal());
        const spoilt = new Set<number>();
        while (spoilt.size < bad) spoilt.add(Math.floor(random() * count));
        const readings = Array.from({ length: count }, (_, i) => {
          const minute = count > 1 ? (minutes * i) / (count - 1) : 0;
          const off = spoilt.has(i) ? (1 + 2 * random()) * (random() < 0.5 ? -1 : 1) : 0;
          const value = truth(minutesOn(minute)) + 0.1 * normal() + off;
          return read(minute, Math.round(3 * value) / 3);
        });
        const fitted = fitScene(sky, readings);
        const last = minutesOn(minutes);
        const halfAnHour = later(last, 1800);
        const atLast = forecastAt(fitted, last);
        const atHalf = forecastAt(fitted, halfAnHour);
        if (!atLast || !atHalf) throw new Error('no forecast');
        errorsNow.push(Math.abs(atLast.ev100 - truth(last)));
        errorsAhead.push(Math.abs(atHalf.ev100 - truth(halfAnHour)));
        if ((errorsAhead.at(-1) ?? 9) <= nineInTen(atHalf.sigma)) held += 1;
      }
      const most = (errors: number[]): number =>
        errors.sort((a, b) => a - b)[Math.floor(0.95 * errors.length)] ?? Number.NaN;
      expect(most(errorsNow)).toBeLessThan(now);
      expect(most(errorsAhead)).toBeLessThan(ahead);
      expect(held / evenings).toBeGreaterThan(0.87);
    },
    60_000,
  );
});
