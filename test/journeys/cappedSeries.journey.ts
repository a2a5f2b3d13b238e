import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { cutOff, outOfSight, strongestGreenOrBlue, tooSmall } from '../look/measure.ts';
import { logTable } from './acts/log.ts';
import { record, seeAsked, shoot, start, unhurried, until, wait, wake } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * A body's heat as its owner comes to know it: typed in with its source, first values of three dark
 * levels, and the capped series that a whole fit is made from. One test goes on where the one before
 * it stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
});

afterAll(async () => {
  await server.stop();
});

const SCHEMES = ['light', 'dark'] as const;
type Scheme = (typeof SCHEMES)[number];

const SIZES = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
];

/** At the desk all may be scrolled to. */
const AT_THE_DESK = { least: 48, glance: '.timer' } as const;
/** In the field the countdown and what it is for are read at a glance. */
const IN_THE_FIELD = { least: 64, glance: '.timer > *' } as const;

/** Nothing is cut off or too small to hit, on a low phone and a high one; no green, no blue by night. */
async function look(
  screen: string,
  scheme: Scheme,
  { least, glance }: { readonly least: 48 | 64; readonly glance: string } = AT_THE_DESK,
): Promise<void> {
  for (const size of SIZES) {
    await app.resize(size);
    // A timeline on a turned phone is drawn anew in the next frames.
    await expect.poll(() => cutOff(app), { message: screen }).toEqual([]);
    expect(await tooSmall(app, least), screen).toEqual([]);
    expect(await outOfSight(app, glance), screen).toEqual([]);
  }
  if (scheme === 'dark') expect(await strongestGreenOrBlue(app), screen).toBeLessThanOrEqual(8);
}

const inSheet = (name: string) => ({ within: { role: 'dialog', name } }) as const;

