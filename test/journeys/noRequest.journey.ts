import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { filesBelow } from '../../.ci/content-hash.mjs';
import { A, B, dialled, frame } from '../evenings/evening.ts';
import { backupOf, readBack, takeIn } from './acts/backups.ts';
import { logTable } from './acts/log.ts';
import { seeAsked, setUp, shoot, unhurried } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, HeardPhone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * Nothing leaves the device. The browser tells of every request of its pages and workers, and the
 * app's host notes each address that reaches it. After the start only the worker itself may be asked
 * for there, by which a browser looks for a newer one.
 *
 * Seen to fail on an app with a picture from elsewhere, a policy loosened for it and
 * 'unsafe-inline', together.
 */

const RIGS = ['A Alder 44', 'B Birch 36'];
/** What a file from elsewhere may try to make a page do. */
const BAIT = '=1<img src="http://elsewhere.test/pixel.png">';

let server: AppServer;
let phone: HeardPhone;
let app: AppWindow;
/** Addresses asked of the app's host before it was ready for offline. */
let atStart = 0;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
  app = phone.window;
  await app.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
});

/** What was asked for that is no part of the app: another host, a file that is not its own, a query. */
function elsewhere(): readonly string[] {
  const own = new Set(filesBelow(inject('builtApp')));
  return phone.requests.filter((address) => {
    // Made in the page out of what is there already.
    if (address.startsWith(`blob:${new URL(server.address).origin}/`)) return false;
    if (!address.startsWith(server.address)) return true;
    const file = address.slice(server.address.length).replace(/#.*$/, '');
    return file !== '' && !own.has(file);
  });
}

test('the page forbids by its own policy what is not its own, and has no script in it', async () => {
  const page = await readFile(join(inject('builtApp'), 'index.html'), 'utf8');
  const policy = /http-equiv="Content-Security-Policy"\s+content="([^"]*)"/.exec(page)?.[1];
  const rules = Object.fromEntries(
    (policy ?? '').split(';').map((rule) => {
      const [name = '', ...sources] = rule.trim().split(/\s+/);
      return [name, sources];
    }),
  );
  expect(rules).toMatchObject({
    'default-src': ["'none'"],
    'script-src': ["'self'"],
    'connect-src': ["'self'"],
    'form-action': ["'none'"],
    'base-uri': ["'none'"],
  });
  const sources = Object.values(rules).flat();
  expect(sources.filter((source) => /unsafe|\*|http|^data:$/.test(source))).toEqual(['data:']);
  expect(rules['img-src']).toContain('data:');
  // It stands before the first thing that it is to hold.
  expect(page.indexOf('Content-Security-Policy')).toBeLessThan(page.search(/<(script|style|link)/));
  const scripts = [...page.matchAll(/<script([^>]*)>([\s\S]*?)<\/script>/g)];
  expect(scripts).toHaveLength(1);
  for (const [, attributes = '', content] of scripts) {
    expect(attributes).toMatch(/\ssrc="\.\//);
    expect(content).toBe('');
  }
  expect(page).not.toMatch(/\son\w+=|javascript:/i);
});

describe('an evening with everything that goes in and out', () => {
  test('starts from its own files alone', async () => {
    await app.open(server.address);
    const frames = [A, B].map((rig) => frame('one', rig, dialled('8', '8', '800')));
    await takeIn(app, backupOf(BAIT, frames));
    await goTo(app, 'Gear');
    await app.see('Ready for offline.');
    expect(elsewhere()).toEqual([]);
    const path = new URL(server.address).pathname;
    expect(server.asked.filter((line) => !line.startsWith(`GET ${path}`))).toEqual([]);
    atStart = server.asked.length;
    expect(atStart).toBeGreaterThan(10);
  });

  test('goes through all five places', async () => {
    await app.tap('button', /^Alder 44/);
    await app.tap('button', 'Back');
    await goTo(app, 'Light');
    await app.tap('button', 'Add a site');
    await app.type('Latitude and longitude', '54.90 N 3.60 W');
    await app.press('Enter');
    await goTo(app, 'Plan');
    await app.see(BAIT);
    await app.tap('button', /elsewhere/);
    await app.tap('button', /^A B/);
    await app.tap('button', 'Back');
    await goTo(app, 'Log');
    await app.seeThe('heading', 'Backup and restore');
  });

  test('walks an outing', async () => {
    await goTo(app, 'Outing');
    await app.tap('button', /^Start /);
    await setUp(app, RIGS);
    await shoot(app, 12);
    await app.reload();
    await shoot(app, 12);
    await seeAsked(app, 'List done');
    await app.tap('button', 'End the outing');
    await seeAsked(app, 'Ended');
  });

  test('gives its files out', async () => {
    await app.tap('button', 'Open the log');
    await app.tap('button', /^Ledger/);
    await app.see(/^Differs by|^No pair/);
    await app.tap('button', 'Back');
    expect(await logTable(app)).toHaveLength(2);
    await app.tap('button', 'Make the journal ready');
    const journal = await app.download(() => app.tap('button', 'Save it'));
    await app.tap('button', 'Close');
    await goTo(app, 'Gear');
    await app.tap('button', 'Gear to a file');
    const gear = await app.download(() => app.tap('button', 'Save it'));
    await app.tap('button', 'Close');
    await app.upload('Gear from a file', gear);
    await app.see('Nothing new in this file.');
    await goTo(app, 'Log');
    await unhurried();
    await readBack(app, 'journal.json', journal.bytes);
    await app.see(/^Nothing new/);
    await app.upload('Choose a file', { name: 'half.json', bytes: gear.bytes.slice(0, 99) });
    await app.see(/It is damaged/);
    await app.tap('button', 'Make the backup ready');
    const backup = await app.download(() => app.tap('button', 'Save it'));
    await app.tap('button', 'Close');
    await app.upload('Choose a file', backup);
    await app.see(/Nothing new/);
  });

  test('and asked nobody for anything', () => {
    const path = new URL(server.address).pathname;
    const since = server.asked.slice(atStart);
    expect(since.filter((line) => line !== `GET ${path}sw.js`)).toEqual([]);
    expect(elsewhere()).toEqual([]);
    expect(app.problems).toEqual([]);
  });
});

describe('the trap itself', () => {
  test('hears a request that a page sends elsewhere', async () => {
    await app.evaluate(() => {
      open('http://localhost:9/seen', '_blank', 'noopener');
    }, undefined);
    await expect.poll(elsewhere).toEqual(['http://localhost:9/seen']);
  });

  test('hears those of the worker behind the page', () => {
    // No page ever asks for the largest icon: only the worker does, to have all files.
    expect(phone.requests).toContain(`${server.address}icons/evenfall-maskable-512.png`);
  });

  test('hears one to the app’s own host that is no part of the app', async () => {
    await app.evaluate(() => fetch('./no-part').then(() => undefined), undefined);
    expect(server.asked.at(-1)).toMatch(/no-part$/);
    expect(elsewhere()).toContain(`${server.address}no-part`);
  });

  test('and what the policy stops on its way is told as a problem', async () => {
    const before = app.problems.length;
    const outcome = await app.evaluate(
      () =>
        fetch('http://elsewhere.test/').then(
          () => 'went',
          () => 'stopped',
        ),
      undefined,
    );
    expect(outcome).toBe('stopped');
    await expect.poll(() => app.problems.slice(before).join()).toMatch(/Content Security Policy/);
    expect(
      await app.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'globalThis.ranInline = true';
        document.body.append(script);
        return 'ranInline' in globalThis;
      }, undefined),
    ).toBe(false);
  });
});
