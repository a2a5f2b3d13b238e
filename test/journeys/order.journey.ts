import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { cutOff, strongestGreenOrBlue, tooFaint, tooSmall } from '../look/measure.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * The order of frames: the practice outing planned with the fewest swaps and as fair as can be, a set
 * held, turns moved by hand, and a long search that is cancelled. Each test goes on where the one
 * before it stopped.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({
    size: { width: 390, height: 844 },
    touch: true,
    zone: 'Europe/London',
  });
  app = phone.window;
  await app.open(server.address);
  await app.tap('button', 'Try the practice outing');
  await app.tap('button', /^An evening at the old ferry slip/);
  await app.see(/^Right from/);
  await app.tap('button', /^A B B A/);
  await app.seeThe('heading', 'Order of frames');
});

afterAll(async () => {
  expect(app.problems).toEqual([]);
  await phone.throwAway();
  await server.stop();
});

/** Waits for what a busy machine may take a minute over. */
async function until(isTrue: () => Promise<boolean>, what: string): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    if (await isTrue()) return;
    await new Promise((again) => setTimeout(again, 200));
  }
  throw new Error(`waited in vain for ${what}`);
}
const found = (): Promise<void> =>
  until(async () => (await app.count('progressbar')) === 0, 'the search to end');

/** What the trade says of the order that is looked at. */
async function point() {
  const text = (await app.read('region', 'Few swaps or fair')).replace(/\s+/g, ' ');
  const said =
    /(?<place>Fewest swaps|Fairest|In between): (?<swaps>\d+) swaps?, (?<time>[\d:]+), (?<unfair>[\d.]+) stop unfair/.exec(
      text,
    );
  if (!said?.groups) throw new Error(`no point in: ${text}`);
  const { place, swaps, unfair } = said.groups;
  return { place, swaps: Number(swaps), unfair: Number(unfair) };
}

/** A turn as the list shows it. */
interface Turn {
  /** As its buttons name it: 'A, ISO 12800, over, pass 1'. */
  readonly name: string;
  readonly held: boolean;
}

async function turns(): Promise<readonly Turn[]> {
  const text = (await app.read('list', 'Turns')).replace(/\s+/g, ' ');
  return [...text.matchAll(/([A-D]) (.+?) (pass \d+)(, held)?/g)].map(
    ([, rig, set, pass, held]) => ({
      name: `${rig}, ${set}, ${pass}`,
      held: held !== undefined,
    }),
  );
}
const names = async () => (await turns()).map(({ name }) => name);

test('every named order stands with its fade, heat, swaps and minutes', async () => {
  const figures = (swaps: number) =>
    `\\d\\.\\d\\d fade \\d\\.\\d\\d heat ${swaps} swaps? \\d+:\\d\\d time`;
  const rows: readonly (readonly [string, number])[] = [
    ['Rig by rig 1 pass', 1],
    ['A B 1 pass', 4],
    ['A B B A 2 passes', 8],
    ['A B A B 2 passes', 12],
    ['A B B A B A A B 4 passes', 20],
    ['Side by side 1 pass', 0],
  ];
  for (const [name, swaps] of rows) {
    await app.seeThe('radio', new RegExp(`^${name} ${figures(swaps)}`));
  }
  await app.see(/^Reckoned for a start at 17:\d\d\.$/);
  expect(await app.count('radio', /^Computed order/)).toBe(0);
});

test('the computed order is looked for, and said to be the cheapest', async () => {
  await app.tap('button', 'Look for the cheapest order');
  await found();
  // 16 turns of two rigs: proven.
  await app.seeThe('radio', /^Computed order .*No order of these frames is cheaper/);
  expect(await app.read('button', /^What an order costs/)).toMatch(
    /This order 0\.\d\d, the computed 0\.\d\d stop/,
  );
});

