import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { A, dialled, frame, held } from '../evenings/evening.ts';
import { backupOf, takeIn } from './acts/backups.ts';
import { record, seeAsked, setUp, until, untilExpose } from './acts/run.ts';
import { type HidablePhone, takeHidablePhone } from './driver/hidable.ts';
import type { AppWindow } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * A phone in a pocket, in real time: the page is hidden, or stopped whole, in the middle of an
 * exposure, and comes back. What is seen is taken from the first frame after the return.
 */

const RIG = 'A Alder 44';
/** The practice body's self-timer, between the tap and the opening, s. */
const LEAD_IN_S = 2;
const FRAMES = [
  frame('timed', A, dialled('8', '8', '400')),
  frame('bulb', A, held('8', 20, '400')),
  frame('long', A, dialled('8', '16', '400')),
  frame('later', A, dialled('8', '32', '400')),
];

let server: AppServer;
let phone: HidablePhone;
let app: AppWindow;

const wait = (seconds: number) => new Promise((over) => setTimeout(over, seconds * 1000));

/** What the page's first frame after a return showed, and when. */
interface FirstFrame {
  readonly text: string;
  readonly dark: boolean;
  /** From the return into sight to the frame. */
  readonly afterMs: number;
  /** Since the page was loaded. */
  readonly atMs: number;
}

/** What the spies in the page have seen; they are there before the app. */
interface Seen {
  readonly locks: string[];
  frame: FirstFrame | null;
  clickMs: number;
}

declare global {
  var evenfallSeen: Seen;
}

/** Runs in the page: watches the lock on the screen, the taps, and each first frame after a return. */
function spies(): void {
  const seen: Seen = { locks: [], frame: null, clickMs: 0 };
  globalThis.evenfallSeen = seen;
  const request = WakeLock.prototype.request;
  WakeLock.prototype.request = async function (type) {
    const sentinel = await request.call(this, type);
    seen.locks.push('given');
    sentinel.addEventListener('release', () => seen.locks.push('lost'));
    return sentinel;
  };
  addEventListener(
    'click',
    () => {
      seen.clickMs = performance.now();
    },
    true,
  );
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible') return;
    const from = performance.now();
    // The last to be called before this frame is painted: asked for when all others have been.
    requestAnimationFrame(() => {
      const atMs = performance.now();
      const { body } = document;
      const dark = body.querySelector('.dark-screen:not(.lit)') !== null;
      seen.frame = { text: body.innerText, dark, afterMs: atMs - from, atMs };
    });
  });
}

const seen = () => app.evaluate(() => globalThis.evenfallSeen, null);

async function firstFrame(): Promise<FirstFrame & { readonly sinceTapS: number }> {
  let found: Seen | null = null;
  await until(async () => {
    found = await seen();
    return found.frame !== null;
  }, 'the first frame after the return');
  const { frame: first, clickMs } = found as unknown as Seen;
  if (!first) throw new Error('no frame');
  return { ...first, sinceTapS: (first.atMs - clickMs) / 1000 };
}

async function forgetFrame(): Promise<void> {
  await app.evaluate(() => {
    globalThis.evenfallSeen.frame = null;
  }, null);
}

/** Seconds of a duration in a text, as '0:07'. */
const secondsIn = (text: string, around: RegExp): number => {
  const [, minutes, seconds] = around.exec(text) ?? [];
  return Number(minutes) * 60 + Number(seconds);
};

async function expose(): Promise<void> {
  await untilExpose(app);
  await app.tap('button', /^Start/);
  await seeAsked(app, 'Exposing');
}

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takeHidablePhone();
  app = phone.window;
  await phone.before(spies);
  await app.open(server.address);
  await takeIn(app, backupOf('In a pocket', FRAMES));
  await app.tap('button', 'Outing');
  await app.tap('button', 'Start In a pocket');
  await app.seeThe('heading', 'Set up the rigs');
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
});

