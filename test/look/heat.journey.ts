import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Size } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { largeTextFaults } from './largeText.ts';
import { cutOff, show, strongestGreenOrBlue, tooFaint, tooSmall } from './measure.ts';

const SIZES: readonly Size[] = [
  { width: 390, height: 844 },
  { width: 360, height: 640 },
  { width: 844, height: 390 },
];

/** The plan's timeline and each way of resting, with and without a warm-up; `look` at each. */
async function walk(app: AppWindow, look: (screen: string) => Promise<void>): Promise<void> {
  await app.tap('button', 'Plan');
  await app.tap('button', /^An evening at the old ferry slip/);
  await app.see(/^Right from/);
  await show(app, '.timeline');
  await look('the timeline');
  await app.tap('button', /^The timeline as a table/);
  await show(app, '.timeline .disclosure');
  await look('its table');
  await app.tap('button', /^The timeline as a table/);
  await app.tap('button', /^Rest and heat/);
  for (const [way, heading] of [
    [/^Rest until inside a limit/, 'Rests by the limit'],
    [/^Rest as long as you exposed/, 'The rule of thumb'],
    [/^Warm all bodies up/, 'The warm-up'],
  ] as const) {
    await app.tap('radio', way);
    await app.seeThe('heading', heading);
    await show(app, '.split-detail .section');
    await look(heading);
  }
  // A wide screen has the plan beside it.
  if ((await app.count('button', 'Back')) > 0) await app.tap('button', 'Back');
  await show(app, '.timeline');
  await look('the timeline with a warm-up');
}

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
        expect(await tooFaint(app), screen).toEqual([]);
        if (scheme === 'dark')
          expect(await strongestGreenOrBlue(app), screen).toBeLessThanOrEqual(8);
      });
      expect(screens).toBe(6);
      expect(app.problems).toEqual([]);
    } finally {
      await phone.throwAway();
    }
  });
});
