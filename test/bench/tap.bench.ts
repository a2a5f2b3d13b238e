import { longEvening } from '../evenings/longEvening.ts';
import { untilExpose } from '../journeys/acts/run.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import { countOfflineFiles } from '../journeys/driver/offline-files.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { startServer } from '../journeys/driver/server.ts';
import type { Bench, Ratio } from './ratio.ts';
import { goOn, readBack } from './seed.ts';

const TAPS = 40;
/** The browser compiles what it runs often; the first taps are of another kind. */
const WARM_UP = 5;
/** A second tap within 400 ms is taken for the bounce of a glove. */
const BETWEEN_MS = 250;

/** One tap as seen from outside the app, in milliseconds of the page's clock. */
interface Watched {
  readonly upAt: number;
  /** When the app asked for its transaction. */
  readonly begunAt: number;
  readonly completeAt: number;
  readonly records: readonly unknown[];
}

interface Watching extends Window {
  watched?: Watched[];
  /** Writes records with nothing around the write; milliseconds from its begin to its end. */
  writeBare?: (records: readonly unknown[]) => Promise<number>;
  /** The same for a tap on the bare button, from the finger's leaving on. */
  bareTap?: Promise<number> | undefined;
}

const BARE = 'A bare write';

/** From now on the page notes when a finger leaves and when what it caused is on the disk. */
const watchTaps = (window: AppWindow): Promise<void> =>
  window.evaluate(async (bareButton: string) => {
    const page: Watching = self;
    const watched: Watched[] = [];
    page.watched = watched;
    let upAt = 0;
    let records: unknown[] = [];
    addEventListener(
      'pointerup',
      () => {
        upAt = performance.now();
      },
      { capture: true },
    );
    const { add } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.add = function (value, ...key) {
      if (this.transaction.db.name !== 'bare') records.push(value);
      return add.call(this, value, ...key);
    };
    const { transaction } = IDBDatabase.prototype;
    IDBDatabase.prototype.transaction = function (stores, mode, options) {
      const begunAt = performance.now();
      const made = transaction.call(this, stores, mode, options);
      if (mode !== 'readwrite' || this.name === 'bare') return made;
      records = [];
      const mine = records;
      made.addEventListener('complete', () => {
        watched.push({ upAt, begunAt, completeAt: performance.now(), records: mine });
      });
      return made;
    };
    const bare = await new Promise<IDBDatabase>((opened, failed) => {
      const opening = indexedDB.open('bare', 1);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore('events', { autoIncrement: true });
      };
      opening.onsuccess = () => opened(opening.result);
      opening.onerror = () => failed(opening.error);
    });
    const writeBare = async (values: readonly unknown[], begunAt: number) => {
      const writing = bare.transaction('events', 'readwrite', { durability: 'strict' });
      const store = writing.objectStore('events');
      for (const value of values) store.add(value);
      writing.commit();
      return await new Promise<number>((done, failed) => {
        writing.oncomplete = () => done(performance.now() - begunAt);
        writing.onabort = () => failed(writing.error);
      });
    };
    page.writeBare = (values) => writeBare(values, performance.now());
    const button = document.createElement('button');
    button.textContent = bareButton;
    button.style.cssText = 'position:fixed;inset:0 0 auto auto;z-index:99';
    button.addEventListener('pointerup', () => {
      page.bareTap = writeBare(records, upAt);
    });
    document.body.append(button);
  }, BARE);

const forgetTaps = (window: AppWindow): Promise<void> =>
  window.evaluate(() => {
    const page: Watching = self;
    page.watched?.splice(0);
    page.bareTap = undefined;
  }, undefined);

/** Waits for the tap to be on the disk, and until the page is at rest again. */
const watchedTap = (window: AppWindow) =>
  window.evaluate(async (pauseMs) => {
    const { watched = [] }: Watching = self;
    while (watched.length === 0) await new Promise((again) => setTimeout(again, 10));
    await new Promise((rested) => setTimeout(rested, pauseMs));
    const [tap] = watched;
    if (tap === undefined) throw new Error('nobody watches the taps');
    return {
      records: tap.records.length,
      wholeMs: tap.completeAt - tap.upAt,
      askedMs: tap.begunAt - tap.upAt,
    };
  }, BETWEEN_MS);

