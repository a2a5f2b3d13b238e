import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Phone, Size } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { axeFaults } from './axe.ts';
import { largeTextFaults } from './largeText.ts';
import { cutOff, strongestGreenOrBlue, tooSmall } from './measure.ts';

const SIZES: readonly Size[] = [
  { width: 390, height: 844 },
  { width: 320, height: 568 },
  { width: 844, height: 390 },
];

/** Every screen of Gear with what lies over it, in one walk; `look` is called at each. */
async function walk(app: AppWindow, look: (screen: string) => Promise<void>): Promise<void> {
  await look('first start');
  await app.tap('button', 'Add a body');
  await app.seeThe('heading', 'New body');
  await app.tap('radio', 'Another size');
  await app.type('Width', '0');
  await app.tap('button', 'Save the body');
  await app.see(/the name is missing/);
  await look('a new body with faults');
  await app.type('Width', '36');
  await app.type('Height', '24');
  await app.type('Name', 'Rowan 36');
  await app.type('Pixels wide', '6000');
  await app.type('Pixels high', '4000');
  await app.tap('button', 'Save the body');
  await app.seeThe('heading', 'Rowan 36');
  for (const part of ['ISO dial', 'Time dial', 'Bulb', 'Self-timer', 'Dark frame', 'Bit depth']) {
    await app.tap('button', new RegExp(`^${part}`));
    await look(`the body, ${part} open`);
  }
  await app.tap('button', /^Shortest/);
  await look('a pick from many');
  await app.back();
  await app.tap('button', 'Change');
  await look('the sensor sheet');
  await app.back();
  await app.tap('button', 'Delete');
  await app.see('Deleted Rowan 36.');
  await look('the gear with an undo');
  await app.tap('button', 'Undo');
}

let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
});
afterAll(async () => {
  await server.stop();
});

describe.each(SIZES)('at $width x $height', (size) => {
  test.each(['dark', 'light'] as const)('in a %s room', async (scheme) => {
    phone = await takePhone({ size });
    try {
      await phone.window.prefer({ scheme });
      await phone.window.open(server.address);
      await phone.window.seeThe('heading', 'Evenfall');
      let screens = 0;
      await walk(phone.window, async (screen) => {
        screens += 1;
        expect(await cutOff(phone.window), screen).toEqual([]);
        expect(await tooSmall(phone.window, 48), screen).toEqual([]);
        // Type is of one size in both themes.
        if (size.width === 390 && scheme === 'light') {
          expect(await largeTextFaults(phone.window, size), screen).toEqual([]);
        }
        if (size.width === 390) expect(await axeFaults(phone.window), screen).toEqual([]);
        // By night no pixel of ours has more than a trace of what the dark-adapted eye sees best.
        if (scheme === 'dark')
          expect(await strongestGreenOrBlue(phone.window), screen).toBeLessThanOrEqual(8);
      });
      expect(screens).toBe(11);
      expect(phone.window.problems).toEqual([]);
    } finally {
      await phone.throwAway();
    }
  });
});