test('the practice outing is planned both ways: as fair as can be, and with the fewest swaps', async () => {
  // By keys, as one that cannot point does it.
  await app.tap('slider', 'Few swaps or fair');
  await app.press('End');
  const fairest = await point();
  expect(fairest.place).toBe('Fairest');
  await app.tap('button', 'Take this order');
  await app.see('This order is taken.');
  expect(await app.count('radio', /^A B B A 2 passes/)).toBe(1);

  await app.tap('slider', 'Few swaps or fair');
  await app.press('Home');
  const fewest = await point();
  expect(fewest.place).toBe('Fewest swaps');
  expect(fewest.swaps).toBeLessThan(fairest.swaps);
  expect(fewest.unfair).toBeGreaterThan(fairest.unfair);
  await app.see(/^Fewest swaps: .* Against the fairest: \d+ swaps? fewer, \d+\.\d\d stop more/);
  await app.tap('button', 'Take this order');
  await app.see('Replaced the order of frames.');
  await app.see('This order is taken.');
  await app.tap('button', 'Undo');
  await app.seeThe('button', 'Take this order');

  // By the buttons.
  while ((await point()).place !== 'Fairest') await app.tap('button', 'Fairer');
  await app.see('This order is taken.');
});

test('a taken order outlives a dead battery', async () => {
  await phone.kill();
  await phone.restart();
  app = phone.window;
  await app.open(server.address);
  await goTo(app, 'Plan');
  await app.seeThe('heading', 'An evening at the old ferry slip');
  await app.see(/^Right from/);
  await app.tap('button', /^\d+ swaps, about|swaps, about/);
  await app.seeThe('radio', /^Own order As you arranged it|^Own order/);
  await app.seeThe('button', 'Look for the cheapest order');
});

test('a set that is held keeps its places when an order is looked for and taken', async () => {
  await app.tap('radio', /^A B B A 2 passes/);
  await app.tap('button', 'Undo');
  await app.tap('radio', /^A B B A 2 passes/);
  await app.tap('button', 'Rearrange by hand');
  const before = await names();
  expect(before.length).toBe(16);
  await app.tap('button', /^Sets held in place/);
  await app.tap('switch', 'Base ISO, well exposed');
  // In the field there is no network: the part that searches lies on the phone.
  await app.offline(true);
  await app.tap('button', 'Look for the cheapest order');
  await found();
  await app.offline(false);
  await app.tap('radio', /^Computed order/);
  await until(async () => (await names()).join() !== before.join(), 'the order to be taken');
  const after = await turns();
  const ofHeld = (list: readonly string[]) =>
    list.map((name) => (name.includes('Base ISO, well exposed') ? name : null));
  expect(ofHeld(after.map(({ name }) => name))).toEqual(ofHeld(before));
  expect(after.filter(({ held }) => held).length).toBe(4);
});

test('a turn moved by hand shows at once what that costs, and by how much more than the computed', async () => {
  await app.see(/As cheap as the computed order\.$/);
  const before = await names();
  await app.tap('button', 'Move A, Base ISO, two stops under, pass 1 down');
  await app.see(/\+\d+\.\d\d stop against the computed order\.$/);
  expect(await names()).not.toEqual(before);
  await app.seeThe('radio', /^Own order/);
  await app.tap('button', 'Move A, Base ISO, well exposed, pass 1 down');
  await app.see(/Base ISO, well exposed is held in place\. Let it go first\./);
  await app.see(/^This order costs \d+\.\d\d stop: \d+ swaps?, [\d:]+\./);
});

test('a list that has changed says so, and is looked at again', async () => {
  await app.tap('switch', 'Base ISO, well exposed');
  await app.see('The list has changed since an order was looked for.');
  await app.tap('button', 'Done');
  await app.tap('button', 'Back');
  await app.tap('button', /^4\. ISO 12800, far under/);
  await app.tap('button', 'Delete the set');
  await app.tap('button', /swaps?, about/);
  await app.see(/^The list has changed since its order was made/);
  await app.tap('button', 'Keep it as it stands');
  await app.seeGone(/^The list has changed since its order was made/);
});

test('each rig at a time: it comes onto the tripod once, also by hand', async () => {
  await app.tap('radio', 'One rig at a time');
  await app.seeThe('radio', /^Rig by rig .* 1 swap /);
  await app.tap('button', 'Rearrange by hand');
  const list = await names();
  const last = list.findLastIndex((name) => name.startsWith('A'));
  expect(list.slice(0, last + 1).every((name) => name.startsWith('A'))).toBe(true);
  await app.tap('button', `Move ${list[last]} down`);
  await app.see(/would bring a rig back/);
  expect(await names()).toEqual(list);
  await app.tap('button', 'Done');
  await app.tap('button', 'Back');
});