describe('a phone in a pocket', () => {
  test('says on each step that the screen is kept on', async () => {
    await setUp(app, [RIG]);
    await app.see(/screen on/);
    expect((await seen()).locks).toEqual(['given']);
  });

  test('hidden past the end and silent: the first frame says that it ended, and by how much it was missed', async () => {
    await app.tap('button', 'More');
    await app.tap('button', 'Silent mode');
    await app.see(/silent/);
    await expose();
    await wait(LEAD_IN_S + 3);
    await phone.hide();
    await wait(12);
    await phone.show();
    const { text, afterMs, sinceTapS } = await firstFrame();
    const endedS = sinceTapS - LEAD_IN_S - 8;
    expect(endedS).toBeGreaterThan(5);
    expect(afterMs).toBeLessThan(50);
    expect(text).toContain('Record as planned');
    expect(Math.abs(secondsIn(text, /Ended (\d+):(\d\d) ago/) - endedS)).toBeLessThan(1);
    // Written first, so a moment later; by the same clock.
    await app.see(/Its end was noticed 0:\d\d late/);
    const missed = secondsIn(await app.read('timer', RIG), /noticed (\d+):(\d\d) late/);
    expect(Math.abs(missed - endedS)).toBeLessThan(1);
    await record(app);
  });

  test('the lock on the screen was lost with the sight of the page, and taken again', async () => {
    await app.see(/screen on/);
    expect((await seen()).locks).toEqual(['given', 'lost', 'given']);
  });

  test('a bulb that ran over in the pocket: over by how much, in the first frame, and missed', async () => {
    await forgetFrame();
    await expose();
    await wait(LEAD_IN_S + 2);
    await phone.hide();
    await wait(22);
    await phone.show();
    const { text, sinceTapS } = await firstFrame();
    const overS = sinceTapS - LEAD_IN_S - 20;
    expect(overS).toBeGreaterThan(3);
    expect(text).toContain('over of 0:20');
    expect(Math.abs(secondsIn(text, /(\d+):(\d\d)\s+over of/) - overS)).toBeLessThan(1.1);
    await app.see(/Its end was noticed 0:\d\d late/);
    await record(app);
  });

  test('stopped whole in mid-exposure: the first frame has the right second, and is lit', async () => {
    await forgetFrame();
    await expose();
    await wait(LEAD_IN_S + 6.8);
    await app.seeThe('button', 'Tap once to light the screen');
    await phone.hide();
    await phone.freeze();
    await wait(4);
    await phone.thaw();
    await phone.show();
    const { text, dark, afterMs, sinceTapS } = await firstFrame();
    const leftS = LEAD_IN_S + 16 - sinceTapS;
    expect(leftS).toBeGreaterThan(0.5);
    expect(afterMs).toBeLessThan(50);
    expect(dark).toBe(false);
    expect(Math.abs(secondsIn(text, /(\d+):(\d\d)\s+left of/) - leftS)).toBeLessThan(1.1);
    await wait(leftS + 0.5);
    await record(app);
  });

  test('a finger on the dark screen only lights it, though it stays down for long, and bounces', async () => {
    await expose();
    await wait(LEAD_IN_S + 6.8);
    const dark = 'Tap once to light the screen';
    await app.seeThe('button', dark);
    // Below lies 'Stopped early'.
    const spot = await app.placeOf('button', 'Stopped early');
    const finger = { x: spot.x + spot.width / 2, y: spot.y + spot.height / 2 };
    await phone.touch(finger, 180);
    await phone.touch(finger, 40);
    await until(async () => (await app.count('button', dark)) === 0, 'the light');
    await seeAsked(app, 'Exposing');
    await wait(1);
    await phone.touch(finger, 40);
    await seeAsked(app, 'Record');
  });
});

describe('a browser that cannot keep the screen on', () => {
  test('says so once, with what to do, and marks each step', async () => {
    const other = await takeHidablePhone();
    try {
      const { window } = other;
      await other.before(() => {
        Reflect.deleteProperty(Navigator.prototype, 'wakeLock');
      });
      await window.open(server.address);
      await takeIn(window, backupOf('Without a lock', FRAMES));
      await window.tap('button', 'Outing');
      await window.tap('button', 'Start Without a lock');
      await window.see('This browser cannot keep the screen on. Set auto-lock to never.');
      await setUp(window, [RIG]);
      await window.see(/screen may go off/);
      expect(await window.read('main', /^/)).not.toContain('Set auto-lock');
    } finally {
      await other.throwAway();
    }
  });
});
