import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * The Light place on a fixed clock. Times that are asked for were worked out apart, by the
 * low-precision sun of the Astronomical Almanac (p. C24). Each test goes on where the one before it
 * stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ size: { width: 360, height: 640 }, zone: 'Europe/London' });
  app = phone.window;
  await app.clock.start(new Date('2027-02-12T17:40:00Z'));
  await app.prefer({ scheme: 'light' });
  await app.open(server.address);
});

afterAll(async () => {
  expect(app.problems).toEqual([]);
  await phone.throwAway();
  await server.stop();
});

/** The row of a passage of the sun, in one line. */
const rowOf = async (name: RegExp) => (await app.read('row', name)).replace(/\s+/g, ' ');
const figure = async () =>
  (await app.read('figure', 'Scene EV against the clock')).replace(/\s+/g, ' ');

async function addSite(name: string, coordinates: string) {
  await app.tap('button', 'Light');
  await app.tap('button', 'Add a site');
  await app.type('Name', name);
  await app.type('Latitude and longitude', coordinates);
  await app.tap('button', 'Save the site');
  await app.seeThe('heading', name);
  await app.seeThe('slider', 'Instant on the curve');
}

async function showDate(date: string, written: string) {
  await app.tap('button', /Choose another$/);
  await app.type('Date', date);
  await app.press('Enter');
  await app.tap('button', 'Show it');
  await app.see(written);
}

test('without any site the place says what to do, and everything else works', async () => {
  await goTo(app, 'Light');
  await app.see(/^No site yet\. Add one where you stand/);
  await app.tap('button', 'Plan');
  await app.seeThe('heading', 'Plans');
  await app.tap('button', 'Gear');
  // Where it was left on the way past the first screen.
  await app.seeThe('heading', 'New body');
});

test('a phone that keeps its position to itself is answered in words, and typing goes on', async () => {
  await app.tap('button', 'Light');
  await app.tap('button', 'Add a site');
  await app.see(/The phone is asked once; the answer stays on it\.$/);
  await app.tap('button', 'Use where I am');
  await app.see(/does not give its position to this app\. Nothing else depends on it/);
});

test('a phone that says where it is fills the coordinates in, with its height', async () => {
  await app.evaluate(() => {
    navigator.geolocation.getCurrentPosition = (found) =>
      found({
        coords: { latitude: -33.12345678, longitude: 151.2, altitude: 41.6, accuracy: 37.2 },
      } as GeolocationPosition);
  }, undefined);
  await app.tap('button', 'Use where I am');
  await app.see('Taken, to within 38 m.');
  expect(await app.readField('Latitude and longitude')).toBe('33.1235 S 151.2 E');
  await app.type('Name', 'The headland');
  await app.tap('button', 'Save the site');
  await app.see(/^Times in Australia\/Sydney, UTC\+11\./);
  await app.tap('button', 'About this site');
  expect(await app.readField('Height above the sea')).toBe('42');
  await app.tap('button', 'Delete');
  await app.tap('button', 'Add a site');
});

test('coordinates that cannot be are refused one by one, and nothing typed is lost', async () => {
  await app.tap('button', 'Save the site');
  await app.see(/the name is missing/);
  await app.type('Name', 'The bridge');
  for (const [typed, said] of [
    ['somewhere', /cannot be read/],
    ['16 E 48 N', /Latitude comes first/],
    ['-48.2 N 16 E', /a minus or a letter, not both/],
    ['91 N 16 E', /lies between 90 S and 90 N/],
    ['48 N 181 E', /lies between 180 W and 180 E/],
  ] as const) {
    await app.type('Latitude and longitude', typed);
    await app.press('Tab');
    await app.see(said);
    expect(await app.readField('Latitude and longitude')).toBe(typed);
  }
});

