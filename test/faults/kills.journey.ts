import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { Phone } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { type Death, Deaths } from './kills.ts';

/*
 * Twelve deaths of the browser at random instants; `npm run faults -- 200` for more, and
 * `npm run faults -- 1 4711` to play the one of seed 4711 again.
 */

const count = Number(process.env['EVENFALL_DEATHS'] ?? 12);
const firstSeed = Number(process.env['EVENFALL_FIRST_SEED'] ?? 1);

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

// Fails if an event is acknowledged before its transaction is complete, if a start is not written
// before the countdown runs, or if a countdown goes on from where the page was.
test(`${count} deaths lose nothing that was acknowledged, write nothing twice, and keep time`, {
  timeout: 60_000 + count * 60_000,
}, async () => {
  const deaths = new Deaths(phone, server.address);
  await deaths.begin();
  const all: Death[] = [];
  for (let at = 0; at < count; at += 1) all.push(await deaths.die(firstSeed + at));
  const running = all.filter(({ timerOffS }) => timerOffS !== null);
  process.stdout.write(
    `${count} deaths from seed ${firstSeed}: ${all.filter(({ inTheAir }) => inTheAir > 0).length} with a tap in the air that was kept, ${running.length} in mid-exposure\n`,
  );
  expect(all.at(-1)?.acknowledged).toBeGreaterThan(0);
  if (count >= 12) expect(running.length).toBeGreaterThan(0);
});
