import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CURVED_DUSK, EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { exactSettings } from '../gear/positions.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { must } from '../science/refusal.ts';
import { duration, ev, fNumber, iso, minutesBetween, seconds, stops } from '../science/units.ts';
import { rightSettingsAt } from './rightSettings.ts';
import { assumedScene } from './scene.ts';
import { missesFrom, type SetAims, startAt } from './startAt.ts';
import { type Aim, missAt, rightStretches, whenFallsTo } from './windows.ts';

const scene = assumedScene(EVEN_DUSK);
const EVENING = { fromMs: minutesOn(0), toMs: minutesOn(120) };

/** f/8, 1 s, ISO 100: made for EV 6, which the even dusk has at minute 10. */
const made = (target = 0, t = 1): Aim => ({
  exact: { n: fNumber(8), t: seconds(t), s: iso(100) },
  targetOffset: stops(target),
});

describe('how an exposure comes out', () => {
  test('right when the scene has the EV it is made for, over before, under after', () => {
    expect(missAt(scene, made(), minutesOn(10))).toBeCloseTo(0, 2);
    expect(missAt(scene, made(), minutesOn(5))).toBeCloseTo(1, 2);
    expect(missAt(scene, made(), minutesOn(15))).toBeCloseTo(-1, 2);
  });

  test('meant two stops under it is right two stops later in the dusk', () => {
    expect(missAt(scene, made(-2), minutesOn(20))).toBeCloseTo(0, 2);
  });

  test('a rig that is given a stop more time is right a stop later', () => {
    expect(missAt(scene, made(0, 2), minutesOn(15))).toBeCloseTo(0, 2);
  });

  test('unknown where the sky ends within the exposure', () => {
    expect(missAt(scene, made(0, 600), minutesOn(115))).toBeNull();
  });
});

describe('the minutes in which an exposure is right', () => {
  test('as many as the tolerance is of the fade', () => {
    const [found, ...more] = rightStretches(scene, made(), stops(0.5), EVENING);
    expect(more).toEqual([]);
    // Half a stop at 0.2 stop a minute on either side of minute 10, less half the exposure.
    expect(minutesBetween(minutesOn(0), found?.fromMs ?? minutesOn(99))).toBeCloseTo(7.5, 1);
    expect(minutesBetween(minutesOn(0), found?.toMs ?? minutesOn(99))).toBeCloseTo(12.5, 1);
    expect(minutesBetween(minutesOn(0), found?.rightMs ?? minutesOn(99))).toBeCloseTo(10, 1);
  });

  test('at dusk and at dawn, cut off at the ends of the stretch', () => {
    const night = assumedScene(skyOf((minute) => Math.abs(minute - 60) / 10 + 0.0, 120));
    const aim: Aim = {
      exact: { n: fNumber(2), t: seconds(1), s: iso(100) },
      targetOffset: stops(0),
    };
    const found = rightStretches(night, aim, stops(0.5), EVENING);
    // EV 2 within half a stop: minutes 35 to 45, and 75 to 85.
    expect(
      found.map(({ fromMs, toMs }) => [
        Math.round(minutesBetween(minutesOn(0), fromMs)),
        Math.round(minutesBetween(minutesOn(0), toMs)),
      ]),
    ).toEqual([
      [35, 45],
      [75, 85],
    ]);
    const [cut] = rightStretches(night, aim, stops(0.5), {
      fromMs: minutesOn(38),
      toMs: minutesOn(60),
    });
    expect(cut?.fromMs).toBe(minutesOn(38));
  });

  test('none where the light never gets there', () => {
    expect(rightStretches(scene, made(0, 1e-4), stops(0.3), EVENING)).toEqual([]);
  });

  test('all of them where the light stands still', () => {
    const night = assumedScene(skyOf(() => 6, 120));
    expect(
      rightStretches(night, made(), stops(0.3), { fromMs: minutesOn(5), toMs: minutesOn(60) }),
    ).toEqual([{ fromMs: minutesOn(5), toMs: minutesOn(60), rightMs: null }]);
  });

  test('within the tolerance inside, outside of it outside', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 1.5, noNaN: true }),
        fc.constantFrom(0.1, 1, 30, 240),
        fc.integer({ min: 0, max: 170 }),
        (target, tolerance, t, minute) => {
          const dusk = assumedScene(CURVED_DUSK);
          const stretch = { fromMs: minutesOn(0), toMs: minutesOn(175) };
          const found = rightStretches(dusk, made(target, t), stops(tolerance), stretch);
          const at = minutesOn(minute);
          const miss = missAt(dusk, made(target, t), at);
          const inside = found.some(({ fromMs, toMs }) => at >= fromMs && at <= toMs);
          if (miss !== null && Math.abs(Math.abs(miss) - tolerance) > 0.01) {
            expect(inside).toBe(Math.abs(miss) < tolerance);
          }
          for (const { rightMs } of found) {
            if (rightMs !== null) expect(missAt(dusk, made(target, t), rightMs)).toBeCloseTo(0, 3);
          }
        },
      ),
    );
  });
});

