import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Phone } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { locksCases } from './locks.contract.ts';
import type { Contracts } from './page/contracts.page.ts';
import { storeCases } from './store.contract.ts';

/*
 * The contracts in a real browser, and what only a real browser can show: a kill in
 * the middle of a write, another process, a true audio clock.
 */

let folder: string;
let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'evenfall-contracts-'));
  await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      outDir: folder,
      emptyOutDir: true,
      lib: {
        entry: join(import.meta.dirname, 'page/contracts.page.ts'),
        formats: ['es'],
        fileName: () => 'page.js',
      },
    },
  });
  await writeFile(
    join(folder, 'index.html'),
    '<!doctype html><html lang="en"><title>Contracts</title><body><script type="module" src="page.js"></script>',
  );
  server = await startServer(folder);
  phone = await takePhone();
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
  await rm(folder, { recursive: true, force: true });
});

async function opened(window: AppWindow): Promise<AppWindow> {
  await window.open(server.address);
  await window.seeThe('button', 'Tap');
  return window;
}

/** Calls one of the page's acts. */
const ask = <Act extends keyof Contracts>(
  window: AppWindow,
  act: Act,
  ...given: Contracts[Act] extends (...given: infer G) => unknown ? G : never
): Promise<Contracts[Act] extends (...given: never[]) => infer R ? Awaited<R> : never> =>
  window.evaluate(
    ([name, args]) =>
      (globalThis.contracts[name as Act] as (...all: unknown[]) => never)(...(args as unknown[])),
    [act, given] as const,
  );

describe('in a real browser', () => {
  beforeEach(async () => {
    await opened(phone.window);
  });

  test('the page knows all cases', async () => {
    const names = await phone.window.evaluate(
      () => [globalThis.contracts.storeNames, globalThis.contracts.locksNames],
      null,
    );
    expect(names).toEqual([storeCases, locksCases].map((cases) => cases.map(({ name }) => name)));
  });

  test.each(storeCases.map(({ name }, at) => [name, at] as const))('%s', async (_, at) => {
    expect(await ask(phone.window, 'runStore', at)).toBe('kept');
  });

  test.each(locksCases.map(({ name }, at) => [name, at] as const))('%s', async (_, at) => {
    expect(await ask(phone.window, 'runLocks', at)).toBe('kept');
  });

  test('tones sound from the very sample they are due, as they were computed', async () => {
    for (const [kind, atS] of [
      ['lead-in', 0.5],
      ['near-end', 1],
      ['end', 1.25],
    ] as const) {
      const { first, loudest, off } = await ask(phone.window, 'render', kind, atS);
      // The first sample of a tone is zero by design.
      expect(first).toBe(atS * 48_000 + 1);
      expect(loudest).toBeGreaterThan(0.8);
      expect(off).toBeLessThan(1e-6);
    }
  });

  test('a tone is due by the steady clock and comes within 50 ms of it', async () => {
    const state = () => phone.window.evaluate(() => globalThis.contracts.sound.state, null);
    expect(await state()).toBe('needs-tap');
    await phone.window.tap('button', 'Tap');
    await expect.poll(state).toBe('ready');
    // The output's own time stamps settle during the first second.
    await new Promise((done) => setTimeout(done, 1000));
    const offMs = await ask(phone.window, 'playIn', 1500);
    expect(offMs).not.toBeNull();
    expect(Math.abs(offMs ?? Number.NaN)).toBeLessThan(50);
  });

  test('a download ends up as a file with its name and every byte', async () => {
    const file = await phone.window.download(() => phone.window.tap('button', 'Save'));
    expect(file.name).toBe('evening.json');
    expect(new TextDecoder().decode(file.bytes)).toBe('{"name":"Größe"}');
  });

  test('whether storage is kept is asked, answered and told', async () => {
    const told = () =>
      phone.window.evaluate(() => globalThis.contracts.persistence.persisted(), null);
    expect(await told()).toBe('may-be-cleared');
    await phone.allow('persistent-storage');
    expect(
      await phone.window.evaluate(() => globalThis.contracts.persistence.askPersist(), null),
    ).toBe('kept');
    expect(await told()).toBe('kept');
    const space = await phone.window.evaluate(() => globalThis.contracts.persistence.space(), null);
    expect(space?.allowedBytes).toBeGreaterThan(space?.usedBytes ?? Number.POSITIVE_INFINITY);
  });
});

describe('the battery dies while the journal is written', () => {
  test('every acknowledged tap is there once, in order, without a gap', async () => {
    await opened(phone.window);
    await phone.window.evaluate(() => {
      indexedDB.deleteDatabase('evenfall');
    }, null);
    let expected = 0;
    for (let round = 1; round <= 4; round += 1) {
      await opened(phone.window);
      const stored = await ask(phone.window, 'start');
      expect(stored).toEqual(stored.map((_, i) => i + 1));
      expect(stored.length).toBeGreaterThanOrEqual(expected);
      await phone.window.evaluate((from) => {
        void globalThis.contracts.appendOn(from);
      }, stored.length + 1);
      // No two rounds are cut at the same place.
      await new Promise((done) => setTimeout(done, 200 + 170 * round));
      expected = await ask(phone.window, 'acknowledged');
      expect(expected).toBeGreaterThan(stored.length);
      await phone.kill();
      await phone.restart();
    }
    await opened(phone.window);
    expect((await ask(phone.window, 'start')).length).toBeGreaterThanOrEqual(expected);
  });
});

describe('two windows', () => {
  test('one outing has one window, and the other can take over when that is closed', async () => {
    await opened(phone.window);
    const second = await opened(await phone.openSecondWindow());
    const claim = (window: AppWindow) =>
      window.evaluate(() => globalThis.contracts.locks.claim('outing-1'), null);
    expect(await claim(second)).toBe('owner');
    expect(await claim(phone.window)).toBe('elsewhere');
    // It is busy with a write, else it would answer at once that it keeps the outing.
    await second.evaluate(() => {
      globalThis.contracts.locks.onAsked(() => new Promise(() => undefined));
    }, null);
    const taking = phone.window.evaluate(() => globalThis.contracts.locks.ask('outing-1'), null);
    await second.close();
    expect(await taking).toBe('owner');
  });

  test('an older window makes way for a newer database at once, says so and writes no more', async () => {
    const own = await takePhone();
    try {
      await opened(own.window);
      await ask(own.window, 'start');
      expect(await ask(own.window, 'append', 1)).toBe('stored');
      const second = await opened(await own.openSecondWindow());
      expect(await ask(second, 'upgrade')).toBe('opened');
      expect(await ask(own.window, 'closedBy')).toEqual(['newer']);
      expect(await ask(own.window, 'append', 2)).toBe('newer');
    } finally {
      await own.throwAway();
    }
  });
});
