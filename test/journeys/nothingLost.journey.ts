import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { seeAsked, setUp, unhurried } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, NamedFile, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * Two windows that want one outing, a storage that refuses, a database that is not ours to open, and
 * the copies that leave the phone meanwhile. Seen to fail: a window that gives up before its last tap
 * is written, a thief that does not read again, a file made of the disk alone, an empty dump, and a
 * copy that is not written at the end of a set.
 */

let server: AppServer;
let phone: Phone;

beforeEach(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
});

afterEach(async () => {
  await phone.throwAway();
  await server.stop();
});

const RIGS = ['A Alder 44', 'B Birch 36'];

async function begin(window: AppWindow): Promise<void> {
  await window.open(server.address);
  await window.tap('button', 'Try the practice outing');
  await window.tap('button', 'Outing');
  await window.tap('button', 'Start An evening at the old ferry slip');
}

/** The journal as it lies in the database, by an eye of the test's own. */
const stored = (window: AppWindow) =>
  window.evaluate(
    () =>
      new Promise<{ seq: number; kind: string; id: string }[]>((done, fail) => {
        const opening = indexedDB.open('evenfall');
        opening.onerror = () => fail(opening.error ?? new Error('no database'));
        opening.onsuccess = () => {
          const all = opening.result.transaction('events').objectStore('events').getAll();
          all.onsuccess = () => {
            opening.result.close();
            done(all.result as { seq: number; kind: string; id: string }[]);
          };
        };
      }),
    undefined,
  );

/** One writer, each number once, no gap: the journal has not forked. */
async function neverForked(window: AppWindow): Promise<readonly string[]> {
  const events = await stored(window);
  expect(events.map(({ seq }) => seq)).toEqual(events.map((_, at) => at + 1));
  expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  return events.map(({ kind }) => kind);
}

const textOf = ({ bytes }: NamedFile): string => new TextDecoder().decode(bytes);

test('a second window watches, takes the outing over, and gives it back', async () => {
  const first = phone.window;
  await begin(first);
  await setUp(first, RIGS);
  const second = await phone.openSecondWindow();
  await second.open(server.address);
  await second.see('This outing runs in another window. Here it can only be watched.');

  // It sees each tap of the other one as it is written.
  await first.tap('button', 'A Alder 44 is on the tripod');
  await seeAsked(second, 'Dial');
  await second.tap('button', 'Dials are set');
  await second.see('Another window runs this outing. Take it over first.');

  await second.tap('button', 'Take over here');
  await second.see('This window has the outing now. The other one only watches.');
  await first.see('Another window has taken this outing over. Here it can only be watched.');
  await unhurried();
  await second.tap('button', 'Dials are set');
  await seeAsked(second, 'Expose');
  await seeAsked(first, 'Expose');
  await first.tap('button', /^Start 64/);
  await first.see('Another window runs this outing. Take it over first.');

  await first.tap('button', 'Take over here');
  await first.see('This window has the outing now');
  await unhurried();
  await first.tap('button', /^Start 64/);
  await seeAsked(first, 'Exposing');
  await seeAsked(second, 'Exposing');
  expect((await neverForked(first)).slice(-3)).toEqual(['mounted', 'dialled', 'exposure-started']);
  expect([...first.problems, ...second.problems]).toEqual([]);
});

test('from a window that hangs the outing is taken all the same, and both say so', async () => {
  const first = phone.window;
  await begin(first);
  await setUp(first, RIGS);
  const second = await phone.openSecondWindow();
  await second.open(server.address);
  const hangs = first.evaluate(() => {
    const until = Date.now() + 9000;
    while (Date.now() < until);
  }, undefined);
  await second.tap('button', 'Take over here');
  await second.see('The other window did not answer, so the outing was taken from it.');
  await second.tap('button', 'A Alder 44 is on the tripod');
  await seeAsked(second, 'Dial');
  await hangs;
  await first.see('Another window has taken this outing over. Here it can only be watched.');
  await seeAsked(first, 'Dial');
  await first.tap('button', 'Dials are set');
  await first.see('Another window runs this outing. Take it over first.');
  expect((await neverForked(second)).at(-1)).toBe('mounted');
});