test('the first time that the light falls to a value', () => {
  const night = assumedScene(skyOf((minute) => Math.abs(minute - 60) / 10, 120));
  expect(whenFallsTo(night, ev(3), EVENING)).toBeCloseTo(minutesOn(30), -2);
  expect(whenFallsTo(night, ev(3), { fromMs: minutesOn(40), toMs: minutesOn(120) })).toBeNull();
  expect(whenFallsTo(night, ev(7), EVENING)).toBeNull();
});

describe('the exposure that is right at a minute', () => {
  const rig = (letter: string): Assembled => {
    const id = PRACTICE_GEAR.rigs.find((each) => each.letter === letter)?.id;
    const found = id && assemble(PRACTICE_GEAR, id);
    if (!found) throw new Error('no such rig');
    return found;
  };
  const standing = (of: Assembled, settings: Settings) => ({
    settings,
    exact: must(exactSettings(of, settings)),
  });
  const dial = (mark: string) => ({ kind: 'dial', mark }) as const;
  const birch = rig('B');
  const onBirch = standing(birch, { fMark: '8', time: dial('1'), isoMark: '100' });

  test('turns one dial at a time, to a real position', () => {
    // Minute 25: EV 3, three stops darker than f/8, 1 s, ISO 100 is made for.
    const found = must(rightSettingsAt(scene, birch, onBirch, stops(0), minutesOn(25)));
    expect(found.map(({ dial: which, settings }) => [which, settings])).toEqual([
      ['time', { fMark: '8', time: dial('8'), isoMark: '100' }],
      ['iso', { fMark: '8', time: dial('1'), isoMark: '800' }],
      ['f-number', { fMark: '2.8', time: dial('1'), isoMark: '100' }],
    ]);
    for (const { miss } of found) expect(Math.abs(miss)).toBeLessThan(1 / 6 + 0.01);
  });

  test('is right at its own minute, and the window says the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 110 }),
        fc.double({ min: -3, max: 2, noNaN: true }),
        (minute, target) => {
          const at = minutesOn(minute);
          for (const { exact, miss } of must(
            rightSettingsAt(scene, birch, onBirch, stops(target), at),
          )) {
            expect(missAt(scene, { exact, targetOffset: stops(target) }, at)).toBe(miss);
            if (Math.abs(miss) > 0.25) continue;
            const found = rightStretches(
              scene,
              { exact, targetOffset: stops(target) },
              stops(0.3),
              {
                fromMs: minutesOn(Math.max(0, minute - 1)),
                toMs: minutesOn(minute + 1),
              },
            );
            expect(found.some(({ fromMs, toMs }) => at >= fromMs && at <= toMs)).toBe(true);
          }
        },
      ),
      { numRuns: 50 },
    );
  });

  test('is as near as the dial goes, and says what is missing', () => {
    // Minute 90: EV -10, sixteen stops away; Birch has no bulb and stops at 60 s.
    const [time] = must(rightSettingsAt(scene, birch, onBirch, stops(0), minutesOn(90)));
    expect(time?.settings.time).toEqual(dial('60'));
    expect(time?.miss).toBeLessThan(-9);
  });

  test('holds bulb where the dial is too short, for as long as the falling light asks', () => {
    const alder = rig('A');
    const onAlder = standing(alder, { fMark: '4', time: dial('64'), isoMark: '100' });
    // At minute 55 the light is EV -3; while it falls by 0.2 stop a minute, f/4 wants more than the
    // 128 s that a light standing still would.
    const [time] = must(rightSettingsAt(scene, alder, onAlder, stops(0), minutesOn(55)));
    expect(time?.settings.time.kind).toBe('bulb');
    expect(time?.exact.t).toBeGreaterThan(128);
    expect(time?.exact.t).toBeLessThan(180);
    expect(Math.abs(time?.miss ?? 9)).toBeLessThan(0.01);
  });
});

