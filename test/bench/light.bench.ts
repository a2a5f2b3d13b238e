import {
  AstroTime,
  Body,
  Equator,
  Horizon,
  Illumination,
  Observer,
  SearchHourAngle,
} from 'astronomy-engine';
import { fitScene } from '../../src/light/fit.ts';
import { type Night, nightOf } from '../../src/light/night.ts';
import { PRACTICE_DATE, PRACTICE_SITE } from '../../src/light/practice.ts';
import type { MeterReading } from '../../src/light/reading.ts';
import { skyEv } from '../../src/light/skyTable.ts';
import { ev, later } from '../../src/science/units.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { startServer } from '../journeys/driver/server.ts';
import type { Bench, Ratio } from './ratio.ts';

const ROUNDS = 15;
const SLOWER = 4;
/** One frame of a screen that shows sixty a second. */
const FRAME_MS = [1000 / 60];

/** Milliseconds of some work, one figure a round, turn by turn, after a round that compiles it. */
function timed(...works: readonly (() => unknown)[]): readonly (readonly number[])[] {
  const taken = works.map((): number[] => []);
  for (let round = -1; round < ROUNDS; round += 1) {
    for (const [i, work] of works.entries()) {
      const start = performance.now();
      work();
      if (round >= 0) taken[i]?.push(performance.now() - start);
    }
  }
  return taken;
}

const observer = new Observer(PRACTICE_SITE.latDeg, PRACTICE_SITE.lonDeg, PRACTICE_SITE.heightM);

/** The library alone: both noons, sun and moon every so often, the moon's phase every hour. */
function bareCalls({ noonMs, nextNoonMs }: Night, everyMinutes: number): number {
  let sum = 0;
  for (const from of [noonMs - 43_200_000, noonMs + 3_600_000]) {
    const noon = SearchHourAngle(Body.Sun, observer, 0, new AstroTime(new Date(from)));
    sum += noon.time.ut;
  }
  for (let at = noonMs as number; at <= nextNoonMs; at += everyMinutes * 60_000) {
    const time = new AstroTime(new Date(at));
    for (const body of [Body.Sun, Body.Moon]) {
      const { ra, dec } = Equator(body, time, observer, true, true);
      sum += Horizon(time, observer, ra, dec).altitude;
    }
  }
  for (let at = noonMs as number; at <= nextNoonMs; at += 3_600_000) {
    sum += Illumination(Body.Moon, new AstroTime(new Date(at))).phase_fraction;
  }
  return sum;
}

/** Readings along the practice evening, a stop and a half above its sky, in thirds. */
function readingsOf({ sky, noonMs }: Night, count: number): readonly MeterReading[] {
  return Array.from({ length: count }, (_, i) => {
    const at = later(noonMs, 5 * 3600 + (i * 7200) / count);
    const seen = (skyEv(sky, at) ?? 0) + 1.5 + 0.1 * Math.sin(i);
    return { at, meter: 'spot', ev100: ev(Math.round(3 * seen) / 3) };
  });
}

/** Milliseconds from an act in the page to the page laid out anew, as often as there are acts. */
const redraws = (app: AppWindow, act: 'key' | 'view'): Promise<readonly number[]> =>
  app.evaluate(async (what: 'key' | 'view') => {
    const samples: number[] = [];
    for (let turn = 0; turn < 40; turn += 1) {
      const slider = document.querySelector('[role=slider]');
      const views = [...document.querySelectorAll<HTMLInputElement>('.light-evening input')];
      const start = performance.now();
      if (what === 'view') views[turn % 2 === 0 ? 1 : 0]?.click();
      else
        slider?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowRight', bubbles: true }));
      // What was asked for is drawn in the turns that follow at once; a canvas when it is looked at.
      for (let turns = 0; turns < 20; turns += 1) await Promise.resolve();
      document.querySelector('.light-curve')?.getBoundingClientRect();
      document.querySelector('canvas')?.getContext('2d')?.getImageData(0, 0, 1, 1);
      if (turn >= 10) samples.push(performance.now() - start);
      await new Promise((next) => requestAnimationFrame(next));
    }
    return samples;
  }, act);

async function inBrowser(folder: string): Promise<readonly Ratio[]> {
  const server = await startServer(folder);
  const phone = await takePhone();
  try {
    const app = phone.window;
    await app.open(server.address);
    await app.tap('button', 'Try the practice outing');
    await app.tap('button', 'Light');
    await app.tap('button', /^The old ferry slip/);
    await app.seeThe('slider', 'Instant on the curve');
    await app.slowDown(SLOWER);
    const name = (what: string) => `${what}, CPU slowed ${SLOWER} x, one frame of the screen`;
    return [
      {
        name: name('light: the cursor moved by a key'),
        unit: 'ms',
        measured: await redraws(app, 'key'),
        against: FRAME_MS,
        aim: 1,
      },
      {
        name: name('light: the whole curve drawn anew'),
        unit: 'ms',
        measured: await redraws(app, 'view'),
        against: FRAME_MS,
      },
    ];
  } finally {
    await phone.throwAway();
    await server.stop();
  }
}

/** A night, a fit and the drawing of both. */
export const bench: Bench = async (app) => {
  const night = nightOf(PRACTICE_SITE, PRACTICE_DATE, 'clear');
  const readings = readingsOf(night, 200);
  const [ours = [], sameNodes = [], everyMinute = []] = timed(
    () => nightOf(PRACTICE_SITE, PRACTICE_DATE, 'clear'),
    () => bareCalls(night, 5),
    () => bareCalls(night, 1),
  );
  const [many = [], few = []] = timed(
    () => fitScene(night.sky, readings),
    () => fitScene(night.sky, readings.slice(0, 20)),
  );
  return [
    {
      name: 'light: a night in one-minute steps, the library’s own calls every minute',
      unit: 'ms',
      measured: ours,
      against: everyMinute,
      aim: 1.5,
    },
    {
      name: 'light: the same, the library’s own calls at the nodes it is asked for',
      unit: 'ms',
      measured: ours,
      against: sameNodes,
    },
    {
      name: 'light: the fit of 200 readings, of 20',
      unit: 'ms',
      measured: many,
      against: few,
    },
    ...(await inBrowser(app)),
  ];
};
