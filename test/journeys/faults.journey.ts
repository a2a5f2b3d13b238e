import { rm } from 'node:fs/promises';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { asked, changed, seeAsked, setUp, start, until, untilExpose } from './acts/run.ts';
import { buildApp } from './driver/build.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * What happens to phones in the middle of an outing. The faults are made in the
 * browser's own functions, from outside: the product has no door for them.
 */

let server: AppServer;
let phone: Phone;
let secondBuild: string;

beforeAll(async () => {
  secondBuild = await buildApp('another version');
});

afterAll(async () => {
  await rm(secondBuild, { recursive: true });
});

beforeEach(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  await phone.window.open(server.address);
  await phone.window.tap('button', 'Try the practice outing');
  await phone.window.tap('button', 'Gear');
  await phone.window.see('Ready for offline.');
  await phone.window.tap('button', 'Outing');
  await phone.window.tap('button', 'Start An evening at the old ferry slip');
  await setUp(phone.window, ['A Alder 44', 'B Birch 36']);
});

afterEach(async () => {
  await phone.throwAway();
  await server.stop();
});

/** From now on every transaction is reported complete this much later than it was. */
const delayCompletion = (window: AppWindow, ms: number): Promise<void> =>
  window.evaluate((delay) => {
    const add = IDBTransaction.prototype.addEventListener;
    IDBTransaction.prototype.addEventListener = function (
      this: IDBTransaction,
      type: string,
      listener: EventListenerOrEventListenerObject,
      options?: boolean | AddEventListenerOptions,
    ) {
      if (type !== 'complete' || typeof listener !== 'function') {
        add.call(this, type, listener, options);
        return;
      }
      const late = (event: Event) => setTimeout(() => listener.call(this, event), delay);
      add.call(this, type, late, options);
    };
  }, ms);

/** Runs in the page: from now on the wall clock is off by this much, the steady clock not. */
function skewed(skew: number): void {
  const holder = window as unknown as { realDate?: DateConstructor };
  holder.realDate ??= Date;
  const Real = holder.realDate;
  globalThis.Date = class extends Real {
    constructor(...parts: ConstructorParameters<DateConstructor> | []) {
      super(...((parts.length === 0 ? [Real.now() + skew] : parts) as [number]));
    }
    static override now() {
      return Real.now() + skew;
    }
  } as DateConstructor;
}

const skewWall = (window: AppWindow, ms: number): Promise<void> => window.evaluate(skewed, ms);

/** From now on the disk is full. */
const fillDisk = (window: AppWindow): Promise<void> =>
  window.evaluate(() => {
    const holder = window as unknown as { addBefore: typeof IDBObjectStore.prototype.add };
    holder.addBefore = IDBObjectStore.prototype.add;
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('the test filled the disk', 'QuotaExceededError');
    };
  }, undefined);

const emptyDisk = (window: AppWindow): Promise<void> =>
  window.evaluate(() => {
    const holder = window as unknown as { addBefore: typeof IDBObjectStore.prototype.add };
    IDBObjectStore.prototype.add = holder.addBefore;
  }, undefined);

test('a write that takes two seconds is not called recorded before it is', async () => {
  const { window } = phone;
  await delayCompletion(window, 2000);
  await window.tap('button', 'A Alder 44 is on the tripod');
  await window.see('Recording');
  expect(await asked(window)).toBe('Mount');
  await changed(window, 'Mount');
  expect(await asked(window)).toBe('Dial');
});

test('a phone that dies between the write and its word has the frame once, and says what it has', async () => {
  await untilExpose(phone.window);
  await delayCompletion(phone.window, 60_000);
  await phone.window.tap('button', /^Start 64/);
  await phone.window.see('Recording');
  await phone.kill();
  await phone.restart();
  await phone.window.open(server.address);
  await seeAsked(phone.window, 'Exposing');
  await phone.window.see('Last recorded: exposure started.');
  expect(await phone.window.count('timer')).toBe(1);
  await phone.window.see(/15 left/);
});

test('a full disk loses nothing, says so, and takes what was held when there is room', async () => {
  const { window } = phone;
  await fillDisk(window);
  await window.tap('button', 'A Alder 44 is on the tripod');
  await window.see(/Not saved yet: the phone is full\./);
  await seeAsked(window, 'Dial');
  await window.tap('button', 'Dials are set');
  await seeAsked(window, 'Expose');
  await emptyDisk(window);
  await window.tap('button', 'Save again');
  await window.seeGone(/Not saved yet/);
  await window.reload();
  await seeAsked(window, 'Expose');
});

