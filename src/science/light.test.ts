import { describe, expect, test } from 'vitest';
import { crossings } from './crossings.ts';
import { interpolate } from './interpolation.ts';
import { moonIlluminance } from './moonIlluminance.ts';
import { incidentEv } from './naturalLight.ts';
import {
  refractionAtApparent,
  refractionAtTrue,
  USUAL_PRESSURE,
  USUAL_TEMPERATURE,
} from './refraction.ts';
import { directShare, lightPastRidge } from './ridge.ts';
import { meanMinusMid, withLamps } from './sceneLight.ts';
import { skyIlluminance } from './skyIlluminance.ts';
import { degrees, ev, type StopsPerMinute, seconds, type UtcMs, utc } from './units.ts';

const range = (from: number, to: number, step: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, i) => from + i * step);

describe('the light of the sky', () => {
  // Table of the handbook, columns 'EV100 incident' and 'stops per degree'.
  test.each([
    [30, 14.2, 0.06],
    [5, 10.89, 0.32],
    [0, 8.24, 0.83],
    [-6, 0.47, 1.64],
    [-9, -4.36, 1.5],
    [-12, -8.21, 1.05],
    [-18, -11.9, 0.22],
  ])('at %d degrees is EV %d and falls by %d stop a degree', (altitude, wanted, slope) => {
    const at = (h: number): number => incidentEv(skyIlluminance(degrees(h)));
    expect(at(altitude)).toBeCloseTo(wanted, 1);
    expect((at(altitude + 0.05) - at(altitude - 0.05)) / 0.1).toBeCloseTo(slope, 1);
  });

  test('never grows while the sun sinks, but for the ripple that its source leaves', () => {
    const evs = range(-25, 90, 0.1).map((h) => incidentEv(skyIlluminance(degrees(h))));
    const rises = evs.slice(1).map((value, i) => (evs[i] ?? 0) - value);
    expect(Math.max(...rises)).toBeLessThan(0.003);
  });

  test('does not jump anywhere', () => {
    const evs = range(-25, 89, 0.01).map((h) => incidentEv(skyIlluminance(degrees(h))));
    const steps = evs.slice(1).map((value, i) => Math.abs(value - (evs[i] ?? 0)));
    expect(Math.max(...steps)).toBeLessThan(0.02);
  });
});

test('the moon law joins where its cubics meet', () => {
  for (const joint of [5, 20]) {
    const below = moonIlluminance(degrees(joint - 1e-9), degrees(0), degrees(0.951));
    const above = moonIlluminance(degrees(joint), degrees(0), degrees(0.951));
    expect(Math.abs(Math.log2(above / below))).toBeLessThan(0.05);
  }
});

test('refraction by either formula brings a body to the same place within 0.15 arcminute', () => {
  for (const apparent of range(0, 85, 0.5)) {
    const down = refractionAtApparent(degrees(apparent), USUAL_PRESSURE, USUAL_TEMPERATURE);
    const up = refractionAtTrue(degrees(apparent - down / 60), USUAL_PRESSURE, USUAL_TEMPERATURE);
    expect(Math.abs(up - down)).toBeLessThan(0.15);
  }
});

describe('a ridge', () => {
  // Shares and losses as the handbook computed them from the same Circular.
  test.each([
    [2, 0.03, -0.05],
    [3, 0.1, -0.2],
    [5, 0.31, -0.5],
    [8, 0.55, -1.1],
    [10, 0.64, -1.5],
    [20, 0.81, -2.4],
  ])('takes the direct light: at %d degrees a share of %d, %d stop', (altitude, share, loss) => {
    expect(directShare(degrees(altitude))).toBeCloseTo(share, 2);
    const left = lightPastRidge(degrees(altitude), degrees(altitude + 2));
    expect(Math.abs(Math.log2(left) - loss)).toBeLessThan(0.06);
  });

  test('takes nothing from a sun well above it, nor anywhere on a level horizon', () => {
    expect(lightPastRidge(degrees(12), degrees(10))).toBe(1);
    for (const h of range(-3, 5, 0.25)) expect(lightPastRidge(degrees(h), degrees(0))).toBe(1);
  });
});

test('lamps add as light', () => {
  expect(withLamps(ev(3), ev(3))).toBeCloseTo(4, 12);
  expect(withLamps(ev(9), ev(-9))).toBeCloseTo(Math.log2(2 ** 9 + 2 ** -9), 12);
  expect(withLamps(ev(-9), ev(2))).toBeCloseTo(Math.log2(2 ** -9 + 2 ** 2), 12);
  expect(withLamps(ev(1.5), null)).toBe(1.5);
});

test('the mean over an exposure is the mean of the light, worked out by many small steps', () => {
  const rate = -0.3 as StopsPerMinute;
  const minutes = range(-2, 2, 0.001);
  const light = minutes.reduce((sum, minute) => sum + 2 ** (rate * minute), 0) / minutes.length;
  expect(meanMinusMid(seconds(240), rate)).toBeCloseTo(Math.log2(light), 4);
  expect(meanMinusMid(seconds(240), 0 as StopsPerMinute)).toBe(0);
  // The two branches meet.
  const tiny = meanMinusMid(seconds(60), 2.8e-4 as StopsPerMinute);
  const small = meanMinusMid(seconds(60), 3e-4 as StopsPerMinute);
  expect(small / tiny).toBeCloseTo((3 / 2.8) ** 2, 3);
});

describe('between even steps', () => {
  const steps = { startMs: 0, stepMs: 10, values: [0, 1, 8, 27, 64] };

  test('a straight line is met exactly, ends included', () => {
    const line = { startMs: 0, stepMs: 10, values: [5, 7, 9, 11] };
    for (const at of [0, 3, 10, 17, 29, 30])
      expect(interpolate(line, at)).toBeCloseTo(5 + at / 5, 12);
  });

  test('the values themselves are met, and a cubic nearly', () => {
    expect([0, 10, 20, 30, 40].map((at) => interpolate(steps, at))).toEqual(steps.values);
    expect(interpolate(steps, 25)).toBeCloseTo(15.625, 0);
  });

  test('nothing is known outside, or from a single value', () => {
    expect(interpolate(steps, -0.001)).toBeNull();
    expect(interpolate(steps, 40.001)).toBeNull();
    expect(interpolate({ startMs: 0, stepMs: 10, values: [3] }, 0)).toBeNull();
  });
});

describe('passages through a value', () => {
  const from = utc(0);
  const to = utc(3_600_000);
  const wave = (at: UtcMs): number => Math.cos((at / 3_600_000) * 2 * Math.PI);

  test('are found in order, with their direction, to a few hundredths of a second', () => {
    const [falling, rising] = crossings(wave, 0, from, to);
    expect(falling?.rising).toBe(false);
    expect(Math.abs((falling?.at ?? 0) - 900_000)).toBeLessThan(30);
    expect(rising?.rising).toBe(true);
    expect(Math.abs((rising?.at ?? 0) - 2_700_000)).toBeLessThan(30);
  });

  test('are none where the quantity is unknown or stays on one side', () => {
    expect(crossings(() => null, 0, from, to)).toEqual([]);
    expect(crossings(wave, 2, from, to)).toEqual([]);
  });
});
