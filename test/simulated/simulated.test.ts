import { join, relative, sep } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { moonPosition, sunPosition } from '../../src/science/ephemeris.ts';
import { skyIlluminance } from '../../src/science/skyIlluminance.ts';
import { degrees, later, metres, seconds } from '../../src/science/units.ts';
import { readModules } from '../structure/modules.ts';
import { judgedEvening, type Way } from './fairness.ts';
import { walkWithApp } from './field.ts';
import { walkWithPaper } from './paper.ts';
import { taskOf } from './task.ts';
import { eveningOf, lightOver } from './world/evening.ts';
import { moonOver, skyLight, sunAltitude } from './world/heavens.ts';
import { type Exposed, trueDifference } from './world/truth.ts';
import { type Warming, warmthsOf } from './world/warmth.ts';

const SEEDS = [1, 2, 3, 4];

describe('the simulated world', () => {
  test('is known to itself alone: of the app it has units and the bare generator', () => {
    const root = join(import.meta.dirname, '../..');
    const pathOf = (file: string): string => relative(root, file).split(sep).join('/');
    const below = (folder: string) =>
      ts.sys
        .readDirectory(join(root, folder), ['.ts'])
        .map((file): [string, string] => [pathOf(file), ts.sys.readFile(file) ?? '']);
    const modules = readModules(new Map([...below('test/simulated'), ...below('src/science')]));
    const reached = new Set(below('test/simulated/world').map(([path]) => path));
    expect(reached.size).toBeGreaterThan(5);
    for (const path of reached) {
      const module = modules.get(path);
      if (!module) throw new Error(`${path} leads nowhere`);
      for (const { target } of module.imports) reached.add(target);
    }
    expect([...reached].filter((path) => !path.startsWith('test/simulated/world/')).sort()).toEqual(
      ['src/science/mulberry32.ts', 'src/science/refusal.ts', 'src/science/units.ts'],
    );
  });

  test('comes out the same for the same seed, and other for another', () => {
    const seen = (seed: number): readonly number[] => {
      const { scene, noonMs, spot } = eveningOf(seed);
      return [
        spot.lat,
        spot.lon,
        noonMs,
        ...[4, 6, 8].map((hour) => scene(later(noonMs, 3600 * hour))),
      ];
    };
    for (const seed of SEEDS) {
      expect(seen(seed)).toEqual(seen(seed));
      expect(seen(seed)).not.toEqual(seen(seed + 1));
    }
  });

  test('has its sun within 0.05 and its moon within a degree of an ephemeris', () => {
    for (const seed of SEEDS) {
      const { spot, noonMs } = eveningOf(seed);
      const place = { ...spot, height: metres(0) };
      for (let hour = 0; hour < 24; hour += 1) {
        const at = later(noonMs, 3600 * hour);
        expect(Math.abs(sunAltitude(at, spot) - sunPosition(at, place).altitude)).toBeLessThan(
          0.05,
        );
        expect(
          Math.abs(moonOver(at, spot).altitude - moonPosition(at, place).altitude),
        ).toBeLessThan(1);
      }
    }
  });

  test('has a twilight of its own, which is near the app’s and not the same', () => {
    const apart = Array.from({ length: 60 }, (_, i) => {
      const altitude = degrees(10 - i / 2.5);
      return Math.log2(skyLight(altitude) / skyIlluminance(altitude));
    });
    // The two published curves agree within 0.11 stop down to -12 degrees, 0.5 at -16.
    expect(Math.max(...apart.map(Math.abs))).toBeLessThan(0.5);
    expect(Math.max(...apart.slice(0, 55).map(Math.abs))).toBeLessThan(0.12);
    expect(new Set(apart.map((each) => each.toFixed(3))).size).toBeGreaterThan(30);
  });

  test('knows the mean light of an exposure as many small steps give it', () => {
    const evening = eveningOf(3);
    const opened = later(evening.noonMs, 6.2 * 3600);
    const light = Array.from(
      { length: 24_000 },
      (_, i) => 2 ** evening.scene(later(opened, i / 100)),
    );
    const mean = Math.log2(light.reduce((sum, each) => sum + each, 0) / light.length);
    expect(lightOver(evening, opened, seconds(240))).toBeCloseTo(mean, 3);
  });

  test('warms by two stores: an integration in small steps gives the same', () => {
    const warming: Warming = {
      chip: { tau: seconds(40), exposing: 0.5, idle: 0.1 },
      shell: { tau: seconds(1000), exposing: 1.2, idle: 0.3 },
    };
    const work = [
      { fromS: 100, toS: 160 },
      { fromS: 200, toS: 440 },
    ];
    const warm = { chip: 0, shell: 0 };
    const middles: number[] = [];
    const dt = 0.01;
    for (let step = 0; step * dt < 440; step += 1) {
      const now = step * dt;
      if (work.some(({ fromS, toS }) => Math.abs(now - (fromS + toS) / 2) < dt / 2)) {
        middles.push(warm.chip + warm.shell);
      }
      const how = work.some(({ fromS, toS }) => now >= fromS && now < toS) ? 'exposing' : 'idle';
      for (const store of ['chip', 'shell'] as const) {
        warm[store] += ((warming[store][how] - warm[store]) * dt) / warming[store].tau;
      }
    }
    const found = warmthsOf(warming, work);
    expect(found).toHaveLength(2);
    expect(found[0]).toBeCloseTo(middles[0] ?? Number.NaN, 3);
    expect(found[1]).toBeCloseTo(middles[1] ?? Number.NaN, 3);
  });
});

