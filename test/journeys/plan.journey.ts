import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * A plan made, changed and put right by hand, on the practice outing's gear. Each test goes on where
 * the one before it stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ size: { width: 360, height: 640 }, touch: true });
  app = phone.window;
  await app.open(server.address);
  await app.tap('button', 'Try the practice outing');
});

afterAll(async () => {
  expect(app.problems).toEqual([]);
  await phone.throwAway();
  await server.stop();
});

/** The row of a rig in the small table of a set: marks, then difference, residual, even-up. */
const rowOf = async (rig: RegExp) => (await app.read('row', rig)).replace(/\s+/g, ' ');

test('a plan is made by picking rigs and a ready list, over a wrong turn and a reload', async () => {
  await app.tap('button', 'New plan');
  await app.see('Pick a rig to go on.');
  await app.tap('checkbox', /Alder 44/);
  await app.tap('checkbox', /Birch 36/);
  await app.tap('radio', 'B Birch 36');
  await app.tap('radio', 'A Alder 44');
  await app.tap('button', 'Log');
  await app.seeThe('heading', 'Log');
  await app.tap('button', 'Plan');
  await app.tap('radio', /^Mixed dusk/);
  expect(await app.readField('Name')).toBe('Mixed dusk');
  await app.reload();
  await app.seeThe('heading', 'New plan');
  expect(await app.readField('Name')).toBe('Mixed dusk');
  await app.tap('button', 'Make the plan');
  await app.seeThe('heading', 'Mixed dusk');
  expect(await app.count('row', /Birch 36/)).toBe(4);
});

test('a set says what to dial on each rig, at once, and what a dial cannot reach', async () => {
  await app.tap('button', /^1\. Base ISO, well exposed/);
  await app.seeThe('heading', 'Set 1 of 4');
  expect(await rowOf(/Birch 36/)).toContain('f/6.3 60 s ISO 100');
  await app.see('64 s wanted; 60 s is the last position and there is no bulb: 0.09 stop darker.');
  await app.tap('button', 'ISO: one click up');
  expect(await rowOf(/Birch 36/)).toContain('f/6.3 60 s ISO 125');
  await app.tap('button', 'ISO: one click down');
  await app.tap('button', 'Time: one click down');
  expect(await rowOf(/Birch 36/)).toContain('f/6.3 30 s ISO 100');
  await app.tap('button', 'Time: one click up');
});

test('the hold decides, and the residual tells what the dials added', async () => {
  // Equal pupils: 45 mm at f/6.35 and 35 mm at f/4.94, of which f/5 is the nearest position.
  await app.tap('radio', 'Same depth of field');
  const row = await rowOf(/Birch 36/);
  expect(row).toContain('f/5 60 s ISO 100');
  // 0.67 by aperture and -0.09 by time, of which 0.73 is wanted.
  expect(row).toContain('+0.57');
  expect(row).toContain('−0.15');
  expect(row).toContain('−0.57');
  await app.tap('radio', 'Same f-number');
  await app.type('Stops from there', '-0,6667');
  await app.press('Enter');
  expect(await rowOf(/Birch 36/)).toContain('f/8 60 s ISO 100');
  // The practice pair: 0.76 stop per area, 1.50 over the whole sensor.
  expect(await app.count('row', /^Transmission unknown/)).toBe(1);
  await app.see('−1.50');
  await app.type('Stops from there', '99');
  await app.press('Enter');
  await app.see(/^This must lie between −10 and 10\sstop\.$/);
  await app.type('Stops from there', '-0,6667');
  await app.press('Enter');
});

