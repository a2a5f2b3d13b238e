import { execFile } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { setUp, until } from '../journeys/acts/run.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import { countOfflineFiles } from '../journeys/driver/offline-files.ts';
import type { AppWindow, Phone } from '../journeys/driver/phone.ts';
import { startServer } from '../journeys/driver/server.ts';
import type { Bench } from './ratio.ts';

const ROUNDS = 15;
const SLOWER = 4;

/** Installs what a server has, does what comes before, and takes the server away. */
async function installed(
  folder: string,
  prepare: (window: AppWindow) => Promise<void>,
): Promise<{ readonly phone: Phone; readonly address: string }> {
  const server = await startServer(folder);
  const phone = await takePhone();
  await phone.window.open(server.address);
  await prepare(phone.window);
  await until(async () => {
    const { present, expected } = await countOfflineFiles(phone.window);
    return present === expected;
  }, 'every file to be on the phone');
  await server.stop();
  return { phone, address: server.address };
}

/** Milliseconds from asking for the page to its first text, in a browser that has just started. */
async function coldStart({ phone, address }: { readonly phone: Phone; readonly address: string }) {
  await phone.restart();
  await phone.window.slowDown(SLOWER);
  await phone.window.open(address);
  return phone.window.evaluate(
    () =>
      new Promise<number>((seen) => {
        new PerformanceObserver((list) => {
          const [first] = list.getEntriesByName('first-contentful-paint');
          if (first) seen(first.startTime);
        }).observe({ type: 'paint', buffered: true });
      }),
    undefined,
  );
}

async function buildBarePage(): Promise<string> {
  const outDir = await mkdtemp(join(tmpdir(), 'evenfall-bare-'));
  await promisify(execFile)(process.execPath, [
    join(import.meta.dirname, 'bare/build.mjs'),
    outDir,
  ]);
  return outDir;
}

/** Starts without a network in a new browser process, turn by turn with a bare page of the same libraries. */
export const bench: Bench = async (app) => {
  const barePage = await buildBarePage();
  const places = {
    bare: await installed(barePage, (window) => window.see(/^Opened/)),
    untouched: await installed(app, (window) => window.seeThe('heading', 'Evenfall')),
    underWay: await installed(app, async (window) => {
      await window.tap('button', 'Try the practice outing');
      await window.tap('button', 'Outing');
      await window.tap('button', 'Start An evening at the old ferry slip');
      await setUp(window, ['A Alder 44', 'B Birch 36']);
    }),
  };
  const bareAsking = { ...places.bare, address: `${places.bare.address}#asks-first` };
  const starts = {
    bare: places.bare,
    bareAsking,
    untouched: places.untouched,
    underWay: places.underWay,
  };
  const taken: Record<keyof typeof starts, number[]> = {
    bare: [],
    bareAsking: [],
    untouched: [],
    underWay: [],
  };
  try {
    for (let round = 0; round < ROUNDS; round += 1) {
      for (const start of ['bare', 'untouched', 'bareAsking', 'underWay'] as const) {
        taken[start].push(await coldStart(starts[start]));
      }
    }
  } finally {
    for (const { phone } of Object.values(places)) await phone.throwAway();
    await rm(barePage, { recursive: true });
  }
  const to = (what: string, against: string) =>
    `offline cold start ${what}, CPU slowed ${SLOWER} x, ${against}`;
  const bare = 'a bare page';
  const asking = 'a bare page that asks its database first';
  const [first, back] = ['to the first screen', 'back into an outing under way'] as const;
  const unit = 'ms';
  const { untouched, underWay } = taken;
  return [
    { name: to(first, bare), unit, measured: untouched, against: taken.bare, aim: 1.3 },
    { name: to(back, bare), unit, measured: underWay, against: taken.bare, aim: 1.3 },
    { name: to(first, asking), unit, measured: untouched, against: taken.bareAsking },
    { name: to(back, asking), unit, measured: underWay, against: taken.bareAsking },
  ];
};
