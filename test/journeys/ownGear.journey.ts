import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import {
  asked,
  record,
  seeAsked,
  setUp,
  shoot,
  unhurried,
  until,
  untilExpose,
  wait,
  wake,
} from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * The whole line on gear and a shot list that nobody prepared: typed in, planned,
 * walked with one tripod, and walked again with both rigs side by side. Each test
 * goes on where the one before it stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
  app = phone.window;
  await app.clock.start(new Date(Date.UTC(2027, 9, 3, 17, 0)));
  await app.open(server.address);
});

afterAll(async () => {
  expect(app.problems).toEqual([]);
  await phone.throwAway();
  await server.stop();
});

async function addBody(name: string, format: string, wide: string, high: string) {
  await app.tap('button', 'Add a body');
  await app.type('Name', name);
  await app.tap('radio', format);
  await app.type('Pixels wide', wide);
  await app.type('Pixels high', high);
  await app.tap('button', 'Save the body');
  await app.seeThe('heading', name);
  await app.tap('button', 'Back');
}

async function addLens(name: string, focal: string, widest: string, narrowest: string) {
  await app.tap('button', 'Add a lens');
  await app.type('Name', name);
  await app.type('Focal length', focal);
  await app.type('Widest', widest);
  await app.type('Narrowest', narrowest);
  await app.tap('button', 'Save the lens');
  await app.seeThe('heading', name);
  await app.tap('button', 'Back');
}

async function addRig(body: string, lens: string) {
  await app.tap('button', 'Put a rig together');
  await app.tap('radio', body);
  await app.tap('radio', lens);
  await app.tap('button', 'Save the rig');
  await app.seeThe('heading', /^Rig /);
  await app.tap('button', 'Back');
}

const RIGS = ['A Rowan 36', 'B Sedge 17'];

test('gear and a shot list are typed in', async () => {
  await addBody('Rowan 36', '36 × 24 mm', '6000', '4000');
  await addBody('Sedge 17', '17.3 × 13 mm', '5184', '3888');
  await addLens('Rowan 50', '50', '1,8', '22');
  await addLens('Sedge 25', '25', '1.4', '16');
  await addRig('Rowan 36', 'Rowan 50');
  await addRig('Sedge 17', 'Sedge 25');
  await app.tap('button', 'Plan');
  await app.tap('button', 'New plan');
  await app.tap('checkbox', /Rowan 36/);
  await app.tap('checkbox', /Sedge 17/);
  await app.tap('radio', /^Nothing/);
  await app.type('Name', 'Two formats');
  await app.tap('button', 'Make the plan');
  await app.tap('button', 'Add a set');
  await app.type('Intent', 'Equal pictures');
  await app.press('Tab');
  await app.tap('radio', /^Same picture/);
  await app.tap('button', 'Back');
  await app.seeThe('button', /^1\. Equal pictures/);
  await app.seeThe('row', /Sedge 17/);
});

test('the outing is walked on the typed gear, offline', async () => {
  await app.tap('button', 'Gear');
  await app.see('Ready for offline.');
  await server.stop();
  await app.tap('button', 'Plan');
  await app.tap('button', 'Start the outing');
  await app.seeThe('heading', 'Set up the rigs');
  await setUp(app, RIGS);
  for (let frame = 0; frame < 12 && (await asked(app)) !== 'List done'; frame += 1) {
    await shoot(app, 120);
  }
  await app.tap('button', 'End the outing');
  await seeAsked(app, 'Ended');
  await app.tap('button', 'Put the outing aside');
});

test('side by side one tap starts both, and each has its own end and record', async () => {
  await app.tap('button', 'Plan');
  await app.tap('button', /^1\. Equal pictures/);
  const stands = async () => await app.read('spinbutton', 'Time');
  for (let click = 0; click < 40 && !/^30\s/.test(await stands()); click += 1) {
    await app.tap('button', 'Time: one click up');
  }
  expect(await stands()).toMatch(/^30\s/);
  await app.tap('button', 'Back');
  await app.tap('button', /^A B/);
  await app.tap('radio', 'Side by side');
  await app.tap('button', 'Back');
  await app.tap('button', 'Start the outing');
  await setUp(app, RIGS);
  await untilExpose(app);
  await app.tap('button', 'Start all');
  await seeAsked(app, 'Exposing');
  expect(await app.count('timer')).toBe(2);
  // Each has its own end: 30 s that run 32 on both, so both are done together here.
  await wait(app, 10);
  expect(await app.read('timer', 'A Rowan 36')).toMatch(/^0:2[2-5]/);
  expect(await app.read('timer', 'B Sedge 17')).toMatch(/^0:2[2-5]/);
  await wait(app, 30);
  await wake(app);
  await app.tap('button', `${RIGS[0]}: Record as planned`);
  await until(async () => (await app.count('timer')) === 1, 'one of the two to be recorded');
  await unhurried();
  await record(app);
  await seeAsked(app, 'List done');
});

test('the whole of it goes to another phone as a backup, once and whole', async () => {
  await app.tap('button', 'End the outing');
  await seeAsked(app, 'Ended');
  await app.tap('button', 'Log');
  await app.tap('button', /^Backup and restore/);
  await app.tap('button', 'Make the backup ready');
  const backup = await app.download(() => app.tap('button', 'Save it'));
  await app.tap('button', 'Close');
  await server.comeBack();
  const other = await takePhone({ zone: 'Europe/London' });
  try {
    const { window } = other;
    await window.open(server.address);
    await window.tap('button', 'Add a body');
    await window.tap('button', 'Log');
    await window.tap('button', /^Backup and restore/);
    const half = backup.bytes.slice(0, backup.bytes.length / 2);
    await window.upload('Choose a file', { name: 'half.json', bytes: half });
    await window.see(/It is damaged/);
    await window.upload('Choose a file', backup);
    await window.see(/2 bodies/);
    await window.see(/2 rigs/);
    await window.see(/1 plan/);
    await window.tap('button', 'Take it in');
    await window.see('Taken in. What was here stays as it was.');
    await window.upload('Choose a file', backup);
    await window.see('Nothing new');
    await window.tap('button', 'Close');
    await window.tap('button', 'Back');
    expect(await window.count('button', /^Two formats/)).toBe(2);
    expect(window.problems).toEqual([]);
  } finally {
    await other.throwAway();
  }
});

test('the browser is asked to keep what is stored, and what it answered is said', async () => {
  await app.tap('button', 'Gear');
  await app.see(/^Storage: the browser may clear it/);
  await phone.allow('persistent-storage');
  await app.tap('button', 'Ask the browser to keep it');
  await app.see('Storage: kept. The browser will not clear it by itself.');
});
