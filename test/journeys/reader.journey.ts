import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { A, dialled, frame } from '../evenings/evening.ts';
import { backupOf, takeIn } from './acts/backups.ts';
import { seeAsked, until } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * A frame by keyboard alone, as whoever cannot see the screen or has no finger for it does it: Tab
 * and Enter, the focus always on the screen and always to be seen, the steps heard by their
 * headings, and the countdown not read out.
 *
 * Seen to fail without `keepFocus`, without the heading's `tabIndex`, with `outline: none` on it, where
 * `keepFocus` knows only the heading and not the line before 'Tick all the rest', where Enter does
 * nothing on a heading; of what is heard, with a heading that is not live (nothing said at the end)
 * and a countdown that is (a word a second).
 */

/** The practice body's self-timer and the exposure, s. */
const [LEAD_IN_S, LONG_S] = [2, 64];
const DARK = 'Tap once to light the screen';
const LAST_LINE = /^Focus set by daylight/;
const FRAMES = [
  frame('base', A, dialled('6.3', String(LONG_S), '100')),
  frame('next', A, dialled('8', '32', '400')),
];

let server: AppServer;
let phone: Phone;
let app: AppWindow;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  app = phone.window;
  await app.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
  await app.open(server.address);
  await takeIn(app, backupOf('Heard', FRAMES));
  await goTo(app, 'Outing');
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
});

interface Focused {
  /** What it is: the name of its element. */
  readonly what: string;
  readonly says: string;
  /** Inside the place, not fallen to the page or into the bar of places. */
  readonly isInPlace: boolean;
  /** The ring around it, px; of a field or of a line to tick off it is around the line. */
  readonly ringPx: number;
}

/** Where the keyboard is. */
const focused = (): Promise<Focused> =>
  app.evaluate(() => {
    const { activeElement } = document;
    const shown: Element = activeElement?.closest('label') ?? activeElement ?? document.body;
    const ringOf = (element: Element | null | undefined): number => {
      if (!element) return 0;
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
      const isSeen = outlineStyle !== 'none' && !/, 0\)$/.test(outlineColor);
      return isSeen ? Number.parseFloat(outlineWidth) : 0;
    };
    const isField = activeElement?.matches('input') ?? false;
    return {
      what: activeElement?.localName ?? '',
      says: (shown.ariaLabel ?? (shown as HTMLElement).innerText).replace(/\s+/g, ' ').trim(),
      isInPlace: activeElement?.closest('main') != null,
      ringPx: Math.max(ringOf(shown), isField ? ringOf(activeElement?.parentElement) : 0),
    };
  }, undefined);

/** Goes on by Tab to a thing that says this; each on the way shows that it has the focus. */
async function tabTo(says: RegExp): Promise<void> {
  for (let tabs = 0; tabs < 50; tabs += 1) {
    await app.press('Tab');
    const now = await focused();
    // The last thing of a page is followed by the browser's own.
    if (now.what === 'body') continue;
    expect(now.ringPx, `the ring of ${now.what} ${now.says}`).toBeGreaterThan(0);
    if (says.test(now.says)) return;
  }
  throw new Error(`Tab never came to ${says}`);
}

/** Waits until the heading of this step has the focus, and shows it. */
async function onHeading(step: string): Promise<void> {
  await until(async () => (await focused()).says === step, `the focus on ${step}`);
  const now = await focused();
  expect(now).toMatchObject({ what: 'h1', isInPlace: true });
  expect(now.ringPx, `the ring of ${step}`).toBeGreaterThan(0);
}

/** A second press within 400 ms is taken for a bounce, by the page's clock. */
const unbounced = () => app.clock.advance(500);

declare global {
  /** What a reader of the screen was given to say by itself. */
  var evenfallSaid: string[];
}

/** Runs in the page: notes each change of what is read out when it changes. */
function listen(): void {
  const said: string[] = [];
  globalThis.evenfallSaid = said;
  const LIVE = '[aria-live], [role=status], [role=alert], [role=timer]';
  new MutationObserver((changes) => {
    const regions = new Set<Element>();
    for (const { target } of changes) {
      const around = target instanceof Element ? target : target.parentElement;
      const region = around?.closest(LIVE);
      if (region && region.getAttribute('aria-live') !== 'off') regions.add(region);
    }
    for (const region of regions) said.push((region as HTMLElement).innerText);
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
}

describe('by Tab and Enter', () => {
  test('from the plan to the set-up sheet, and past what vanishes there', async () => {
    await tabTo(/^Start Heard$/);
    await app.press('Enter');
    await onHeading('Set up the rigs');
    await tabTo(/^Tick all the rest$/);
    await app.press('Enter');
    await until(
      async () => (await app.count('button', 'Tick all the rest')) === 0,
      'every line to be ticked',
    );
    // The line above what went.
    await until(async () => (await focused()).what === 'input', 'the focus on a line');
    const now = await focused();
    expect(now).toMatchObject({ says: LAST_LINE, isInPlace: true });
    expect(now.ringPx).toBeGreaterThan(0);
    await tabTo(/^Begin with the frames$/);
    await app.press('Enter');
  });

  test('mount, dial, expose: each heading has the focus when its step comes', async () => {
    await onHeading('Mount');
    await tabTo(/tripod$/);
    await app.press('Enter');
    await onHeading('Dial');
    // Nothing lies between the heading and the one act for whoever is in a hurry.
    await unbounced();
    await app.press('Enter');
    await onHeading('Expose');
    await tabTo(/^Start/);
    await app.evaluate(listen, undefined);
    await app.press('Enter');
    await onHeading('Exposing');
  });

  test('the dark screen takes the focus and gives it back', async () => {
    await app.clock.advance(10_000);
    await app.seeThe('button', DARK);
    expect((await focused()).says).toBe(DARK);
    await app.press('Enter');
    await app.clock.advance(1000);
    await onHeading('Exposing');
  });

  test('the end is heard, the countdown is not', async () => {
    await app.clock.advance((LEAD_IN_S + LONG_S - 10) * 1000);
    await seeAsked(app, 'Record');
    await app.clock.advance(1000);
    await onHeading('Record');
    const said = await app.evaluate(() => globalThis.evenfallSaid, undefined);
    expect(said).toContain('Record');
    expect(said.length, said.join(' | ')).toBeLessThanOrEqual(4);
  });

  test('record, and the next frame asks', async () => {
    await tabTo(/^Record as planned$/);
    await app.press('Enter');
    await onHeading('Dial');
    expect(app.problems).toEqual([]);
  });
});
