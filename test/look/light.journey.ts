import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Size } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { axeFaults } from './axe.ts';
import { largeTextFaults } from './largeText.ts';
import { cutOff, outOfSight, strongestGreenOrBlue, tooSmall } from './measure.ts';

const SIZES: readonly Size[] = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
  { width: 320, height: 568 },
  { width: 844, height: 390 },
];

/** Every screen of Light with what lies over it, in one walk; `look` is called at each. */
async function walk(app: AppWindow, look: (screen: string) => Promise<void>): Promise<void> {
  await app.tap('button', /^An evening at the old ferry slip/);
  await app.seeThe('heading', 'An evening at the old ferry slip');
  await app.tap('button', 'Light');
  await app.see(/^This site is invented/);
  await look('the sites');
  await app.tap('button', /^The old ferry slip/);
  await app.seeThe('slider', 'Instant on the curve');
  await look('dusk with the frames of a plan');
  await app.tap('slider', 'Instant on the curve');
  await app.press('End');
  await look('the cursor at the end');
  await app.tap('radio', 'Noon to noon');
  await look('noon to noon');
  await app.tap('button', /^The curve as a table/);
  await look('the table');
  await app.tap('button', /^The curve as a table/);
  await app.tap('button', /^Sky:/);
  await look('the sky to be stated');
  await app.tap('button', 'Close');
  await app.tap('button', /Choose another$/);
  await app.type('Date', '2027-06-21');
  await app.press('Enter');
  await look('another evening to be chosen');
  await app.tap('button', 'Show it');
  await app.see('21 Jun 2027');
  await look('a bright night');
  await app.tap('button', 'About this site');
  await app.type('Latitude and longitude', 'nowhere');
  await app.press('Enter');
  await app.see(/cannot be read/);
  await look('a site with a fault');
  await app.tap('button', /^Time zone:/);
  await look('the zones');
  await app.tap('button', 'Close');
  await app.tap('button', 'Delete');
  await app.see('Deleted The old ferry slip.');
  await app.see(/^No site yet/);
  await look('no site, with an undo');
  await app.tap('button', 'Add a site');
  await app.tap('button', 'Use where I am');
  await app.see(/does not give its position/);
  await look('a new site without a position');
}

/** How many pixels of the chart have the ink of the night. */
const inNightInk = (app: AppWindow): Promise<number> =>
  app.evaluate(() => {
    const canvas = document.querySelector('canvas');
    const data = canvas?.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data;
    if (!data?.some((level) => level > 0)) throw new Error('nothing is drawn');
    let count = 0;
    for (let at = 0; at < data.length; at += 4) {
      if (data[at] === 255 && data[at + 1] === 0 && data[at + 3] === 255) count += 1;
    }
    return count;
  }, undefined);

let server: AppServer;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
});
afterAll(async () => {
  await server.stop();
});

describe.each(SIZES)('at $width x $height', (size) => {
  test.each(['dark', 'light'] as const)('in a %s room', async (scheme) => {
    const phone = await takePhone({ size, zone: 'Europe/London' });
    try {
      const app = phone.window;
      await app.clock.start(new Date('2027-02-12T17:00:00Z'));
      await app.prefer({ scheme });
      await app.open(server.address);
      await app.tap('button', 'Try the practice outing');
      let screens = 0;
      await walk(app, async (screen) => {
        screens += 1;
        expect(await cutOff(app), screen).toEqual([]);
        expect(await tooSmall(app, 48), screen).toEqual([]);
        // Type is of one size in both themes.
        if (size.width === 390 && scheme === 'light') {
          expect(await largeTextFaults(app, size, () => app.clock.advance(250)), screen).toEqual(
            [],
          );
        }
        if (size.width === 390) expect(await axeFaults(app), screen).toEqual([]);
        if (scheme === 'dark')
          expect(await strongestGreenOrBlue(app), screen).toBeLessThanOrEqual(8);
        if (screen.startsWith('dusk') && size.height !== 568) {
          expect(await outOfSight(app, '.light-readout dd'), screen).toEqual([]);
          const { y, height } = await app.placeOf('slider', 'Instant on the curve');
          const bar = await app.placeOf('navigation', 'Places');
          const foot = bar.y > 0 ? bar.y : size.height;
          expect(y + height, screen).toBeLessThanOrEqual(foot);
          // The chart takes the colours of each theme as it is turned.
          for (const night of scheme === 'dark' ? [false, true] : [true, false]) {
            await app.tap('switch', 'Night');
            if (night) {
              expect(await strongestGreenOrBlue(app), screen).toBeLessThanOrEqual(8);
              expect(await inNightInk(app), screen).toBeGreaterThan(100);
            } else expect(await inNightInk(app), screen).toBe(0);
          }
        }
      });
      expect(screens).toBe(12);
      expect(app.problems).toEqual([]);
    } finally {
      await phone.throwAway();
    }
  });
});
