import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from './driver/chromium.ts';
import type { Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

test('a killed phone far from any network starts the app again', async () => {
  await phone.window.open(server.address);
  await phone.window.seeThe('heading', 'Evenfall');
  await goTo(phone.window, 'Gear');
  await phone.window.see('Ready for offline.');

  await server.stop();
  await phone.kill();
  await phone.restart();

  await phone.window.open(server.address);
  await phone.window.seeThe('button', 'Gear');
  expect(phone.window.problems).toEqual([]);
});

test('whoever has a backup is led to where it is read back', async () => {
  await server.stop();
  server = await startServer(inject('builtApp'));
  const other = await takePhone();
  await other.window.open(server.address);
  await other.window.tap('button', 'Restore a backup');
  await other.window.seeThe('heading', 'Backup and restore');
  await other.window.upload('Choose a file', {
    name: 'notes.txt',
    bytes: new TextEncoder().encode('no backup'),
  });
  await other.window.see(/^Nothing was taken from the file/);
  expect(other.window.problems).toEqual([]);
  await other.throwAway();
});

test('a start that fails by a mistake of the app does not blame the storage', async () => {
  const other = await takePhone();
  const { window } = other;
  await window.open(server.address);
  await window.tap('button', 'Try the practice outing');
  await window.tap('button', 'Outing');
  await window.tap('button', 'Start An evening at the old ferry slip');
  await window.seeThe('heading', 'Set up the rigs');
  // What no code of ours would write, and what the start stumbles over.
  await window.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((give, fail) => {
        request.onsuccess = () => give(request.result);
        request.onerror = () => fail(request.error);
      });
    const [first] = await indexedDB.databases();
    const db = await done(indexedDB.open(first?.name ?? ''));
    const events = db.transaction('events', 'readwrite').objectStore('events');
    const [begun] = await done(events.getAll());
    await done(events.put({ ...begun, data: null }));
    db.close();
  }, undefined);
  await window.reload();
  await window.see(/^The app cannot start, by a mistake of its own/);
  await window.see(/^TypeError/);
  await window.seeThe('link', 'Open the newest version');
  expect(window.problems.length).toBeGreaterThan(0);
  await other.throwAway();
});