test('a long search runs beside the screen, which answers at once, and can be cancelled', async () => {
  const own = await takePhone({ touch: true });
  const app = own.window;
  await app.open(server.address);
  await app.tap('button', 'Try the practice outing');
  await app.seeThe('heading', 'Plans');
  await goTo(app, 'Gear');
  await app.tap('button', 'Put a rig together');
  await app.tap('radio', /^Birch 36/);
  await app.tap('radio', /^Cedar 17 mm/);
  await app.tap('button', 'Save the rig');
  await app.seeThe('heading', /^Rig D/);
  await goTo(app, 'Plan');
  await app.tap('button', 'New plan');
  for (const rig of [/^Rig A/, /^Rig B/, /^Rig C/, /^Rig D/]) await app.tap('checkbox', rig);
  await app.tap('radio', /^Mixed dusk/);
  await app.tap('button', 'Make the plan');
  await app.tap('button', /^A B C D/);
  await app.tap('radio', /^A B C D D C B A D C B A A B C D/);
  await app.see(/^Goes through the orders of 64 turns/);
  await app.see(/^The light is not known/);
  await app.tap('button', 'Look for the cheapest order');
  await app.seeThe('progressbar', /^Looking for the cheapest order/);

  /** How long from a touch to the second paint after it, and the longest gap between paints, ms. */
  const measured = app.evaluate(
    () =>
      new Promise<{ answer: number; gap: number }>((done) => {
        let last = performance.now();
        let gap = 0;
        let touched: number | null = null;
        let answer: number | null = null;
        document.addEventListener('click', ({ timeStamp }) => {
          touched ??= timeStamp;
          requestAnimationFrame(() =>
            requestAnimationFrame((now) => {
              answer ??= now - (touched ?? now);
            }),
          );
        });
        const watch = (now: number): void => {
          gap = Math.max(gap, now - last);
          last = now;
          if (answer !== null && now - (touched ?? now) > 2000) done({ answer, gap });
          else requestAnimationFrame(watch);
        };
        requestAnimationFrame(watch);
      }),
    undefined,
  );
  await app.tap('switch', 'Night');
  const { answer, gap } = await measured;
  expect(answer).toBeLessThan(300);
  expect(gap).toBeLessThan(500);
  expect(await app.count('progressbar')).toBe(1);
  const share = async () =>
    Number(/(\d+) %/.exec(await app.read('region', 'Orders'))?.[1] ?? Number.NaN);
  const early = await share();
  await until(async () => (await share()) > early, 'the search to get on');

  await app.tap('button', 'Cancel');
  await app.seeGone(/^Looking for the cheapest order/);
  await app.seeThe('button', /^(Look for the cheapest order|Look again)$/);
  expect(await app.count('radio', /^A B C D D C B A D C B A A B C D 4 passes unknown fade/)).toBe(
    1,
  );
  expect(app.problems).toEqual([]);
  await own.throwAway();
});

test('the screens stand on small, low and wide windows, by day and by night', async () => {
  await app.tap('button', /swaps?, about/);
  await app.tap('radio', /^A B B A 2 passes/);
  await app.tap('button', /^Look (again|for the cheapest order)$/);
  await found();
  await app.tap('button', 'Rearrange by hand');
  await app.tap('button', /^What an order costs/);
  await app.tap('button', /^The trade as a table/);
  const sizes = [
    { width: 390, height: 844 },
    { width: 360, height: 640 },
    { width: 320, height: 568 },
    { width: 844, height: 390 },
    { width: 1280, height: 800 },
  ];
  for (const scheme of ['day', 'night'] as const) {
    if (scheme === 'night') await app.tap('switch', 'Night');
    for (const size of sizes) {
      await app.resize(size);
      const at = `${scheme} ${size.width} x ${size.height}`;
      expect(await cutOff(app), at).toEqual([]);
      expect(await tooSmall(app, 48), at).toEqual([]);
      expect(await tooFaint(app), at).toEqual([]);
      if (scheme === 'night') {
        expect(await strongestGreenOrBlue(app), at).toBeLessThanOrEqual(8);
        await app.tap('slider', 'Few swaps or fair');
        expect(await strongestGreenOrBlue(app), at).toBeLessThanOrEqual(8);
      }
    }
  }
});
