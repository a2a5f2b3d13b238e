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