describe.each(SCHEMES)('how a body warms, in a %s room,', (scheme) => {
  beforeAll(async () => {
    phone = await takePhone({ zone: 'Europe/London' });
    app = phone.window;
    await app.prefer({ scheme });
    await app.clock.start(new Date(Date.UTC(2027, 1, 12, 14, 0)));
    await app.open(server.address);
  });

  afterAll(() => phone.throwAway());

  test('is stated with its range and where it comes from', async () => {
    await app.tap('button', 'Add a body');
    await app.type('Name', 'Rowan 36');
    await app.tap('radio', '36 × 24 mm');
    await app.type('Pixels wide', '8368');
    await app.type('Pixels high', '5584');
    await app.tap('button', 'Save the body');
    await app.tap('button', /^Time dial/);
    await app.type('Longest timed', '120');
    await app.press('Tab');
    await app.see('1/4000 s to 120 s, thirds');
    await app.tap('button', /^How it warms Nobody has measured it/);
    await app.seeThe('button', /^Time constant 480 s, 240 to 900 s Stated range: our choice/);
    await app.seeThe('button', /^Doubling 6.5 K, 4.3 to 8.1 K Stated range: measured by a hobby/);
    await app.seeThe('button', /^Plateau, idle 3 K, 1 to 6 K Stated range: from memory/);
    await look('how it warms, stated', scheme);
  });

  test('comes at first from three dark levels, and not from three that do not settle', async () => {
    const sheet = inSheet('First values from a capped series');
    const levels = async (...three: readonly string[]) => {
      for (const [at, label] of ['First', 'Second', 'Third'].entries()) {
        await app.type(label, three[at] ?? '', sheet);
      }
      await app.press('Tab');
    };
    await app.tap('button', 'First values from a capped series');
    await app.see('Enter all three and the step.');
    await levels('100', '200', '500');
    await app.type('Step from one to the next', '480');
    await app.press('Tab');
    await app.see(/^These do not settle/);
    // A body of 480 s and 1.4 doublings, seen 120, 240 and 360 s after it began to expose.
    await levels('123,94', '146,50', '166,87');
    await app.type('Step from one to the next', '120');
    await app.press('Tab');
    await app.see(/^The steps are shorter than half/);
    // The same after 120, 600 and 1080 s.
    await levels('123,94', '199,85', '238,24');
    await app.type('Step from one to the next', '480');
    await app.press('Tab');
    // 1.4 doublings of the stated 6.5 K.
    await app.see('480 s');
    await app.see('9.1 K');
    await app.see(/^1\.40 doublings, counted in K with this body’s doubling of 6\.5\sK/);
    await look('first values', scheme);
    await app.tap('button', 'Take both over', sheet);
    await app.seeThe(
      'button',
      /^Time constant 480 s, 4\d\d to 5\d\d s Yours, from: capped series of 2027-02-12, first values/,
    );
    await app.seeThe('button', /^Plateau, exposing 9.1 K, 8.\d to 9.\d K Yours/);
    await app.seeThe('button', /^How it warms 2 of 5 known to you/);
  });

  test('is typed in with its source, and a sentence says what is wrong', async () => {
    const sheet = inSheet('Doubling');
    await app.tap('button', /^Doubling 6/);
    await app.tap('button', 'Save the figure', sheet);
    await app.see(/^Not saved: value, least and most are needed/);
    await app.type('Value', '0', sheet);
    await app.press('Tab');
    await app.see('A doubling is above zero. Write it in K.');
    await app.type('Value', '7,2', sheet);
    await app.type('At least', '7.4', sheet);
    await app.type('At most', '7.8', sheet);
    await app.tap('button', 'Save the figure', sheet);
    await app.see(/^Not saved: the source is missing/);
    await app.type('Source', 'own dark frames from 5 to 22 °C, 2027-01-30', sheet);
    await app.tap('button', 'Save the figure', sheet);
    await app.see(/^Not saved, and nothing is lost\. The value lies outside its own range/);
    await look('a figure with a fault', scheme);
    await app.type('At least', '6.9', sheet);
    await app.tap('button', 'Save the figure', sheet);
    await app.seeThe('button', /^Doubling 7.2 K, 6.9 to 7.8 K Yours, from: own dark frames/);
    await app.tap('button', /^Plateau, exposing/);
    await app.tap('button', 'Back to the stated range');
    await app.seeThe('button', /^Plateau, exposing 10 K, 4 to 17 K Stated range/);
    await app.see('Deleted a figure of how it warms.');
    await app.tap('button', 'Undo');
    await app.seeThe('button', /^Plateau, exposing 9.1 K, 8.\d to 9.\d K Yours/);
    await app.seeThe('button', /^How it warms 3 of 5 known to you/);
  });

  test('goes with the gear file to another phone', async () => {
    await app.tap('button', 'Back');
    await app.tap('button', 'Gear to a file');
    const file = await app.download(() => app.tap('button', 'Save it'));
    await app.tap('button', 'Close');
    const other = await takePhone();
    try {
      await other.window.open(server.address);
      await other.window.tap('button', 'Add a body');
      await other.window.tap('button', 'Back');
      await other.window.upload('Gear from a file', file);
      await other.window.tap('button', /^Rowan 36/);
      await other.window.tap('button', /^How it warms 3 of 5 known to you/);
      await other.window.seeThe('button', /^Doubling 7.2 K, 6.9 to 7.8 K Yours, from: own dark/);
      await other.window.seeThe('button', /^Time constant 480 s/);
    } finally {
      await other.throwAway();
    }
  });

  test('is fitted from a ready list for one rig, at an ISO of its owner’s', async () => {
    await app.tap('button', 'Add a lens');
    await app.type('Name', 'Rowan 35');
    await app.type('Focal length', '35');
    await app.type('Widest', '1,8');
    await app.type('Narrowest', '16');
    await app.tap('button', 'Save the lens');
    await app.tap('button', 'Back');
    await app.tap('button', 'Put a rig together');
    await app.tap('button', 'Save the rig');
    await app.tap('button', 'Plan');
    await app.tap('button', 'New plan');
    await app.tap('checkbox', /Rowan 36/);
    await app.tap('radio', /^How one body warms/);
    await app.see(/^Before it, leave the body off and capped for an hour/);
    await app.tap('button', /^Measured at: ISO 12 800/);
    await app.tap('button', 'ISO 6400', inSheet('Measured at'));
    await look('a new capped series', scheme);
    await app.tap('button', 'Make the plan');
    await app.seeThe('heading', 'How one body warms');
    await app.see(/One rig alone has nothing to be compared with/);
    await app.seeThe('button', /^2\. Warming, back to back Capped series\. 12 frames\./);
    await app.seeThe(
      'button',
      /^5\. After 16 min switched off Capped series\. 2 frames after 16:00 switched off\./,
    );
    await look('the plan of a capped series', scheme);
  });

  test('asks of its sets only what they have', async () => {
    await app.tap('button', /^3\. After 4 min/);
    await app.see(/^Cap on, before the list/);
    expect(await app.readField('Switched off before it')).toBe('240');
    expect(await app.readField('Repeats')).toBe('2');
    expect(await app.count('spinbutton', 'ISO')).toBe(1);
    expect(await app.count('heading', 'Hold')).toBe(0);
    expect(await app.count('button', /^Target, framing/)).toBe(0);
    await app.type('Switched off before it', '-1');
    await app.press('Tab');
    await app.see('This time cannot be below zero.');
    await app.type('Switched off before it', '240');
    await app.press('Tab');
    await look('a set of a capped series', scheme);
    await app.tap('button', 'Back');
    await app.tap('button', 'Start the outing');
  });

  test('is walked without tripod and focus: short frames by one tap, long ones by timers', async () => {
    await app.tap('button', 'Begin with the frames');
    await seeAsked(app, 'Dial');
    await app.see(/^Capped series: cap on/);
    await app.tap('button', 'Dials are set');
    await seeAsked(app, 'Expose');
    await shoot(app, 0);
    await unhurried();
    await app.tap('button', 'Taken');
    await seeAsked(app, 'Dial');
    await app.tap('button', 'Dials are set');
    for (const left of [18, 17, 16]) {
      await seeAsked(app, 'Expose');
      await app.see(new RegExp(`repeat ${19 - left}/12 · ${left} left`));
      await start(app);
      await wait(app, 2 + 120 + 1);
      await wake(app);
      await record(app);
      await unhurried();
    }
  });

  test('says when to switch off, for how long, and logs it at a tap', async () => {
    await app.tap('button', 'More');
    await app.tap('button', 'Drop the rest of this set');
    await seeAsked(app, 'Rest');
    await app.see('A Rowan 36: switch off and wait');
    await app.see(/^The set asks for 4:00 from the end of the last frame/);
    await look('switched off', scheme, IN_THE_FIELD);
    await app.tap('button', 'It is switched off');
    await until(
      async () => (await app.count('button', 'It is switched off')) === 0,
      'the switching off to be logged',
    );
    await wait(app, 230);
    await seeAsked(app, 'Rest');
    await wait(app, 10);
    await seeAsked(app, 'Expose');
    await app.tap('button', /^Start 120/);
    await wait(app, 123);
    await wake(app);
    await record(app);
    await app.tap('button', 'More');
    await app.tap('button', 'End the outing');
    await app.tap('button', 'End the outing', inSheet('End the outing'));
    await seeAsked(app, 'Ended');
  });

  test('stands in the log as capped darks, with no ledger', async () => {
    await app.tap('button', 'Open the log');
    await app.seeThe('heading', 'How one body warms');
    await until(
      async () => (await app.count('button', /capped dark/)) === 6,
      'six frames to be called capped darks',
    );
    await app.see(/Switched off$/);
    await app.see(/Set dropped: 9 frames not made/);
    expect(await app.count('button', /^Ledger/)).toBe(0);
    await look('the log of a capped series', scheme);
    const rows = await logTable(app);
    expect(rows).toHaveLength(6);
    expect(rows.map((row) => Number(row['ExposureTime']) > 1)).toEqual([
      ...[false, false],
      ...[true, true, true, true],
    ]);
    expect(new Set(rows.map((row) => row['PhotographicSensitivity']))).toEqual(new Set(['6400']));
    expect(rows.every((row) => row['EvenUpStops'] === '')).toBe(true);
    expect(app.problems).toEqual([]);
  });
});
