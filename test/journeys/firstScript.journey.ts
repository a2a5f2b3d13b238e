import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { toExport } from './acts/log.ts';
import { asked, seeAsked, setUp, shoot } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * An outing from a kept plan to its files with the first script alone: every part that loads later is
 * gone from the phone, and there is no network.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
  app = phone.window;
  await app.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
  await app.open(server.address);
  await app.tap('button', 'Try the practice outing');
  await app.tap('button', 'Gear');
  await app.see('Ready for offline.');
  await app.tap('button', 'Outing');
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

/** Throws every script and style out of the offline store that the page itself does not name. */
const throwLaterPartsAway = (): Promise<number> =>
  app.evaluate(async () => {
    const first = [...document.querySelectorAll<HTMLScriptElement>('script[src]')].map(
      ({ src }) => src,
    );
    const page = await (await fetch(location.pathname)).text();
    const named = (path: string) => page.includes(path.slice(path.lastIndexOf('/') + 1));
    if (first.length !== 1) throw new Error('the page has other scripts than its first one');
    let gone = 0;
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        const { pathname } = new URL(request.url);
        if (/\.(js|css)$/.test(pathname) && !named(pathname) && (await cache.delete(request))) {
          gone += 1;
        }
      }
    }
    return gone;
  }, undefined);

test('without the later parts the app starts and says so where one is asked for', async () => {
  expect(await throwLaterPartsAway()).toBeGreaterThan(8);
  await server.stop();
  await app.reload();
  await app.seeThe('button', 'Start An evening at the old ferry slip');
  await app.tap('button', 'Gear');
  await app.see(/^This part of the app is not on the device/);
  await app.tap('button', 'Outing');
});

test('an outing starts from its plan, is walked, and takes a reading', async () => {
  await app.tap('button', 'Start An evening at the old ferry slip');
  await setUp(app, ['A Alder 44', 'B Birch 36']);
  await shoot(app, 120);
  await app.tap('button', 'More');
  await app.tap('button', 'Meter reading');
  await app.tap('button', 'Log the reading');
  await shoot(app, 120);
  expect(await asked(app)).not.toBe('Record');
  await app.tap('button', 'More');
  await app.tap('button', 'End the outing');
  await app.tap('button', /^End/);
  await seeAsked(app, 'Ended');
});

test('its log is read, leaves the phone as a journal, and says that the table is for later', async () => {
  await app.tap('button', 'Open the log');
  await app.seeThe('heading', 'Frames');
  await toExport(app);
  await app.tap('button', 'Make the table ready');
  await app.see(/^This part of the app is not on the device/);
  await app.tap('button', 'Make the journal ready');
  const file = await app.download(() => app.tap('button', 'Save it'));
  const journal = JSON.parse(new TextDecoder().decode(file.bytes)) as {
    format: string;
    events: { kind: string }[];
    frames: unknown[];
  };
  expect(journal.format).toBe('evenfall-journal');
  expect(journal.events.filter(({ kind }) => kind === 'recorded')).toHaveLength(2);
  expect(journal.events.filter(({ kind }) => kind === 'reading-taken')).toHaveLength(1);
  // What is worked out from them is for other programs, and comes with a later part.
  expect(journal.frames).toEqual([]);
});