test('the whole picture held equal gives the trade’s figures: f/10 to f/8, ISO 640 to 400', async () => {
  // Common practice, no source: 43.8 x 32.9 against 36 x 24 mm with 45 and 35 mm.
  const click = async (dial: string, times: number) => {
    const way = times > 0 ? 'up' : 'down';
    for (let done = 0; done < Math.abs(times); done += 1) {
      await app.tap('button', `${dial}: one click ${way}`);
    }
  };
  await app.tap('radio', /^Same picture/);
  await click('f-number', 4);
  await click('ISO', 8);
  expect(await rowOf(/Birch 36/)).toContain('f/8 60 s ISO 400');
  await click('f-number', -4);
  await click('ISO', -8);
  await app.tap('radio', /^Same ISO and time/);
  await app.type('Stops from there', '-0,6667');
  await app.press('Enter');
});

test('free settings start from the match and turn by hand', async () => {
  await app.tap('radio', /^Free/);
  expect(await rowOf(/Birch 36/)).toContain('f/8 60 s ISO 100');
  await app.tap('button', 'ISO: one click up', { within: { role: 'group', name: 'B Birch 36' } });
  expect(await rowOf(/Birch 36/)).toContain('f/8 60 s ISO 125');
  await app.tap('radio', /^Same ISO and time/);
  expect(await rowOf(/Birch 36/)).toContain('f/6.3 60 s ISO 100');
});

test('a deleted set comes back where it stood', async () => {
  await app.tap('button', 'Delete the set');
  await app.seeGone('1. Base ISO, well exposed');
  await app.see('Deleted Base ISO, well exposed.');
  await app.tap('button', 'Undo');
  await app.seeThe('button', /^1\. Base ISO, well exposed/);
});

test('sets are rearranged by buttons', async () => {
  await app.tap('button', 'Rearrange');
  await app.tap('button', 'Move Base ISO, well exposed down');
  await app.tap('button', 'Copy ISO 12800, over');
  expect(await app.count('button', 'Copy ISO 12800, over')).toBe(2);
  await app.tap('button', 'Delete ISO 12800, far under');
  await app.tap('button', 'Done');
  await app.seeThe('button', /^4\. ISO 12800, over/);
  await app.tap('button', 'Undo');
  await app.seeThe('button', /^5\. ISO 12800, far under/);
  await app.tap('button', /^4\. ISO 12800, over/);
  await app.tap('button', 'Delete the set');
  await app.seeThe('button', /^4\. ISO 12800, far under/);
  await app.seeThe('button', /^1\. Base ISO, two stops under/);
  await app.seeThe('button', /^2\. Base ISO, well exposed/);
});

test('an order of frames shows its price and sets the passes', async () => {
  await app.tap('button', /^A B B A/);
  await app.seeThe('heading', 'Order of frames');
  await app.seeThe('radio', /^A B B A 2 passes .* 8 swaps \d+:\d\d time/);
  await app.tap('radio', /^A B B A B A A B/);
  await app.tap('button', 'Back');
  expect(await app.read('button', /^1\. Base ISO/)).toContain('4 passes of 1 frame');
  await app.tap('button', /^A B B A B A A B/);
  await app.tap('radio', /^A B B A \d/);
  await app.tap('button', 'Back');
});

test('the plan is open again after a dead battery, as it was', async () => {
  await phone.kill();
  await phone.restart();
  app = phone.window;
  await app.open(server.address);
  await app.tap('button', 'Plan');
  await app.seeThe('heading', 'Mixed dusk');
  await app.seeThe('button', /^2\. Base ISO, well exposed/);
  expect(await app.count('row', /Birch 36/)).toBe(4);
});

test('a rig that is gone stops the start, and says why', async () => {
  await app.tap('button', 'Gear');
  await app.tap('button', /^Rig B/);
  await app.tap('button', 'Delete');
  await app.tap('button', 'Plan');
  await app.see(/no longer in Gear/);
  expect(await app.count('row', /Birch 36/)).toBe(0);
  await app.tap('button', 'Undo');
  await app.seeThe('row', /Birch 36/);
});

test('an outing starts from its plan', async () => {
  await app.tap('button', 'Start the outing');
  await app.seeThe('heading', 'Set up the rigs');
});
