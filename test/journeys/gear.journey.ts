import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  app = phone.window;
  await app.open(server.address);
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

test('a body is in from its name, sensor and pixels, and says what follows from them', async () => {
  await app.tap('button', 'Add a body');
  await app.tap('button', 'Save the body');
  await app.see(/the name is missing/);
  await app.type('Name', 'Rowan 36');
  await app.tap('radio', '36 × 24 mm');
  await app.type('Pixels wide', '8368');
  // A wrong turn by the system's way back loses nothing.
  await app.back();
  await app.tap('button', 'Add a body');
  expect(await app.readField('Name')).toBe('Rowan 36');
  expect(await app.readField('Pixels wide')).toBe('8368');
  await app.type('Pixels high', '3000');
  await app.tap('button', 'Save the body');
  await app.see(/far from square/);
  await app.type('Pixels high', '5584');
  await app.tap('button', 'Save the body');
  await app.seeThe('heading', 'Rowan 36');
  await app.see('43.27 mm');
  await app.see('4.30 µm');
});

test('a field says in one sentence why it takes a value not, and keeps what was before', async () => {
  await app.tap('button', /^ISO dial/);
  await app.tap('button', 'Highest: 25 600');
  await app.tap('button', '64', { within: { role: 'dialog', name: 'Highest' } });
  await app.see(/the wrong way round/);
  await app.tap('button', 'Highest: 25 600');
  await app.tap('button', '51 200', { within: { role: 'dialog', name: 'Highest' } });
  await app.see('ISO 100 to ISO 51 200, thirds');
  await app.type('Name', '  ');
  await app.press('Tab');
  await app.see('This is empty. Write something that you will know it by.');
  await app.type('Name', 'Rowan');
  await app.press('Tab');
  await app.seeThe('heading', 'Rowan');
});

test('a lens is typed with a comma, and a rig takes an offset', async () => {
  await app.tap('button', 'Back');
  await app.tap('button', 'Add a lens');
  await app.type('Name', 'Rowan 35');
  await app.type('Focal length', '35');
  await app.type('Widest', '1,8');
  await app.type('Narrowest', '22');
  await app.tap('button', 'Save the lens');
  await app.seeThe('heading', 'Rowan 35');
  expect(await app.readField('Widest')).toBe('1.8');
  await app.tap('button', 'Back');
  await app.tap('button', 'Put a rig together');
  await app.tap('button', 'Save the rig');
  await app.seeThe('heading', 'Rig A');
  await app.see('54.4°');
  await app.tap('button', 'Add an offset');
  await app.type('Stops', '−0,12');
  await app.tap('button', 'Save the offset');
  await app.see('−0.12 stop');
});

test('what is deleted comes back whole by one tap', async () => {
  await app.tap('button', /^Rowan Body/);
  await app.tap('button', 'Delete');
  await app.see('Deleted Rowan.');
  expect(await app.count('button', /^Rowan/)).toBe(1);
  await app.tap('button', 'Undo');
  await app.tap('button', /^Rig A/);
  await app.see('−0.12 stop');
  await app.tap('button', 'Back');
});

test('it is all there after the phone died', async () => {
  await phone.kill();
  await phone.restart();
  app = phone.window;
  await app.open(server.address);
  await app.tap('button', /^Rowan 36 × 24 mm/);
  await app.see('ISO 100 to ISO 51 200, thirds');
});

test('gear goes to a file and to another phone', async () => {
  await app.tap('button', 'Back');
  await app.tap('button', 'Gear to a file');
  const file = await app.download(() => app.tap('button', 'Save it'));
  expect(file.name).toMatch(/^evenfall-gear-\d{4}-\d\d-\d\d\.json$/);
  const other = await takePhone();
  try {
    await other.window.open(server.address);
    await other.window.tap('button', 'Add a body');
    await other.window.tap('button', 'Back');
    await other.window.upload('Gear from a file', file);
    await other.window.see('Taken: 1 body, 1 lens, 1 rig.');
    await other.window.tap('button', /^Rig A/);
    await other.window.see('−0.12 stop');
    expect(other.window.problems).toEqual([]);
  } finally {
    await other.throwAway();
  }
  expect(app.problems).toEqual([]);
});