test('a site typed in degrees, minutes and seconds gets its zone and its evening', async () => {
  await app.type('Latitude and longitude', `48°12'30"N 16°22'23"E`);
  await app.tap('button', 'Save the site');
  await app.seeThe('heading', 'The bridge');
  await app.see('12 Feb 2027');
  // 16:11:10, 16:43:40, 17:20:20 and 17:56:30 UTC.
  expect(await rowOf(/^Sunset/)).toBe('Sunset 17:11');
  expect(await rowOf(/^Civil twilight ends/)).toBe('Civil twilight ends 17:43');
  expect(await rowOf(/^Nautical twilight ends/)).toBe('Nautical twilight ends 18:20');
  expect(await rowOf(/^Astronomical twilight ends/)).toBe('Astronomical twilight ends 18:56');
  // 06:05:20 UTC.
  expect(await rowOf(/^Sunrise/)).toBe('Sunrise 07:05 next day');
  await app.see(/^Times in Europe\/Vienna, UTC\+1\./);
  await app.see(
    'Clear-sky estimate. The real scene can be two stops brighter or darker. Take a reading.',
  );
  await app.see(/^Cloud: not stated\. Nine times in ten/);
  await app.see(/never look at the sun through an optical finder/);
});

test('the cursor goes by touch and by keys, a minute or ten, and reads the curve out', async () => {
  const begun = await figure();
  expect(begun).toContain('At 18:40 astronomical twilight');
  await app.tap('slider', 'Instant on the curve');
  // A finger in the middle: halfway from 15:56 to 19:31.
  expect(await figure()).toMatch(/At 17:4[34] civil twilight|At 17:4[34] nautical twilight/);
  await app.press('Home');
  expect(await figure()).toContain('At 15:56 day');
  await app.press('ArrowRight');
  await app.press('PageUp');
  expect(await figure()).toContain('At 16:07 day');
  await app.press('ArrowLeft');
  expect(await figure()).toContain('At 16:06 day');
  const [, ev = '', within = ''] = /EV (−?[\d.]+) 9 in 10: ±([\d.]+)/.exec(await figure()) ?? [];
  expect(within).toBe('4.8');
  await app.press('End');
  const [, dark = ''] = /EV (−?[\d.]+) 9 in 10/.exec(await figure()) ?? [];
  // From an hour before sunset to night: more than fifteen stops.
  expect(Number(ev) - Number(dark.replace('−', '-'))).toBeGreaterThan(15);
});

/** How far the line and the spot of the chart stand from the left of the cursor's box, in its widths. */
const onChart = () =>
  app.evaluate(() => {
    const box = document.querySelector('[role=slider]')?.getBoundingClientRect();
    const middle = (selector: string): number => {
      const found = [...document.querySelectorAll(selector)]
        .map((each) => each.getBoundingClientRect())
        .filter(({ width }) => width > 0);
      const [mark] = found;
      if (!box || !mark || found.length > 1) throw new Error(`${found.length} x ${selector}`);
      return ((mark.left + mark.right) / 2 - box.left) / box.width;
    };
    return { line: middle('.u-cursor-x'), spot: middle('.u-cursor-pt') };
  }, undefined);

test('the chart shows the cursor where it is, by a finger as by a key, also after a turn', async () => {
  // A chart that is turned is drawn anew in the next frames.
  const near = (share: number) =>
    expect
      .poll(async () => {
        const { line, spot } = await onChart();
        return Math.max(Math.abs(line - share), Math.abs(spot - share));
      })
      .toBeLessThan(0.02);
  await app.press('Home');
  await near(0);
  await app.press('End');
  await near(1);
  await app.tap('slider', 'Instant on the curve');
  await near(0.5);
  await app.resize({ width: 640, height: 360 });
  await near(0.5);
  await app.tap('slider', 'Instant on the curve');
  await app.press('Home');
  for (let tens = 0; tens < 10; tens += 1) await app.press('PageUp');
  // 100 of 215 minutes.
  await near(100 / 215);
  await app.resize({ width: 360, height: 640 });
  await near(100 / 215);
});

