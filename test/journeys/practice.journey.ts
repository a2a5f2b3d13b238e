import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import {
  asked,
  record,
  seeAsked,
  setUp,
  shoot,
  start,
  untilExpose,
  wait,
  wake,
} from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';

/*
 * The practice outing, walked whole as a person would: online once, then without
 * a server until the files are out. One test is one evening: each part goes on
 * where the one before it stopped.
 */

let server: AppServer;
let phone: Phone;
/** The evening's own time; a restarted browser does not know the clock of the one before. */
let nowMs = Date.UTC(2027, 1, 12, 17, 30);

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone({ zone: 'Europe/London' });
  await phone.window.clock.start(new Date(nowMs));
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

const A = 'A Alder 44';
const B = 'B Birch 36';

describe('the practice outing', () => {
  test('begins with two sentences and two buttons, and shows its plan', async () => {
    await phone.window.open(server.address);
    await phone.window.seeThe('button', 'Add a body');
    await phone.window.tap('button', 'Try the practice outing');
    await phone.window.seeThe('heading', 'Plans');
    await phone.window.see('An evening at the old ferry slip');
  });

  test('is ready for offline before the network goes', async () => {
    await phone.window.tap('button', 'Gear');
    await phone.window.see('Ready for offline.');
    await server.stop();
  });

  test('is set up rig by rig', async () => {
    await phone.window.tap('button', 'Outing');
    await phone.window.tap('button', 'Start An evening at the old ferry slip');
    await phone.window.seeThe('heading', 'Set up the rigs');
    await phone.window.type(`Next file number, ${A}`, '101');
    await phone.window.type(`Next file number, ${B}`, '9001');
    await phone.window.see('The next file is ALD_0101');
    await setUp(phone.window, [A, B]);
  });

  test('comes back to the right second after a reload in mid-exposure', async () => {
    await untilExpose(phone.window);
    await start(phone.window);
    await wait(phone.window, 2 + 20);
    await phone.window.reload();
    await seeAsked(phone.window, 'Exposing');
    const left = await phone.window.read('timer', A);
    expect(left).toMatch(/^0:4[2-4]/);
    await wait(phone.window, 45);
    await wake(phone.window);
    await record(phone.window);
    await phone.window.tap('button', 'Good');
  });

  test('logs what was really set where it was not as planned', async () => {
    await untilExpose(phone.window);
    await start(phone.window);
    await wait(phone.window, 63);
    await wake(phone.window);
    await phone.window.tap('button', 'Set otherwise');
    await phone.window.tap('button', 'ISO: one click up');
    await phone.window.tap('button', 'Record this');
    // The dial stands on ISO 125 now, and the next frame wants 100.
    await seeAsked(phone.window, 'Dial');
    expect(await phone.window.count('button', 'Dials are set')).toBe(1);
    await untilExpose(phone.window);
  });

  test('comes back after a kill in mid-exposure, with what ran while it was gone', async () => {
    await start(phone.window);
    await wait(phone.window, 10);
    nowMs = await phone.window.evaluate(() => Date.now(), undefined);
    await phone.kill();
    await phone.restart();
    nowMs += 25_000;
    await phone.window.clock.start(new Date(nowMs));
    await phone.window.open(server.address);
    await seeAsked(phone.window, 'Exposing');
    // 2 s of lead-in: 33 of the 60 s have gone.
    expect(await phone.window.read('timer', B)).toMatch(/^0:2[5-8]/);
    await wait(phone.window, 30);
    await wake(phone.window);
    await record(phone.window);
  });

  test('takes a frame again at once when it is no good', async () => {
    await shoot(phone.window, 68);
    await phone.window.tap('button', 'Moved');
    await phone.window.tap('button', 'Retake it');
    await phone.window.see(/retake/);
    await shoot(phone.window, 68);
  });

  test('measures a bulb that ran over', async () => {
    await untilExpose(phone.window);
    await start(phone.window);
    await wait(phone.window, 2 + 60 + 30);
    await phone.window.see(/over of 1:00/);
    await record(phone.window);
  });

  test('walks the rest of its sixteen frames', async () => {
    const { window } = phone;
    for (let frame = 0; frame < 20 && (await asked(window)) !== 'List done'; frame += 1) {
      await shoot(window, 64);
    }
    await seeAsked(window, 'List done');
    await window.tap('button', 'End the outing');
    await seeAsked(window, 'Ended');
    expect(window.problems).toEqual([]);
  });
});