describe('the truth of a pair', () => {
  const evening = eveningOf(3);
  const start = later(evening.noonMs, 6 * 3600);
  const exposed = (letter: string, minute: number, more: Partial<Exposed> = {}): Exposed => ({
    set: 'set',
    letter,
    openedMs: later(start, 60 * minute),
    t: seconds(1),
    exposure: 2 as Exposed['exposure'],
    ...more,
  });
  const truthOf = (weighed: readonly (readonly [Exposed, number])[]) =>
    trueDifference(
      evening,
      weighed.map(([each]) => each),
      start,
      new Map(weighed),
      ['A', 'B'],
    );
  const light = (minute: number): number => evening.scene(later(start, 60 * minute + 0.5));

  test('is a mean in stops, by the weights that the figure has', () => {
    const found = truthOf([
      [exposed('A', 0), -0.5],
      [exposed('B', 2, { exposure: 2.5 as Exposed['exposure'] }), 0.5],
      [exposed('B', 3), 0],
      [exposed('B', 4), 0.5],
      [exposed('A', 7), -0.5],
    ]);
    expect(found.light).toBeCloseTo((light(2) - light(0) + light(4) - light(7)) / 2, 3);
    expect(Math.abs(found.light)).toBeGreaterThan(0.01);
    expect(found.exposure).toBeCloseTo(0.25, 9);
  });

  test('knows heat by each rig’s own history: who works on in a rhythm is warmer', () => {
    const long = { t: seconds(200) };
    const found = truthOf([
      [exposed('A', 0, long), -0.5],
      [exposed('B', 4, long), 0.5],
      [exposed('B', 8, long), 0.5],
      [exposed('A', 30, long), -0.5],
    ]);
    // B's second frame follows its first at once, A's has rested for a quarter of an hour.
    expect(found.heatByHistory).toBeGreaterThan(0.05);
  });
});

describe('an evening, end to end', () => {
  test('with paper: each set once, A then B, and nothing said of the fade', () => {
    const task = taskOf(eveningOf(4), 'mirror');
    const { exposures, stated } = walkWithPaper(task);
    for (const { weights, reference, other, stops } of stated) {
      const own = exposures.filter((each) => weights.has(each)).map(({ letter }) => letter);
      expect(own).toEqual(own.toSorted());
      expect([...new Set(own)]).toEqual([reference, other]);
      // The same marks but for dials that differ, and a slip of the time dial by a position.
      expect(Math.abs(stops)).toBeLessThan(1.5);
    }
    expect(stated.length).toBeGreaterThan(0);
  });

  test('with the app: every frame of the plan is made, and each light set is compared', () => {
    const task = taskOf(eveningOf(4), 'mirror');
    const { exposures, stated } = walkWithApp(task, { readings: true, rests: true });
    expect(exposures.length).toBeGreaterThanOrEqual(task.prepared.frames.length);
    const lights = task.plan.sets.filter(({ kind }) => kind === 'light');
    expect(stated).toHaveLength(lights.length * (task.plan.rigs.length - 1));
    for (const { set, weights, other } of stated) {
      const own = [...weights].filter(([exposed]) => exposed.letter === other);
      const planned = lights.find(({ id }) => id === set);
      expect(own).toHaveLength((planned?.passes ?? 0) * (planned?.repeats ?? 0));
      expect(own.reduce((sum, [, weight]) => sum + weight, 0)).toBeCloseTo(1, 9);
    }
    const opened = exposures.map(({ openedMs }) => openedMs);
    expect(opened).toEqual(opened.toSorted((a, b) => a - b));
  });

  test('comes out the same twice, and fairer with the app than with paper', () => {
    const ways: readonly Way[] = ['paper', 'app'];
    const light = new Map<Way, number[]>(ways.map((way) => [way, []]));
    for (const seed of SEEDS) {
      const judged = judgedEvening(seed, ways);
      if (seed === SEEDS[0]) expect(judgedEvening(seed, ways)).toEqual(judged);
      for (const [way, pairs] of judged) {
        for (const pair of pairs) light.get(way)?.push(Math.abs(pair.true.light));
      }
    }
    const middle = (way: Way): number => {
      const sorted = (light.get(way) ?? []).sort((a, b) => a - b);
      return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
    };
    expect(light.get('app')?.length).toBeGreaterThan(10);
    expect(middle('app')).toBeLessThan(middle('paper') / 2);
  }, 60_000);

  // Seen to fail: with the fade's width alone halved in `log/pair/figures.ts` 70 in 100 are covered.
  test('has its true even-up within the interval of the pair about 95 times in a hundred', () => {
    const pairs = Array.from({ length: 16 }, (_, i) => i + 1).flatMap(
      (seed) => judgedEvening(seed, ['app']).get('app') ?? [],
    );
    const covered = pairs.filter(({ error, half }) => error <= half).length / pairs.length;
    expect(pairs.length).toBeGreaterThan(60);
    expect(covered).toBeGreaterThanOrEqual(0.9);
    // An interval that always holds says too little: these lie well under half a stop.
    const middle = pairs.map(({ half }) => half).sort((a, b) => a - b)[pairs.length >> 1];
    expect(middle).toBeLessThan(0.3);
  }, 120_000);
});
