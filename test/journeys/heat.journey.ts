import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { until } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * Heat and rests of a plan, and its timeline, on the practice outing's gear and evening. Each test
 * goes on where the one before it stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ size: { width: 360, height: 640 }, zone: 'Europe/London' });
  app = phone.window;
  await app.clock.start(new Date('2027-02-12T17:00:00Z'));
  await app.open(server.address);
  await app.tap('button', 'Try the practice outing');
});

afterAll(async () => {
  expect(app.problems).toEqual([]);
  await phone.throwAway();
  await server.stop();
});

const oneLine = (text: string) => text.replace(/\s+/g, ' ');
const timeline = async () => oneLine(await app.read('figure', 'Timeline by rigs'));
const screen = async () => oneLine(await app.read('main', /^/));

/** How long the list takes by a way of resting, in seconds, as is said beside its ring. */
async function wallBy(way: string): Promise<number> {
  const said = await app.evaluate((wanted: string) => {
    const label = [...document.querySelectorAll('label')].find(({ textContent }) =>
      textContent.startsWith(wanted),
    );
    return label?.innerText ?? '';
  }, way);
  const [, wall = ''] = /([\d:]+) in all/.exec(said) ?? [];
  return wall.split(':').reduce((sum, part) => sum * 60 + Number(part), 0);
}
const LIMIT = 'Rest until inside a limit';

/** The small table of one set. */
const table = (name: RegExp) => ({ within: { role: 'table', name } }) as const;

async function put(field: string, value: string) {
  await app.type(field, value);
  await app.press('Enter');
}

test('a plan without an evening says its heat with ranges, and that its light is unknown', async () => {
  await app.tap('button', 'New plan');
  await app.tap('checkbox', /Alder 44/);
  await app.tap('checkbox', /Birch 36/);
  await app.tap('radio', /^Long-exposure heat/);
  await app.tap('button', 'Make the plan');
  await app.seeThe('heading', 'Timeline');
  const text = await timeline();
  expect(text).toContain('Minutes from the start.');
  expect(text).toContain('The light beneath is unknown: state site, date and sky.');
  expect(text).toContain('Frame 1 of 24');
  // A rested body after 22 s on, at dials and settling, and half of 16 s: worked by hand 0.046, and
  // 0.007 to 0.248 at the corners.
  expect(text).toContain('Heat, stop of dark current +0.05 (0.01 to 0.25)');
  // In the small table of each set, under its differences and in a unit of its own.
  expect(oneLine(await app.read('row', /Birch 36/, table(/Heat, 15 s/)))).toMatch(
    /B \+0\.\d\d stop of dark current over A \(0\.\d\d to \d\.\d\d\)/,
  );
});

test('no rest is proposed that would not do: a rig that loses its focus rests on', async () => {
  await app.tap('button', /^Rest and heat/);
  await app.tap('radio', /^Rest until inside a limit/);
  expect(await app.readField('Noise tolerated in the shadows')).toBe('0.02');
  await app.see(/^Suggestion: nobody has measured how this body cools/);
  const text = await screen();
  expect(text).toContain('stays on, or it loses its focus');
  expect(text).toContain('No rest while switched on is enough');
  expect(await wallBy(LIMIT)).toBe(await wallBy('No rest'));
});

test('the limit is set in a unit that one sees, and the rests answer', async () => {
  await put('Noise tolerated in the shadows', '0,1');
  await app.see(/^Suggested rest 2:13 \(0:00 to no rest enough\)/);
  await app.see(/what it costs is unknown: state the evening\.$/);
  const whole = await wallBy(LIMIT);
  // Two minutes and a quarter, two, and one and a half: 5:42 in all.
  expect(whole - (await wallBy('No rest'))).toBe(342);
  await put('Longest rest', '60');
  await app.see(/^Suggested rest 1:00/);
  await app.see('Ends at the longest rest, and is still outside of the limit.');
  expect(await wallBy(LIMIT)).toBeLessThan(whole);
  await put('Noise tolerated in the shadows', '0.2');
  await app.see('Every frame is inside the limit without a rest.');
  await put('Noise tolerated in the shadows', '0');
  await app.see('What is tolerated is above zero. Write it as in 0.02.');
  await put('Noise tolerated in the shadows', '0.1');
});

test('the rule of thumb says what it leaves', async () => {
  await app.tap('radio', /^Rest as long as you exposed/);
  await app.seeThe('heading', 'The rule of thumb');
  await put('No rest up to', '0');
  // The sheet has +0.45 for a body that rests switched off; this one stays on.
  await app.see(/^A Alder 44: after many frames of 4:00 with 4:00 of rest, \+0\.68 stop of dark/);
  await app.see(/It does not bring a sensor back to rested\.$/);
});

