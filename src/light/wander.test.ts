import { describe, expect, test } from 'vitest';
import { minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { mulberry32, seed } from '../science/mulberry32.ts';
import { ev } from '../science/units.ts';
import { fitScene } from './fit.ts';
import { levelAt, type Scene } from './scene.ts';
import { differenceOf, type Part } from './wander.ts';

/*
 * Evenings drawn by the very law that is assumed: a random walk whose pace is drawn by its odds, a
 * scale of the fade, errors of a meter. There the stated width must hold what it says.
 */

const SKY = skyOf((minute) => 8 - 0.2 * minute, 120, 'average-cloud');
const EVENINGS = 250;

interface Drawn {
  readonly scene: Scene;
  /** The true level at a minute. */
  readonly level: (minute: number) => number;
}

/** An evening of the assumed law; read every so many minutes from minute 5 to 65. */
function drawn(evening: number, everyMinutes: number): Drawn {
  const random = mulberry32(seed(evening));
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const doublings = [-3, -2, -1, 0, 1, 2];
  const odds = doublings.map((each) => Math.exp(-(each ** 2) / 2));
  const all = odds.reduce((sum, each) => sum + each, 0);
  const square = doublings.reduce((sum, each, i) => sum + ((odds[i] ?? 0) / all) * 4 ** each, 0);
  let left = random() * all;
  const place = odds.findIndex((each) => {
    left -= each;
    return left <= 0;
  });
  // 0.3 stop in ten minutes is the root of the mean square over all paces.
  const perMinute = ((0.3 / Math.sqrt(10)) * 2 ** (doublings[place] ?? 0)) / Math.sqrt(square);
  const steps = Array.from({ length: 481 }, () => perMinute * Math.sqrt(0.25) * normal());
  const walk: number[] = [];
  for (const step of steps) walk.push((walk.at(-1) ?? 0) + step);
  const scale = 1 + 0.1 * normal();
  const offset = normal();
  const level = (minute: number): number =>
    offset + 8 - 0.2 * scale * minute + (walk[Math.round(4 * minute)] ?? 0);
  const readings = Array.from({ length: 1 + Math.floor(60 / everyMinutes) }, (_, i) => {
    const minute = 5 + everyMinutes * i;
    return { at: minutesOn(minute), meter: 'spot', ev100: ev(level(minute) + 0.2 * normal()) };
  });
  return { scene: fitScene(SKY, readings), level };
}

/** A difference of instants: other minus reference. */
const PAIRS = {
  'three minutes apart': { 30: -1, 33: 1 },
  'twenty minutes apart': { 30: -1, 50: 1 },
  'a mirror': { 30: -0.5, 33: 0.5, 36: 0.5, 39: -0.5 },
} as const;

const partsOf = (scene: Scene, pair: Readonly<Record<number, number>>): readonly Part[] =>
  Object.entries(pair).flatMap(([minute, factor]) => {
    const midMs = minutesOn(Number(minute));
    const level = levelAt(scene, midMs);
    return level ? [{ factor, midMs, level }] : [];
  });

const EVERY = [5, 10, 30] as const;

/** All evenings, by how many minutes lie between readings. */
const drawnBy = new Map(
  EVERY.map((every) => [every, Array.from({ length: EVENINGS }, (_, i) => drawn(i + 1, every))]),
);

/** The errors with their stated deviations, in stops. */
const errorsOf = (pair: Readonly<Record<number, number>>, every: (typeof EVERY)[number]) =>
  (drawnBy.get(every) ?? []).map(({ scene, level }) => {
    const { stops, variance } = differenceOf(scene, partsOf(scene, pair));
    const truth = Object.entries(pair).reduce(
      (sum, [minute, factor]) => sum + factor * level(Number(minute)),
      0,
    );
    return { error: stops - truth, sigma: Math.sqrt(variance) };
  });

describe('a difference of light under a sky that wanders', () => {
  test.each(Object.keys(PAIRS) as (keyof typeof PAIRS)[])(
    '%s: its interval holds what it says, whatever the readings are',
    (name) => {
      for (const every of EVERY) {
        const errors = errorsOf(PAIRS[name], every);
        const held = errors.filter(({ error, sigma }) => Math.abs(error) <= 1.96 * sigma).length;
        // 95 in 100, within three deviations of such a count.
        expect(Math.abs(held / EVENINGS - 0.95)).toBeLessThan(
          3 * Math.sqrt((0.95 * 0.05) / EVENINGS),
        );
        const square = errors.reduce((sum, { error, sigma }) => sum + (error / sigma) ** 2, 0);
        expect(square / EVENINGS).toBeGreaterThan(0.6);
        expect(square / EVENINGS).toBeLessThan(1.4);
      }
    },
  );

  test('the more readings there are, the less is left', () => {
    const size = (every: (typeof EVERY)[number]): number =>
      errorsOf(PAIRS['twenty minutes apart'], every).reduce(
        (sum, { error }) => sum + error ** 2,
        0,
      );
    expect(size(5)).toBeLessThan(0.9 * size(10));
    expect(size(10)).toBeLessThan(0.9 * size(30));
  });

  test('one bad reading moves a difference by little, a sky that stays changed by much', () => {
    const read = (errors: readonly number[]) =>
      fitScene(
        SKY,
        errors.map((error, i) => ({
          at: minutesOn(5 + 5 * i),
          meter: 'spot',
          ev100: ev(8 - 0.2 * (5 + 5 * i) + error),
        })),
      );
    // Minute 25 to 35: the fifth reading and the seventh.
    const moved = (errors: readonly number[]): number => {
      const scene = read(errors);
      return differenceOf(scene, partsOf(scene, { 25: -1, 35: 1 })).stops + 2;
    };
    expect(Math.abs(moved([0, 0, 0, 0, 0, 0, 2, 0, 0, 0]))).toBeLessThan(0.3);
    expect(moved([0, 0, 0, 0, 0, 0, 2, 2, 2, 2])).toBeGreaterThan(1);
  });

  test('readings that jump about make the sky wander more than readings along the curve', () => {
    const read = (errors: readonly number[]) =>
      fitScene(
        SKY,
        errors.map((error, i) => ({
          at: minutesOn(5 + 5 * i),
          meter: 'spot',
          ev100: ev(8 - 0.2 * (5 + 5 * i) + error),
        })),
      );
    const width = (scene: Scene): number =>
      differenceOf(scene, partsOf(scene, PAIRS['a mirror'])).variance;
    const calm = read([0, 0.1, 0, -0.1, 0, 0.1, 0, -0.1, 0, 0]);
    const rough = read([0, 0.4, 0.9, 0.6, 0, -0.6, -0.4, 0.2, 0.8, 0.3]);
    expect(width(rough)).toBeGreaterThan(3 * width(calm));
  });
});
