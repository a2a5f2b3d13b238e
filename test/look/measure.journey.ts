import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { takePhone } from '../journeys/driver/chromium.ts';
import type { AppWindow, Phone } from '../journeys/driver/phone.ts';
import { type AppServer, startServer } from '../journeys/driver/server.ts';
import {
  cutOff,
  outOfReach,
  outOfSight,
  overlaid,
  strongestGreenOrBlue,
  tooClose,
  tooFaint,
  tooSmall,
} from './measure.ts';

/*
 * Each measure finds what is put wrong for it on a screen that is right otherwise: else a measure
 * that sees nothing would pass every screen.
 */

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  app = phone.window;
  await app.prefer({ scheme: 'dark' });
});
afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});
beforeEach(async () => {
  await app.open(server.address);
  await app.seeThe('heading', 'Evenfall');
});

/** Puts something onto the screen, over what is there. */
const put = (html: string, style = 'position: fixed; top: 0; left: 0'): Promise<void> =>
  app.evaluate(
    ({ content, css }) => {
      const box = document.createElement('div');
      box.style.cssText = css;
      box.innerHTML = content;
      // The page's policy allows no style in what is parsed.
      for (const element of box.querySelectorAll<HTMLElement>('[data-css]')) {
        element.style.cssText = element.dataset['css'] ?? '';
      }
      document.body.append(box);
    },
    { content: html, css: style },
  );

test('what runs off the screen, is cut, or scrolls sideways', async () => {
  expect(await cutOff(app)).toEqual([]);
  await put('<p>Beyond the edge</p>', 'position: fixed; top: 0; left: 300px; width: 200px');
  await put('<p data-css="width: 400px">Wide</p>', 'width: 100px; overflow: auto');
  await put('<p>Half of it</p>', 'height: 4px; overflow: hidden');
  const faults = await cutOff(app);
  expect(faults).toContain('off the screen: P Beyond the edge');
  expect(faults).toContain('sideways: DIV Wide');
  expect(faults).toContain('cut: Half of it');
});

test('a figure that has to be scrolled to', async () => {
  await put('<div class="scroller" data-css="height: 60px; overflow: auto"><b>64</b></div>');
  expect(await outOfSight(app, 'b')).toEqual([]);
  await put(
    '<div class="scroller" data-css="height: 60px; overflow: auto"><i data-css="display: block; padding-top: 90px">100</i></div>',
  );
  expect(await outOfSight(app, 'i')).toEqual([expect.stringMatching(/^100 ends \d+ px too low$/)]);
});

test('text over text, and the one act out of reach', async () => {
  expect(await overlaid(app)).toEqual([]);
  expect(await outOfReach(app)).toEqual([]);
  await put('<p>Above</p><p data-css="margin-top: -1.2em">Below</p>');
  expect(await overlaid(app)).toContain('overlaid: Above and Below');
  await put(
    '<div class="step-scroll" data-css="height: 20px; overflow: auto"><p>One</p><p>Two</p><p>Three</p></div><div class="step-foot"><button class="act">Go</button></div>',
    'position: fixed; top: calc(100% - 30px); left: 0',
  );
  const faults = await outOfReach(app);
  expect(faults).toContainEqual(expect.stringMatching(/^out of reach: Go, /));
  expect(faults).toContainEqual(expect.stringMatching(/^no room to read: \d+ of \d+ px$/));
});

test('targets that are small or stand close', async () => {
  expect(await tooSmall(app, 48)).toEqual([]);
  await put(
    '<button data-css="width: 60px; height: 30px">Low</button><button data-css="width: 60px; height: 90px">High</button>',
    'position: fixed; top: 0; left: 0; display: flex; gap: 4px',
  );
  expect(await tooSmall(app, 48)).toEqual(['Low 60 x 30']);
  expect(await tooClose(app, 12)).toContain('Low and High 4.0');
  expect((await tooClose(app, 3)).filter((fault) => fault.startsWith('Low'))).toEqual([]);
});

test('text and lines that are faint', async () => {
  expect(await tooFaint(app)).toEqual([]);
  // 4.5:1 on black takes #eb0000, 3:1 takes #b70000 (reference: field-reliability, part D).
  await put('<p data-css="color: #b70000; font-size: 20px">Small</p>');
  await put('<p data-css="color: #b70000; font-size: 24px">Large</p>');
  await put('<p data-css="color: #a00000; font-size: 24px">Faint</p>');
  await put('<p data-css="border: 1px solid #800000; color: #ff0000">Framed</p>');
  const faults = await tooFaint(app);
  expect(faults.filter((fault) => /Large$/.test(fault))).toEqual([]);
  expect(faults).toContainEqual(expect.stringMatching(/^text 3\.0\d: P\. Small$/));
  expect(faults).toContainEqual(expect.stringMatching(/^text 2\.\d\d: P\. Faint$/));
  expect(faults).toContainEqual(expect.stringMatching(/^line \d\.\d\d: P\. Framed$/));
});

test('light that a dark-adapted eye sees', async () => {
  expect(await strongestGreenOrBlue(app)).toBeLessThanOrEqual(8);
  await put('', 'position: fixed; top: 0; left: 0; width: 1px; height: 1px; background: #ff0900');
  expect(await strongestGreenOrBlue(app)).toBe(9);
});