test('in the light of an evening a rest that costs more than it wins is left out, both told', async () => {
  await app.tap('button', 'Back');
  await app.tap('button', 'Back');
  await app.tap('button', /^An evening at the old ferry slip/);
  await app.see(/^Right from/);
  await app.tap('button', /^Rest and heat/);
  await app.tap('radio', /^Rest until inside a limit/);
  await app.see('Left out: it costs more than it wins.');
  expect(await screen()).toMatch(
    /Wins \+\d\.\d\d → \+\d\.\d\d stop of dark current, worth 0\.\d\d stop of light; costs 0\.\d\d stop of fade and time\./,
  );
});

test('all bodies are warmed up in one rhythm before the list, and the price of it is told', async () => {
  const without = await wallBy('No rest');
  await app.tap('radio', /^Warm all bodies up/);
  await app.see(
    /^12 frames of 1:04 before the list, cap on, all rigs at once, 1:04 of rest after each/,
  );
  // Twelve of 64 s with as much rest and what hands and camera need.
  expect(await wallBy('Warm all')).toBeGreaterThan(without + 12 * 128);
  await app.tap('button', 'Back');
  await app.seeThe('button', /^1\. Capped series/);
  expect(await timeline()).toContain('Frame 1 of 40');
  expect(await timeline()).toContain('frame under the cap');
  // Nothing is compared under the cap.
  expect(await app.read('row', /Birch 36/, table(/Capped series/))).not.toContain(
    'stop of dark current',
  );
});

test('a warm-up that no longer fits the list is put right, and goes away whole', async () => {
  await app.tap('button', /^2\. Base ISO, well exposed/);
  // From 64 s on the dial to bulb, twice as long.
  await app.tap('button', 'Time: one click up');
  await app.tap('button', 'Back');
  await app.tap('button', /^Rest and heat/);
  await app.see(/^The list has changed/);
  await app.tap('button', 'Fit the warm-up to the list');
  await app.see(/^6 frames of 2:08 before the list/);
  await app.seeGone(/^The list has changed/);
  await app.tap('radio', /^No rest/);
  await app.tap('button', 'Back');
  await app.seeThe('button', /^1\. Base ISO, well exposed/);
  expect(await timeline()).toContain('Frame 1 of 16');
  expect(await app.count('button', /Capped series/)).toBe(0);
});

test('the timeline is read frame by frame, by keys and by a finger, with the clock of the site', async () => {
  await app.see(/^Clock of The old ferry slip/);
  await until(async () => /Scene EV −?\d+\.\d ±\d/.test(await timeline()), 'the light beneath');
  await app.tap('button', 'Frame after');
  expect(await timeline()).toContain('Frame 2 of 16');
  expect(await timeline()).toMatch(/B Base ISO, well exposed, pass 1, frame 1/);
  const second = await timeline();
  // The heat of the frame in its own unit, as the list of frames has it.
  const [, heat = ''] =
    /stop of dark current (\+\d\.\d\d \(\d\.\d\d to \d\.\d\d\))/.exec(second) ?? [];
  expect(heat).not.toBe('');
  await app.tap('slider', 'Frame on the timeline');
  expect(await timeline()).not.toContain('Frame 2 of 16');
  await app.press('Home');
  expect(await timeline()).toContain('Frame 1 of 16');
  await app.press('ArrowRight');
  expect(await timeline()).toBe(second);
  await app.press('End');
  expect(await timeline()).toContain('Frame 16 of 16');
  await app.tap('button', /^A B B A/);
  expect(await screen()).toContain(`heat ${heat}`);
  await app.tap('button', 'Back');
});

test('the lanes come closer inside their own box, and the page never moves sideways', async () => {
  const sideways = () =>
    app.evaluate(() => {
      const box = document.querySelector('.lanes-box');
      const page = [...document.querySelectorAll('html, body, .scroller')];
      return {
        lanes: box ? box.scrollWidth / box.clientWidth : Number.NaN,
        at: box ? box.scrollLeft : Number.NaN,
        page: Math.max(...page.map(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)),
      };
    }, undefined);
  expect(await sideways()).toMatchObject({ lanes: 1, page: 0 });
  for (let times = 0; times < 3; times += 1) await app.tap('button', 'Closer');
  const close = await sideways();
  expect(close.lanes).toBeCloseTo(8, 1);
  expect(close.page).toBe(0);
  // The last frame is chosen and in sight.
  expect(close.at).toBeGreaterThan(500);
  await app.tap('button', 'Wider');
  expect((await sideways()).lanes).toBeCloseTo(4, 1);
});

test('the table behind the lanes has a row for each act', async () => {
  await app.tap('button', /^The timeline as a table/);
  // 16 frames, 8 swaps, and the head; no rest is asked for.
  const inside = { within: { role: 'group', name: 'The timeline as a table' } } as const;
  expect(await app.count('row', undefined, inside)).toBe(25);
  expect(await app.count('row', /Swap, onto the tripod/, inside)).toBe(8);
});
