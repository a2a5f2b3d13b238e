import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import {
  asked,
  record,
  setUp,
  shoot,
  start,
  unhurried,
  untilExpose,
  wait,
  wake,
} from '../journeys/acts/run.ts';
import { buildApp } from '../journeys/driver/build.ts';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow } from '../journeys/driver/phone.ts';
import { startServer } from '../journeys/driver/server.ts';
import { show } from './measure.ts';
import { rareSteps } from './rareSteps.ts';

/** The practice outing's own evening, early enough for its start. */
const EVENING = Date.UTC(2027, 1, 12, 17, 30);
const THEMES = { dark: 'night', light: 'day' } as const;

/** Waits for what comes in a later part and for the paint after it. */
const settled = () => new Promise((painted) => setTimeout(painted, 700));

/**
 * Takes a picture of every screen in both themes, on a production build, along
 * the practice outing. The README shows some of them.
 *
 * @param into the folder for the PNGs
 * @returns the files written
 */
export async function takePictures(into: string): Promise<readonly string[]> {
  await rm(into, { recursive: true, force: true });
  await mkdir(into, { recursive: true });
  const folder = await buildApp();
  const server = await startServer(folder);
  const written: string[] = [];
  try {
    for (const scheme of ['dark', 'light'] as const) {
      const phone = await takePhone({ zone: 'Europe/London' });
      try {
        await phone.window.prefer({ scheme });
        await phone.window.clock.start(new Date(EVENING));
        await phone.window.open(server.address);
        await walk(phone.window, async (screen) => {
          await settled();
          const file = join(into, `${screen}-${THEMES[scheme]}.png`);
          await writeFile(file, await phone.window.picture());
          written.push(file);
        });
      } finally {
        await phone.throwAway();
      }
    }
  } finally {
    await server.stop();
    await rm(folder, { recursive: true });
  }
  return written;
}

/** The practice outing from the first start to the files, stopping at each screen. */
async function walk(window: AppWindow, picture: (screen: string) => Promise<void>) {
  await window.seeThe('heading', 'Evenfall');
  await picture('first-start');
  await window.tap('button', 'Try the practice outing');
  await window.seeThe('heading', 'Plans');
  await window.tap('button', 'Gear');
  await picture('gear');
  await window.tap('button', /^Alder 44/);
  await picture('body');
  await window.tap('button', 'Back');
  await window.tap('button', /^Rig B/);
  await picture('rig');
  await window.tap('button', 'Back');
  await window.tap('button', 'Light');
  await window.tap('button', /^The old ferry slip/);
  await window.seeThe('slider', 'Instant on the curve');
  await picture('light');
  await window.tap('button', 'Plan');
  await window.tap('button', /^An evening at the old ferry slip/);
  await window.see(/^Right from/);
  await picture('plan');
  await show(window, '.timeline');
  await picture('plan-timeline');
  await window.tap('button', /^Rest and heat/);
  await picture('plan-rests');
  await window.tap('button', 'Back');
  await window.tap('button', /^1\. Base ISO/);
  await picture('set');
  await window.tap('button', 'Back');
  await window.tap('button', /^A B B A/);
  await picture('order');
  await window.tap('button', 'Back');
  await outing(window, picture);
  await log(window, picture);
  await window.tap('button', 'Outing');
  await window.tap('button', 'Put the outing aside');
  await rareSteps(window, picture);
}

async function outing(window: AppWindow, picture: (screen: string) => Promise<void>) {
  await window.tap('button', 'Outing');
  await picture('begin');
  await window.tap('button', 'Start An evening at the old ferry slip');
  await window.seeThe('heading', 'Set up the rigs');
  await picture('set-up');
  await setUp(window, ['A Alder 44', 'B Birch 36']);
  await picture('mount-reference');
  await window.tap('button', 'A Alder 44 is on the tripod');
  await window.seeThe('heading', 'Dial');
  await picture('dial');
  await window.tap('button', 'Dials are set');
  await window.seeThe('heading', 'Expose');
  await picture('expose');
  await start(window);
  await picture('lead-in');
  await wait(window, 5);
  await picture('running');
  await wait(window, 20);
  await picture('dark');
  await wake(window);
  await wait(window, 45);
  await wake(window);
  await window.seeThe('heading', 'Record');
  await picture('record');
  await window.tap('button', 'Set otherwise');
  await picture('otherwise');
  await window.tap('button', 'Close');
  await unhurried();
  await record(window);
  await window.seeThe('heading', 'Mount');
  await picture('mount');
  await window.tap('button', 'More');
  await picture('more');
  await window.tap('button', 'Meter reading');
  await picture('reading');
  await window.tap('button', 'Close');
  await window.tap('button', 'Moved');
  await window.seeThe('button', 'Retake it');
  await picture('verdict');
  let short = false;
  for (let frame = 0; frame < 20 && (await asked(window)) !== 'List done'; frame += 1) {
    await untilExpose(window);
    if (!short && (await window.count('button', 'Taken')) > 0) await picture('short');
    short ||= (await window.count('button', 'Taken')) > 0;
    await shoot(window, 70);
  }
  await picture('list-done');
  await window.tap('button', 'End the outing');
  await window.seeThe('heading', 'Ended');
  await picture('ended');
}

async function log(window: AppWindow, picture: (screen: string) => Promise<void>) {
  await window.tap('button', 'Open the log');
  await window.seeThe('heading', 'An evening at the old ferry slip');
  await picture('log');
  await window.tap('button', /^Ledger/);
  await window.seeThe('heading', 'Ledger');
  await picture('sets');
  // The first set: 0.67 by aperture, 0.09 by time and next to no fade.
  await window.tap('button', /Differs by 0\.7\d stop/);
  await window.see(/^The pair differs by/);
  await picture('ledger');
  await window.tap('button', 'Back');
  await window.tap('button', 'Back');
  await window.tap('button', /^Export/);
  await picture('export');
}
