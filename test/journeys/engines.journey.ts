import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { A, B, dialled, frame } from '../evenings/evening.ts';
import { backupOf, readBack, takeIn } from './acts/backups.ts';
import { logTable, toExport } from './acts/log.ts';
import { record, seeAsked, setUp, untilExpose, wake } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import { takeFirefox } from './driver/firefox.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { takeWebKit } from './driver/webkit.ts';
import { goTo } from './places.ts';

/*
 * The main line in every engine that a phone has, by the same acts, in real time: a file is taken in,
 * its plan is walked without a network, through a reload in mid-exposure, and the log comes out.
 */

const EXPOSURE_S = 8;

/** A list of one short set. */
const FRAMES = [
  frame('short', A, dialled('8', String(EXPOSURE_S), '400')),
  frame('short', B, dialled('8', String(EXPOSURE_S), '400'), { visit: 2 }),
];

const RIGS = ['A Alder 44', 'B Birch 36'] as const;

const wait = (seconds: number) => new Promise((over) => setTimeout(over, seconds * 1000));

/** A frame in real time; a screen that fell dark meanwhile is lit. */
async function expose(app: AppWindow): Promise<void> {
  await untilExpose(app);
  await app.tap('button', /^Start/);
  await seeAsked(app, 'Exposing');
}

async function recordIt(app: AppWindow): Promise<void> {
  await wake(app);
  await seeAsked(app, 'Record');
  await record(app);
}

const everywhere = [['Chromium', () => takePhone({ touch: false })]] as const;
/** From Debian's packages; `npm test` brings them, and says so where there are none. */
const onLinux = [
  ['Firefox', () => takeFirefox()],
  ['WebKit', () => takeWebKit()],
] as const;

describe.each(process.platform === 'linux' ? [...everywhere, ...onLinux] : everywhere)(
  'the main line in %s',
  (_engine, take) => {
    let server: AppServer;
    let phone: Phone;

    beforeAll(async () => {
      server = await startServer(inject('builtApp'));
      phone = await take();
    });

    afterAll(async () => {
      await phone?.throwAway();
      await server?.stop();
    });

    test('takes a backup in and gets ready for offline', async () => {
      const { window } = phone;
      await window.open(server.address);
      await takeIn(window, backupOf('Two short frames', FRAMES));
      await goTo(window, 'Gear');
      await window.see('Ready for offline.');
      await server.stop();
    });

    test('walks a frame through a reload in mid-exposure, right to the second', async () => {
      const { window } = phone;
      await window.tap('button', 'Outing');
      await window.tap('button', 'Start Two short frames');
      await setUp(window, RIGS);
      await expose(window);
      const began = Date.now();
      await wait(3);
      await window.reload();
      await seeAsked(window, 'Exposing');
      const left = /^0:(\d\d)/.exec(await window.read('timer', RIGS[0]));
      // 2 s of self-timer before the shutter opens.
      const due = EXPOSURE_S + 2 - (Date.now() - began) / 1000;
      expect(Math.abs(Number(left?.[1]) - due)).toBeLessThan(1.6);
      await wait(due + 0.5);
      await recordIt(window);
    });

    test('goes on after the browser was killed, still without a network', async () => {
      await phone.kill();
      await phone.restart();
      const { window } = phone;
      await window.open(server.address);
      await seeAsked(window, 'Mount');
      await expose(window);
      await wait(EXPOSURE_S + 2.5);
      await recordIt(window);
      await seeAsked(window, 'List done');
      await window.tap('button', 'End the outing');
      await seeAsked(window, 'Ended');
      expect(window.problems).toEqual([]);
    });

    test('gives the log out as a table and as a journal, and knows the journal again', async () => {
      const { window } = phone;
      await window.tap('button', 'Open the log');
      const rows = await logTable(window);
      expect(rows.map((row) => [row['Rig'], row['ExposureTime'], row['Counts']])).toEqual([
        ['A', String(EXPOSURE_S), 'true'],
        ['B', String(EXPOSURE_S), 'true'],
      ]);
      await toExport(window);
      await window.tap('button', 'Make the journal ready');
      const file = await window.download(() => window.tap('button', 'Save it'));
      const { events } = JSON.parse(new TextDecoder().decode(file.bytes)) as {
        events: { kind: string }[];
      };
      expect(events.filter(({ kind }) => kind === 'recorded')).toHaveLength(2);
      await window.tap('button', 'Close');
      await window.tap('button', 'Log');
      await window.tap('button', 'Log');
      await readBack(window, 'journal.json', file.bytes);
      await window.see(/^All of it is here already/);
      expect(window.problems).toEqual([]);
    });
  },
);
