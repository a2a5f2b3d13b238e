import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';
import { findChromium } from '../../../.ci/chromium.mjs';
import { finderScript } from './finderScript.ts';
import type { AppWindow } from './phone.ts';
import { killAllOf } from './processes.ts';
import { remoteOf } from './puppeteerPage.ts';
import { RemoteWindow } from './remoteWindow.ts';

/** A phone whose page can leave the screen: Playwright keeps its pages in sight. */
export interface HidablePhone {
  readonly window: AppWindow;
  /** Runs a function in the page before any script of the page, at each load: faults of the device. */
  before(work: () => void): Promise<void>;
  /** Another app comes to the front. */
  hide(): Promise<void>;
  /** The page is looked at again. */
  show(): Promise<void>;
  /** The system stops a page that is out of sight: none of its scripts and timers run. */
  freeze(): Promise<void>;
  thaw(): Promise<void>;
  /** A finger that stays down for so long, as fingers do. */
  touch(spot: { readonly x: number; readonly y: number }, milliseconds: number): Promise<void>;
  throwAway(): Promise<void>;
}

const handSize = { width: 390, height: 844, hasTouch: true };

export async function takeHidablePhone(): Promise<HidablePhone> {
  const profile = await mkdtemp(join(tmpdir(), 'evenfall-hidable-'));
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error('no Chromium here: see npm test');
  const browser = await puppeteer.launch({
    executablePath,
    headless: true,
    userDataDir: profile,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    // What would keep a page awake that nobody sees.
    ignoreDefaultArgs: [
      '--disable-backgrounding-occluded-windows',
      '--disable-renderer-backgrounding',
      '--disable-background-timer-throttling',
    ],
  });
  const page = await browser.newPage();
  await page.setViewport(handSize);
  const other = await browser.newPage();
  await page.bringToFront();
  const devtools = await page.createCDPSession();
  const lifecycle = (state: 'frozen' | 'active') =>
    devtools.send('Page.setWebLifecycleState', { state });
  return {
    window: new RemoteWindow(remoteOf('Chromium', page, profile), await finderScript()),
    before: async (work) => void (await page.evaluateOnNewDocument(work)),
    hide: () => other.bringToFront(),
    show: () => page.bringToFront(),
    freeze: () => lifecycle('frozen'),
    thaw: () => lifecycle('active'),
    async touch({ x, y }, milliseconds) {
      const finger = await page.touchscreen.touchStart(x, y);
      await new Promise((up) => setTimeout(up, milliseconds));
      await finger.end();
    },
    async throwAway() {
      await browser.close();
      await killAllOf(profile);
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
