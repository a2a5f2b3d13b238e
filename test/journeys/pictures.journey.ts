import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { journalFile } from '../../src/exchange/journalFile.ts';
import { journalOf } from '../../src/exchange/journalOf.ts';
import { exactSettings } from '../../src/gear/positions.ts';
import { assemble } from '../../src/gear/rig.ts';
import { openedAt } from '../../src/outing/exposure.ts';
import type { MadeFrame } from '../../src/outing/state.ts';
import { must } from '../../src/science/refusal.ts';
import { A, B, dialled, Evening, frame, gear, planOf } from '../evenings/evening.ts';
import { axeFaults } from '../look/axe.ts';
import { cutOff, strongestGreenOrBlue, tooSmall } from '../look/measure.ts';
import { jpeg } from '../pictures/jpeg.ts';
import { takeIn } from './acts/backups.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, NamedFile, Phone, Size } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * An evening's frames find their pictures: files with known Exif, written by a general library, one
 * body's clock an hour and some seconds ahead, one file too many, one frame without a file, and a
 * body that ran 64 s where 60 s were logged.
 */

const SIZES: readonly Size[] = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
];

function evening(): Evening {
  const frames = [
    frame('base', A, dialled('6.3', '64', '100')),
    frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
    frame('high', B, dialled('8', '15', '12800'), { visit: 2 }),
    frame('high', A, dialled('8', '16', '12800'), { visit: 3 }),
    frame('last', A, dialled('8', '4', '400'), { visit: 3 }),
    frame('last', B, dialled('8', '4', '400'), { visit: 4 }),
  ];
  const plan = { ...planOf(frames), name: 'The heath above the reservoir', invented: false };
  const made = new Evening(frames, plan);
  made.tap({ tap: 'clock-framed', rig: A }).pass(20).tap({ tap: 'clock-framed', rig: B });
  return made.setUp().shootAll().tap({ tap: 'end' });
}

const AHEAD_MS = { [A]: 3_607_000, [B]: -12_000 };

const exifTime = (ms: number): string =>
  new Date(ms).toISOString().slice(0, 19).replaceAll('-', ':').replace('T', ' ');

/** The frame as its body wrote it. */
function fileOf(made: MadeFrame, number: number, seconds?: number): NamedFile {
  const { rig, settings } = made.planned;
  const parts = assemble(gear, rig);
  if (!parts) throw new Error(`no rig ${rig}`);
  const { n, t, s } = must(exactSettings(parts, settings));
  const shown = openedAt(made).wallMs + (AHEAD_MS[rig as typeof A] ?? 0);
  return {
    name: `${parts.body.files.prefix}${String(number).padStart(4, '0')}.JPG`,
    bytes: jpeg({
      model: parts.body.name,
      serial: `${parts.rig.letter}-1`,
      time: exifTime(shown),
      exposure: [Math.round((seconds ?? t) * 1000), 1000],
      fNumber: [Math.round(n * 10), 10],
      iso: Math.round(s),
      focal: [45, 1],
      pixels: [8272, 6200],
    }),
  };
}

function files(of: Evening): readonly NamedFile[] {
  const made = of.state().made;
  const [first, second, third, fourth, fifth] = made;
  if (!first || !second || !third || !fourth || !fifth) throw new Error('a frame is missing');
  const extra = fileOf(fourth, 13);
  return [
    fileOf(fourth, 12),
    // The body's 60 s ran 64 s, and its file says so.
    fileOf(second, 201, 64),
    fileOf(first, 11),
    fileOf(third, 202),
    fileOf(fifth, 14),
    // Of another evening altogether.
    {
      name: 'ALD_9001.JPG',
      bytes: jpeg({
        model: 'Alder 44',
        serial: 'A-1',
        time: '2027:01:03 12:00:00',
        exposure: [1, 250],
        iso: 100,
        fNumber: [8, 1],
      }),
    },
    { name: 'notes.txt', bytes: new TextEncoder().encode('not a picture') },
    extra,
  ];
}

let server: AppServer;
let phone: Phone;
const made = evening();

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
});
afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