/** Writes what the tap wrote once more: for itself, and by a tap of its own. */
async function bareWrites(window: AppWindow) {
  const aloneMs = await window.evaluate(async () => {
    const { watched, writeBare }: Watching = self;
    return await writeBare?.(watched?.[0]?.records ?? []);
  }, undefined);
  await window.tap('button', BARE);
  const byTapMs = await window.evaluate(async (pauseMs) => {
    const page: Watching = self;
    const ms = await page.bareTap;
    await new Promise((rested) => setTimeout(rested, pauseMs));
    return ms;
  }, BETWEEN_MS);
  if (aloneMs === undefined || byTapMs === undefined) throw new Error('no bare write was made');
  return { aloneMs, byTapMs };
}

/** Taps 'Taken' on frame after frame, turn by turn with bare writes of the same records. */
async function tapping(
  window: AppWindow,
  where: string,
  factor: number,
): Promise<readonly Ratio[]> {
  await window.slowDown(factor);
  const whole: number[] = [];
  const asked: number[] = [];
  const alone: number[] = [];
  const byTap: number[] = [];
  for (let tap = 0; tap < WARM_UP + TAPS; tap += 1) {
    await untilExpose(window);
    await forgetTaps(window);
    await window.tap('button', 'Taken');
    const { records, wholeMs, askedMs } = await watchedTap(window);
    if (records !== 2) throw new Error(`a frame is two records, and ${records} were written`);
    const { aloneMs, byTapMs } = await bareWrites(window);
    if (tap < WARM_UP) continue;
    whole.push(wholeMs);
    asked.push(askedMs);
    alone.push(aloneMs);
    byTap.push(byTapMs);
  }
  await window.slowDown(1);
  const unit = 'ms';
  const speed = factor === 1 ? '' : `, CPU slowed ${factor} x`;
  const record = `a tap to its durable record ${where}${speed}`;
  const aim = factor === 1 ? { aim: 1.2 } : {};
  return [
    // After a finger the browser draws before it tells what the disk said, to the bare page as well.
    { name: `${record}, a bare write by a tap`, unit, measured: whole, against: byTap, ...aim },
    { name: `${record}, a bare write in a page at rest`, unit, measured: whole, against: alone },
    {
      name: `${record}: until the write is asked for, all of it`,
      unit,
      measured: asked,
      against: whole,
    },
  ];
}

/** Ends the outing in hand and goes to the list in the log. */
async function endOuting(window: AppWindow): Promise<void> {
  await window.tap('button', 'More');
  await window.tap('button', 'End the outing');
  await window.tap('button', 'End the outing', {
    within: { role: 'dialog', name: 'End the outing' },
  });
  await window.tap('button', 'Put the outing aside');
  // Once to where it was left, the outing that was gone on with, and once to the list.
  await window.tap('button', 'Log');
  await window.seeThe('heading', 'Frames');
  await window.tap('button', 'Log');
  await window.seeThe('heading', 'Log');
}

/** From the finger's leaving to the word of the disk. */
export const bench: Bench = async (folder) => {
  const server = await startServer(folder);
  const phone = await takePhone();
  const { window } = phone;
  const length = { rigs: 1, time: '1/10', repeats: 60, tries: 1, ended: false } as const;
  try {
    await window.open(server.address);
    await countOfflineFiles(window);
    await readBack(window, longEvening({ ...length, name: 'Begun', sets: 3, setsLeft: 3 }));
    await readBack(window, longEvening({ ...length, name: 'Far on', sets: 11, setsLeft: 2 }));
    await watchTaps(window);
    await goOn(window, 'Begun');
    const begun = [
      ...(await tapping(window, 'in an evening begun', 1)),
      ...(await tapping(window, 'in an evening begun', 4)),
    ];
    await endOuting(window);
    await goOn(window, 'Far on');
    return [...begun, ...(await tapping(window, 'after 500 frames', 1))];
  } finally {
    await phone.throwAway();
    await server.stop();
  }
};