test('a second window watches and writes nothing', async () => {
  const second = await phone.openSecondWindow();
  await second.open(server.address);
  await second.see('This outing runs in another window. Here it can only be watched.');
  await second.tap('button', 'A Alder 44 is on the tripod');
  await second.see(/Another window runs this outing/);
  await phone.window.reload();
  await seeAsked(phone.window, 'Mount');
  await second.close();
});

test('back, a turned phone and a reload lead to the same step', async () => {
  const { window } = phone;
  await window.tap('button', 'A Alder 44 is on the tripod');
  await seeAsked(window, 'Dial');
  await window.resize({ width: 844, height: 390 });
  await seeAsked(window, 'Dial');
  await window.reload();
  await seeAsked(window, 'Dial');
  await window.back();
  await window.open(server.address);
  await seeAsked(window, 'Dial');
});

test('a double tap is one act', async () => {
  const { window } = phone;
  const act = await window.placeOf('button', 'A Alder 44 is on the tripod');
  await window.touchTwice({ x: act.x + act.width / 2, y: act.y + act.height / 2 });
  await seeAsked(window, 'Dial');
});

test('a phone that slept or set its clock shows the truth at once, and marks what it cannot know', async () => {
  const { window } = phone;
  await untilExpose(window);
  await start(window);
  // The wall clock goes on while the steady one stands still: a phone's sleep.
  await skewWall(window, 40_000);
  await until(async () => /^0:2[0-9]/.test(await window.read('timer', 'A Alder 44')), '40 s less');
  // And set back: while the page lives, its steady clock has the truth.
  await skewWall(window, -7_200_000);
  await until(async () => /^(1:0|0:5)/.test(await window.read('timer', 'A Alder 44')), 'the truth');
  // Not so in another page: nobody knows how long it has been open.
  await window.beforeLoad(skewed, -7_200_000);
  await window.reload();
  await window.see(/The clock was set back\./);
});

test('a page that stood still shows the right second in its first frame', async () => {
  const { window } = phone;
  await untilExpose(window);
  await start(window);
  const stood = await window.evaluate(async () => {
    const began = Date.now();
    // The page's one thread is held, as a stopped process would hold it.
    while (Date.now() - began < 4000);
    await new Promise(requestAnimationFrame);
    await new Promise(requestAnimationFrame);
    const timer = document.querySelector('[role=timer]')?.textContent ?? '';
    return { timer, ms: Date.now() - began };
  }, undefined);
  const [, minutes = '', seconds = ''] = /^(\d+):(\d\d)/.exec(stood.timer) ?? [];
  // 2 s of lead-in, 64 s of exposure, and a second or so before the page stood still.
  const left = Number(minutes) * 60 + Number(seconds);
  expect(left).toBeGreaterThan(66 - stood.ms / 1000 - 4);
  expect(left).toBeLessThanOrEqual(Math.ceil(66 - stood.ms / 1000));
});

test('a newer build is not offered in the middle, and folds the journal equally afterwards', async () => {
  await untilExpose(phone.window);
  await start(phone.window);
  server.publish(secondBuild);
  await phone.window.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (registration.waiting === null) await new Promise((wait) => setTimeout(wait, 50));
  }, undefined);
  const before = await runningScript(phone.window);
  await phone.kill();
  await phone.restart();
  await phone.window.open(server.address);
  await seeAsked(phone.window, 'Exposing');
  expect(await runningScript(phone.window)).toBe(before);
  await phone.window.tap('button', 'Undo');
  await seeAsked(phone.window, 'Expose');
  await phone.window.tap('button', 'More');
  await phone.window.tap('button', 'Gear');
  expect(await phone.window.count('button', 'Change to it now')).toBe(0);
  await phone.window.tap('button', 'Outing');
  await phone.window.tap('button', 'More');
  await phone.window.tap('button', 'End the outing');
  await phone.window.tap('button', 'End the outing', {
    within: { role: 'dialog', name: 'End the outing' },
  });
  await seeAsked(phone.window, 'Ended');
  await phone.window.tap('button', 'Gear');
  await phone.window.tap('button', 'Change to it now');
  await expect
    .poll(() => runningScript(phone.window).catch(() => before), { timeout: 10_000 })
    .not.toBe(before);
});

/** The address of the script that runs: its name holds a hash of its content. */
const runningScript = (window: AppWindow): Promise<string> =>
  window.evaluate(() => document.querySelector('script')?.src ?? '', undefined);