describe('when to start', () => {
  const aims = (...afterS: number[]): SetAims<string> => ({
    set: 'bright',
    aims: afterS.map((after) => ({ ...made(), afterS: duration(after) })),
  });
  const darker: SetAims<string> = {
    set: 'dark',
    aims: [{ ...made(0, 8), afterS: duration(15 * 60) }],
  };

  test('as late as every set still fits', () => {
    // The first set fits from minute 7.5 to 12.5; the darker one, right at minute 25 or, its eight
    // seconds counted, a little before, follows after 15 minutes: 22.4 - 15 to 27.4 - 15.
    const found = startAt(scene, [aims(0), darker], stops(0.5), EVENING);
    expect(found?.fits).toBe(true);
    expect(found?.startMs).toBe(minutesOn(12));
    expect(found?.misses).toEqual([
      { set: 'bright', beyond: 0 },
      { set: 'dark', beyond: 0 },
    ]);
  });

  test('every frame of a set counts', () => {
    // The last frame comes 4 minutes after the first: 5 minutes of tolerance leave one.
    expect(startAt(scene, [aims(0, 240)], stops(0.5), EVENING)?.startMs).toBe(minutesOn(8));
  });

  test('where nothing fits, with the smallest sum of misses, and says whose', () => {
    const late: SetAims<string> = {
      set: 'dark',
      aims: [{ ...made(0, 8), afterS: duration(40 * 60) }],
    };
    const found = startAt(scene, [aims(0), late], stops(0.5), EVENING);
    expect(found?.fits).toBe(false);
    // The gap is 25 minutes too long, 5 stops, of which the tolerances take one: 4 are left.
    const total = (found?.misses ?? []).reduce((sum, { beyond }) => sum + Math.abs(beyond), 0);
    expect(total).toBeCloseTo(4, 1);
    const [bright, dark] = found?.misses ?? [];
    expect(bright?.beyond).toBeGreaterThanOrEqual(0);
    expect(dark?.beyond).toBeLessThanOrEqual(0);
  });

  test('no other start would have been better', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 2400 }), { minLength: 1, maxLength: 4 }),
        fc.constantFrom(0.25, 0.5, 1),
        (after, tolerance) => {
          const sets = after.map(
            (afterS, i): SetAims<string> => ({
              set: `${i}`,
              aims: [{ ...made(-i, 2 ** i), afterS: duration(afterS) }],
            }),
          );
          const found = startAt(scene, sets, stops(tolerance), EVENING);
          if (!found) throw new Error('no start');
          const sumFrom = (minute: number): number | null =>
            missesFrom(scene, sets, stops(tolerance), minutesOn(minute))?.reduce(
              (sum, { beyond }) => sum + Math.abs(beyond),
              0,
            ) ?? null;
          const chosen = minutesBetween(minutesOn(0), found.startMs);
          const best = sumFrom(chosen);
          for (let minute = 0; minute <= 120; minute += 1) {
            const total = sumFrom(minute);
            if (total === null || best === null) continue;
            expect(total).toBeGreaterThanOrEqual(best);
            if (minute > chosen) expect(total).toBeGreaterThan(best);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  test('not at all without anything to judge by, or without a sky', () => {
    expect(startAt(scene, [], stops(0.5), EVENING)).toBeNull();
    expect(startAt(scene, [{ set: 'x', aims: [] }], stops(0.5), EVENING)).toBeNull();
    expect(
      startAt(scene, [aims(0)], stops(0.5), { fromMs: minutesOn(200), toMs: minutesOn(300) }),
    ).toBeNull();
  });
});
