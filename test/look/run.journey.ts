import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import {
  record,
  seeAsked,
  setUp,
  shoot,
  start,
  untilExpose,
  wait,
  wake,
} from '../journeys/acts/run.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Size } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import { axeFaults } from './axe.ts';
import { largeTextFaults } from './largeText.ts';
import {
  cutOff,
  outOfSight,
  strongestGreenOrBlue,
  tooClose,
  tooFaint,
  tooSmall,
} from './measure.ts';
import { rareSteps } from './rareSteps.ts';

const HAND: Size = { width: 390, height: 844 };
const UPRIGHT: readonly Size[] = [HAND, { width: 360, height: 640 }, { width: 320, height: 640 }];
const LYING: Size = { width: 844, height: 390 };

/** Where a screen stands, which decides how large its targets are; in the dark there is one line. */
type Kind = 'desk' | 'run' | 'dark';

type Look = (screen: string, kind: Kind) => Promise<void>;

/** The first screens of each place, before anything runs. */
async function walkPlaces(app: AppWindow, look: Look): Promise<void> {
  await app.seeThe('heading', 'Evenfall');
  await look('first start', 'desk');
  await app.tap('button', 'Try the practice outing');
  await app.seeThe('heading', 'Plans');
  await look('plans', 'desk');
  await app.tap('button', /^An evening at the old ferry slip/);
  await app.seeThe('button', /^1\. Base ISO/);
  await look('plan', 'desk');
  await app.tap('button', /^1\. Base ISO/);
  await look('set', 'desk');
  await app.tap('button', 'Back');
  await app.tap('button', /^A B B A/);
  await look('order', 'desk');
  await app.tap('button', 'Back');
  for (const place of ['Gear', 'Light', 'Log', 'Outing'] as const) {
    await app.tap('button', place);
    await app.seeThe('heading', place);
    await look(place, 'desk');
  }
}

/** The practice outing, with every sheet that can be opened on the way. */
async function walkRun(app: AppWindow, look: Look): Promise<void> {
  await app.tap('button', 'Start An evening at the old ferry slip');
  await app.seeThe('heading', 'Set up the rigs');
  // By daylight, and with the bar of places.
  await look('set-up', 'desk');
  await app.tap('button', 'Show the clock');
  await app.tap('button', /^Photographed with Rig A Alder 44/);
  await app.seeThe('button', /^Photographed with Rig A Alder 44 at \d/);
  await look('clock frame', 'run');
  await app.tap('button', 'Back');
  await setUp(app, ['A Alder 44', 'B Birch 36']);
  await look('mount, the reference', 'run');
  await app.tap('button', 'More');
  await look('more', 'run');
  for (const [act, title] of [
    ['Note', 'Note'],
    ['Meter reading', 'Meter reading'],
    ['File number', 'Next file number'],
    ['Battery changed', 'Battery changed'],
    ['End the outing', 'End the outing'],
  ] as const) {
    await app.tap('button', act);
    await app.seeThe('dialog', title);
    await look(`more: ${act}`, 'run');
    if (act === 'Meter reading') {
      await app.tap('radio', 'Test frame');
      await look('more: a test frame', 'run');
    }
    await app.tap('button', 'Close');
    await app.tap('button', 'More');
  }
  await app.tap('button', 'Pause');
  await seeAsked(app, 'Paused');
  await look('paused', 'run');
  await app.tap('button', 'Go on');
  await app.tap('button', 'A Alder 44 is on the tripod');
  await seeAsked(app, 'Dial');
  await look('dial', 'run');
  await app.tap('button', 'More');
  await app.tap('button', 'Lens touched');
  await app.tap('button', /Alder 44/, { within: { role: 'dialog', name: 'Lens touched' } });
  await seeAsked(app, 'Focus');
  await look('focus', 'run');
  await untilExpose(app);
  await look('expose', 'run');
  await start(app);
  await look('lead-in', 'run');
  await wait(app, 3);
  await look('running', 'run');
  await wait(app, 10);
  await app.seeThe('button', 'Tap once to light the screen');
  await look('dark', 'dark');
  await wait(app, 60);
  await wake(app);
  await seeAsked(app, 'Record');
  await look('record', 'run');
  await app.tap('button', 'Set otherwise');
  await look('set otherwise', 'run');
  await app.tap('button', 'Close');
  await record(app);
  await seeAsked(app, 'Mount');
  await look('mount, with a verdict to give', 'run');
  await untilExpose(app);
  await shoot(app, 70);
  await app.tap('button', /^(Not good|Moved)$/);
  if ((await app.count('button', 'Retake it')) === 0) await app.tap('button', 'Moved');
  await app.seeThe('button', 'Retake it');
  await look('a verdict with its retake', 'run');
  for (let frames = 0; frames < 12; frames += 1) {
    await untilExpose(app);
    if ((await app.count('button', /^Start Bulb/)) > 0) break;
    await shoot(app, 70);
  }
  await start(app);
  await wait(app, 4);
  await look('bulb', 'run');
  await wait(app, 60);
  await wake(app);
  await look('bulb, over', 'run');
  await record(app);
  for (let frames = 0; frames < 12; frames += 1) {
    await untilExpose(app);
    if ((await app.count('button', 'Taken')) > 0) break;
    await shoot(app, 70);
  }
  await look('short', 'run');
  await shoot(app, 0);
  await untilExpose(app);
  await look('short, with a verdict to give', 'run');
  await app.tap('button', 'More');
  await app.tap('button', 'End the outing');
  await app.tap('button', 'End the outing', {
    within: { role: 'dialog', name: 'End the outing' },
  });
  await seeAsked(app, 'Ended');
  await look('ended', 'desk');
  await app.tap('button', 'Put the outing aside');
}