test('the table behind the curve has a row every ten minutes', async () => {
  await app.tap('button', /^The curve as a table/);
  // From 15:56 to 19:31: 16:00, 16:10 ... 19:30, and the head.
  expect(
    await app.count('row', undefined, { within: { role: 'group', name: 'The curve as a table' } }),
  ).toBe(23);
  await app.tap('button', /^The curve as a table/);
});

test('a stated sky narrows the width and takes its stops', async () => {
  await app.press('Home');
  await app.tap('slider', 'Instant on the curve');
  await app.press('Home');
  const evNow = async () => Number(/Scene EV (−?[\d.]+)/.exec(await figure())?.[1] ?? Number.NaN);
  const before = await evNow();
  await app.tap('button', /^Sky:/);
  await app.tap('button', 'Dark stratus');
  // A tenth of the light.
  expect(Math.abs(before - (await evNow()) - Math.log2(10))).toBeLessThan(0.11);
  expect(await figure()).toContain('±3.2');
  await app.see(/^Estimate for the stated cloud/);
});

test('the evenings go by day after day, as fast as a finger taps', async () => {
  for (let day = 0; day < 3; day += 1) await app.tap('button', 'The day after');
  await app.see('15 Feb 2027');
  await app.tap('button', 'The day before');
  await app.see('14 Feb 2027');
  // What was said of the sky was said of another evening.
  await app.see(/^Cloud: not stated/);
  await showDate('2027-02-12', '12 Feb 2027');
});

test('a site keeps what is stated of it, and a clock by hand shifts every time', async () => {
  await app.tap('button', 'About this site');
  await app.type('Ridge toward the setting sun', '80');
  await app.press('Enter');
  await app.see('This must lie between 0 and 60°.');
  await app.type('Ridge toward the setting sun', '3');
  await app.press('Enter');
  await app.tap('button', /^Time zone:/);
  await app.tap('button', 'A fixed offset');
  await app.type('Ahead of UTC', '25');
  await app.press('Enter');
  await app.see(/This is not an offset/);
  await app.type('Ahead of UTC', '5:45');
  await app.press('Enter');
  await app.see('For these coordinates it would be Europe/Vienna.');
  await app.back();
  expect(await rowOf(/^Sunset/)).toBe('Sunset 21:56');
  expect(await app.count('row', /^Behind the ridge/)).toBe(1);
  await app.see(/^Times in UTC\+5:45\./);
});

test('the chart is marked in whole hours of that clock, in whole stops and with the sun’s lines', async () => {
  // What is written on a canvas can only be heard while it is written.
  await app.evaluate(() => {
    const { fillText } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.fillText = function (words, x, y) {
      document.body.dataset['written'] = `${document.body.dataset['written'] ?? ''}${words}\n`;
      fillText.call(this, words, x, y);
    };
  }, undefined);
  await app.tap('radio', 'Noon to noon');
  await app.see('Page Up and Page Down');
  const drawn = await app.evaluate(() => document.body.dataset['written'] ?? '', undefined);
  const written = new Set(drawn.split('\n'));
  // From one solar noon, at 16:55, to the next; the moon is drawn, no plan is.
  expect([...written].filter((each) => /^\d\d:\d\d$/.test(each))).toEqual([
    '18:00',
    '00:00',
    '06:00',
    '12:00',
  ]);
  expect([...written].filter((each) => /^−?\d+$/.test(each)).length).toBeGreaterThan(3);
  expect(written).toContain('sunset 21:56');
  expect(written).toContain('now');
  await app.tap('radio', 'Dusk');
});

