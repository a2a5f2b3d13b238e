import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type Browser } from 'puppeteer-core';
import { finderScript } from './finderScript.ts';
import type { Phone, PhoneOptions } from './phone.ts';
import { killAllOf } from './processes.ts';
import { remoteOf } from './puppeteerPage.ts';
import { RemoteWindow } from './remoteWindow.ts';

/** Where Debian puts it. */
const FIREFOX = '/usr/bin/firefox-esr';

const handSize = { width: 390, height: 844 };

class FirefoxPhone implements Phone {
  readonly #profile: string;
  readonly #options: PhoneOptions;
  #browser: Browser | undefined;
  #window: RemoteWindow | undefined;

  constructor(profile: string, options: PhoneOptions) {
    this.#profile = profile;
    this.#options = options;
  }

  get window() {
    if (this.#window === undefined) throw new Error('this phone is off: restart it first');
    return this.#window;
  }

  async #newWindow() {
    if (this.#browser === undefined) throw new Error('this phone is off: restart it first');
    const page = await this.#browser.newPage();
    await page.setViewport(this.#options.size ?? handSize);
    return new RemoteWindow(remoteOf('Firefox', page, this.#profile), await finderScript());
  }

  openSecondWindow() {
    return this.#newWindow();
  }

  async allow(permission: Parameters<Phone['allow']>[0]) {
    throw new Error(`Firefox is not asked for ${permission} by a driver`);
  }

  async kill() {
    await killAllOf(this.#profile);
    this.#browser = undefined;
    this.#window = undefined;
  }

  async restart() {
    await this.#browser?.close();
    this.#browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath: FIREFOX,
      headless: true,
      userDataDir: this.#profile,
    });
    this.#window = await this.#newWindow();
  }

  async throwAway() {
    await this.#browser?.close();
    await killAllOf(this.#profile);
    await rm(this.#profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Takes a phone with Firefox, which `npm test` brings. */
export async function takeFirefox(options: PhoneOptions = {}): Promise<Phone> {
  const phone = new FirefoxPhone(await mkdtemp(join(tmpdir(), 'evenfall-firefox-')), options);
  await phone.restart();
  return phone;
}