/** Everything that is wrong with a screen at one size, each in words. */
async function faultsOf(app: AppWindow, kind: Kind, size: Size): Promise<readonly string[]> {
  if (kind === 'dark') return [];
  const lying = size.width > size.height;
  const run = kind === 'run';
  const found = [
    ...(await cutOff(app)),
    ...(await tooFaint(app)),
    ...(await tooSmall(app, run ? 64 : 48)),
    ...(run ? await tooClose(app, 12) : []),
    // On the narrowest phone a long mark takes a line for itself.
    ...(run && size.width >= 360
      ? await outOfSight(app, '.to-dial:not(.small) .mark, .count, .clock-face p')
      : []),
    ...(run && !lying ? await actTooSmall(app) : []),
  ];
  return found.map((fault) => `${size.width} x ${size.height}: ${fault}`);
}

/** The primary act: over the full width at the foot, for gloves. */
const actTooSmall = (app: AppWindow): Promise<readonly string[]> =>
  app.evaluate(() => {
    const root = document.querySelector('dialog:modal') ?? document.body;
    return [...root.querySelectorAll('.button.act')].flatMap((act) => {
      const { width, height, bottom } = act.getBoundingClientRect();
      const good = width >= innerWidth - 2 * 20 && height >= 116 && bottom >= innerHeight - 40;
      return good ? [] : [`the one act, ${act.textContent}: ${width} x ${height} to ${bottom}`];
    });
  }, undefined);

let server: AppServer;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
});
afterAll(async () => {
  await server.stop();
});

test.each(['dark', 'light'] as const)(
  'every screen of a run in a %s room',
  async (scheme) => {
    const phone = await takePhone({ zone: 'Europe/London' });
    const app = phone.window;
    const faults: string[] = [];
    let screens = 0;
    // The run looks at the clock five times a second, and at the height of the screen with it.
    let lit = true;
    const settle = async () => {
      // While a frame exposes, looking at it for long must not let the screen go dark.
      if (lit) await app.press('Shift');
      await app.clock.advance(250);
    };
    const look: Look = async (screen, kind) => {
      screens += 1;
      lit = kind !== 'dark';
      for (const size of [LYING, ...UPRIGHT.toReversed()]) {
        await app.resize(size);
        await settle();
        const found = await faultsOf(app, kind, size);
        faults.push(...found.map((fault) => `${screen}, ${fault}`));
      }
      if (kind !== 'dark') {
        const found = [
          ...(await axeFaults(app)),
          // The type is of one size in both themes.
          ...(scheme === 'light' ? await largeTextFaults(app, HAND, settle) : []),
        ];
        faults.push(...found.map((fault) => `${screen}: ${fault}`));
      }
      if (scheme === 'light') return;
      const strongest = await strongestGreenOrBlue(app);
      if (strongest > 8) faults.push(`${screen}: green or blue of ${strongest}`);
    };
    try {
      await app.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
      await app.prefer({ scheme });
      await app.open(server.address);
      await walkPlaces(app, look);
      await walkRun(app, look);
      await rareSteps(app, (screen) => look(screen, 'run'));
      expect(faults).toEqual([]);
      expect(screens).toBe(41);
      expect(app.problems).toEqual([]);
    } finally {
      await phone.throwAway();
    }
  },
  600_000,
);