test('beyond the polar circle midnight sun, polar night and bright nights are said plainly', async () => {
  await addSite('The skerry', '69.6 18.9');
  await showDate('2027-06-21', '21 Jun 2027');
  await app.see('Midnight sun: it does not set between these noons.');
  // Lowest at 22:45 to 22:50 UTC, 3.0 degrees up.
  await app.see(/^The sun is lowest at 00:4\d next day: 3\.0°\.$/);
  expect(await app.count('row', /^Sunset/)).toBe(0);
  await app.see(/never look at the sun/);
  await showDate('2027-12-21', '21 Dec 2027');
  await app.see('Polar night: it does not rise between these noons.');
  // 12:54:30 UTC.
  expect(await rowOf(/^Civil twilight ends/)).toBe('Civil twilight ends 13:54');
  await app.seeGone(/never look at the sun/);

  await addSite('The inlet', '60 N 24.9 E');
  await showDate('2027-06-21', '21 Jun 2027');
  // 21:34:50 UTC; lowest -6.56.
  expect(await rowOf(/^Civil twilight ends/)).toBe('Civil twilight ends 00:34 next day');
  await app.see(/It is never below −12°: nautical twilight lasts all night\.$/);
});

test('at the date line the evening is that of the site’s own calendar', async () => {
  await addSite('The atoll', '1.87 N 157.40 W');
  await app.tap('button', /Choose another$/);
  await app.tap('button', 'Tonight');
  // 17:40 UTC on the 12th is 07:40 on the 13th there; the sun sets at 04:45:30 UTC on the 13th.
  await app.see('13 Feb 2027');
  expect(await rowOf(/^Sunset/)).toBe('Sunset 18:45');
  await app.see(/^Times in Pacific\/Kiritimati, UTC\+14\./);
});

test('a site is copied, deleted and brought back', async () => {
  await app.tap('button', 'About this site');
  await app.tap('button', 'Copy');
  await app.seeThe('heading', 'The atoll, copy');
  await app.tap('button', 'Delete');
  await app.see('Deleted The atoll, copy.');
  expect(await app.count('button', /^The atoll, copy/)).toBe(0);
  await app.tap('button', 'Undo');
  await app.seeThe('button', /^The atoll, copy/);
});

test('the sites and the one in use outlive a restart of the page', async () => {
  await app.reload();
  await goTo(app, 'Light');
  for (const name of [/^The bridge/, /^The skerry/, /^The inlet/, /^The atoll/]) {
    await app.seeThe('button', name);
  }
});

test('by the sun it turns to night at civil dusk of the site in use', async () => {
  await app.tap('button', /^The bridge/);
  await app.seeThe('slider', 'Instant on the curve');
  await app.tap('button', 'Gear');
  const theme = () => app.evaluate(() => document.documentElement.dataset['theme'], undefined);
  expect(await theme()).toBe('day');
  await app.tap('switch', /^Night by the sun/);
  // Civil dusk was at 16:43:40 UTC: an hour ago.
  const until = async (wanted: string) => {
    for (let tries = 0; (await theme()) !== wanted && tries < 40; tries += 1) {
      await app.clock.advance(500);
    }
    expect(await theme()).toBe(wanted);
  };
  await until('night');
  await app.clock.jumpWall(new Date('2027-02-13T05:32:00Z'));
  await app.clock.advance(500);
  expect(await theme()).toBe('night');
  // Civil dawn: 05:33:00 UTC.
  await app.clock.jumpWall(new Date('2027-02-13T05:34:00Z'));
  await until('day');
  await app.tap('switch', 'Night');
  expect(await theme()).toBe('night');
});

test('the practice site is marked as invented and shows its own evening', async () => {
  const other = await takePhone({ size: { width: 360, height: 640 } });
  try {
    const fresh = other.window;
    await fresh.clock.start(new Date('2026-11-03T09:00:00Z'));
    await fresh.open(server.address);
    await fresh.tap('button', 'Try the practice outing');
    await fresh.tap('button', 'Light');
    await fresh.see(/^This site is invented, for practice/);
    await fresh.tap('button', /^The old ferry slip Invented/);
    await fresh.see('Invented');
    await fresh.see('12 Feb 2027');
    // 17:14:30 UTC.
    expect((await fresh.read('row', /^Sunset/)).replace(/\s+/g, ' ')).toBe('Sunset 17:14');
    expect(fresh.problems).toEqual([]);
  } finally {
    await other.throwAway();
  }
});