test('a window that was killed leaves the outing free to be taken', async () => {
  const first = phone.window;
  await begin(first);
  await setUp(first, RIGS);
  const second = await phone.openSecondWindow();
  await second.open(server.address);
  await second.see('Here it can only be watched.');
  await first.close();
  await second.tap('button', 'Take over here');
  await second.see('This window has the outing now');
  await second.tap('button', 'A Alder 44 is on the tripod');
  await seeAsked(second, 'Dial');
  await neverForked(second);
});

test('an outing that begins in one window is not begun beside it in another', async () => {
  const first = phone.window;
  await first.open(server.address);
  await first.tap('button', 'Try the practice outing');
  // Only now is its plan on the disk, where the other window can find it.
  await first.seeThe('button', /^An evening at the old ferry slip/);
  const second = await phone.openSecondWindow();
  await second.open(server.address);
  await second.tap('button', 'Outing');
  await second.seeThe('button', 'Start An evening at the old ferry slip');
  await first.tap('button', 'Outing');
  await first.tap('button', 'Start An evening at the old ferry slip');
  await second.see('This outing runs in another window. Here it can only be watched.');
  expect(await neverForked(first)).toEqual(['outing-started']);
});

/** What a browser does to a page whose storage it has taken away. */
const takeStorageAway = (window: AppWindow): Promise<void> =>
  window.evaluate(() => {
    IDBDatabase.prototype.transaction = () => {
      throw new DOMException('the test closed it', 'InvalidStateError');
    };
    IDBFactory.prototype.open = () => {
      throw new DOMException('the test keeps it shut', 'UnknownError');
    };
  }, undefined);

const fillDisk = (window: AppWindow): Promise<void> =>
  window.evaluate(() => {
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('the test filled the disk', 'QuotaExceededError');
    };
  }, undefined);

test.each([
  ['is full', fillDisk, /^Not saved yet: the phone is full\./],
  ['is taken away by the browser', takeStorageAway, /^Not saved yet: the browser closed its/],
] as const)(
  'a storage that %s: the outing goes on, and its journal leaves at once with what is in memory',
  async (_, breakIt, sentence) => {
    const { window } = phone;
    await begin(window);
    await setUp(window, RIGS);
    await breakIt(window);
    await window.tap('button', 'A Alder 44 is on the tripod');
    await window.see(sentence);
    await window.see(/1 entry is in memory only\./);
    await window.tap('button', 'Dials are set');
    await seeAsked(window, 'Expose');
    await window.see(/2 entries are in memory only\./);
    await window.tap('button', 'Get the journal off as a file');
    const file = await window.download(() => window.tap('button', 'Save it'));
    const { events } = JSON.parse(textOf(file)) as { events: { kind: string }[] };
    expect(events.map(({ kind }) => kind).slice(-2)).toEqual(['mounted', 'dialled']);
    await window.tap('button', 'Close');
    // The warning goes along to the other places.
    await window.tap('button', 'More');
    await window.tap('button', 'Plan');
    await window.see(sentence);
    await window.seeThe('button', 'Get the journal off as a file');
  },
);

test('a storage of a newer version is left as it is, and comes out as a file', async () => {
  const { window } = phone;
  await begin(window);
  await setUp(window, RIGS);
  await window.evaluate(
    () =>
      new Promise<void>((done) => {
        // The app makes way at once; this stands in for a newer version of it.
        const opening = indexedDB.open('evenfall', 999);
        opening.onupgradeneeded = () => opening.result.createObjectStore('tomorrow');
        opening.onsuccess = () => {
          opening.result.close();
          done();
        };
      }),
    undefined,
  );
  const before = await stored(window);
  await window.reload();
  await window.see(/^The storage was written by a newer version of the app/);
  await window.seeThe('link', 'Open the newest version');
  await window.tap('button', 'Get what is stored as a file');
  const file = await window.download(() => window.tap('button', 'Save it'));
  const dump = JSON.parse(textOf(file)) as {
    version: number;
    stores: { events: unknown[]; tomorrow: unknown[]; plans: { deleted: boolean }[] };
  };
  expect(dump.version).toBe(999);
  expect(dump.stores.events).toEqual(before);
  expect(dump.stores.plans.length).toBeGreaterThan(0);
  expect(await stored(window)).toEqual(before);
  expect(
    await window.evaluate(async () => (await indexedDB.databases())[0]?.version, undefined),
  ).toBe(999);
});