/** Measures a screen as it stands, in both themes and on both phones. */
async function look(app: AppWindow, screen: string): Promise<void> {
  for (const size of SIZES) {
    await app.resize(size);
    expect(await cutOff(app), screen).toEqual([]);
    expect(await tooSmall(app, 48), screen).toEqual([]);
  }
  await app.resize(SIZES[0] as Size);
  expect(await axeFaults(app), `${screen} by day`).toEqual([]);
  await app.tap('switch', 'Night');
  expect(await strongestGreenOrBlue(app), screen).toBeLessThanOrEqual(8);
  expect(await axeFaults(app), `${screen} by night`).toEqual([]);
  await app.tap('switch', 'Night');
}

test('frames find their pictures, and nothing leaves the device', async () => {
  const app = phone.window;
  await app.prefer({ scheme: 'light' });
  await app.open(server.address);
  const stamp = { app: 'journeys', written: '2027-02-12T22:00:00.000Z' };
  const journal = journalFile.write(journalOf(made.outing, made.events), stamp);
  await takeIn(app, new TextEncoder().encode(journal));
  await goTo(app, 'Gear');
  await app.see('Ready for offline.');
  await app.offline(true);
  await goTo(app, 'Log');
  if ((await app.count('button', /^The heath/)) === 0) await app.tap('button', 'Log');
  await app.tap('button', /^The heath/);
  /** What the ledger says of the first set. */
  const differsBy = async (stops: string) => {
    await app.tap('button', /^Ledger/);
    await app.seeThe('button', new RegExp(`Differs by ${stops}`));
    await app.tap('button', 'Back');
  };
  // f/6.3 64 s against f/8 60 s: 0.67 + 0.09 stop.
  await differsBy('0\\.76');

  await app.tap('button', /^Pictures/);
  await app.see(/nothing leaves this device/);
  await app.upload('Choose pictures', ...files(made));
  await app.see('5 of 6 frames with a file');
  await app.see('1 file without Exif');
  await app.see(/1:00:07 ahead of this phone.*from the clock frame|1:00:07 ahead of this phone/);
  await look(app, 'pictures');
  // Two files that are alike: the body wrote one that was not logged, or the log tells of the other.
  await app.seeThe('heading', 'Which file is this frame?');
  await app.tap('button', /^ALD_0012/);
  await app.tap('button', 'Accept 5 files');
  await app.see('Accepted. Undo takes it back.');

  await app.tap('button', /^Log beside files/);
  await app.see(/logged 60.s, file 64.s/);
  await look(app, 'log beside files');
  await app.tap('button', /^Take 64/);
  await app.see('Taken. The ledger counts with it now.');
  await app.tap('button', 'Back');
  await app.tap('button', 'Back');
  // With 64 s on both sides only the apertures are left.
  await differsBy('0\\.67');

  await app.tap('button', /^Export/);
  await app.tap('button', /^Report/);
  await app.seeThe('heading', 'Sources');
  const paper = new Uint8Array(await app.printed());
  const { text } = await extractText(await getDocumentProxy(paper));
  // Without the values of the files it would be 0.76, as above.
  const page = text.find((one) => one.startsWith('1. Set base'));
  for (const line of ['ALD_0011.JPG', 'BIR0201.JPG', 'Sum −0.67', 'Even-up, predicted +0.67']) {
    expect(page).toContain(line);
  }
  expect(text.filter((one) => /^\d\. Set/.test(one))).toHaveLength(3);
  expect(text.at(-1)).toContain('Cautions');
  await app.tap('button', 'Back');
  await app.tap('button', 'Back');
  await app.tap('button', /^Log beside files/);
  await app.tap('button', 'Undo the taken values');
  await app.see(/logged 60.s, file 64.s/);
  await app.tap('button', 'Back');
  await app.tap('button', /^Pictures/);
  await app.tap('button', 'Undo the accepted files');
  await app.seeThe('button', 'Accept 4 files');
  expect(app.problems).toEqual([]);
}, 120_000);

test('a reading can be cancelled, and what was read by then is matched', async () => {
  const app = phone.window;
  const many = Array.from({ length: 400 }, (_, index) => ({
    name: `XYZ_${index}.JPG`,
    bytes: jpeg({ model: 'Other', time: '2026:01:01 10:00:00', exposure: [1, 100], iso: 100 }),
  }));
  await app.slowDown(6);
  await app.upload('Choose pictures', ...files(made), ...many);
  await app.tap('button', 'Cancel');
  await app.see(/^Cancelled: only the first \d+ are matched\.$/);
  await app.slowDown(1);
  expect(app.problems).toEqual([]);
}, 60_000);
