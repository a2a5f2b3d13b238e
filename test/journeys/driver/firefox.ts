import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, {
  type Browser,
  type ElementHandle,
  type KeyInput,
  type Page,
} from 'puppeteer-core';
import { finderScript } from './finderScript.ts';
import type { NamedFile, Phone, PhoneOptions } from './phone.ts';
import { killAllOf } from './processes.ts';
import { type Remote, RemoteWindow } from './remoteWindow.ts';

/** Where Debian puts it. */
const FIREFOX = '/usr/bin/firefox-esr';

const handSize = { width: 390, height: 844 };

async function remoteOf(page: Page, folder: string): Promise<Remote> {
  const problems: string[] = [];
  page.on('pageerror', (error) => problems.push(`uncaught: ${String(error)}`));
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  let files = 0;
  return {
    engine: 'Firefox',
    problems,
    goTo: async (address) => void (await page.goto(address)),
    reload: async () => void (await page.reload()),
    back: async () => void (await page.goBack()),
    close: () => page.close(),
    run: async (source, args) =>
      await page.evaluate(
        // The text is a function of ours; an engine's policy for pages does not hold for a driver.
        `(${source})(...${JSON.stringify(args)})`,
      ),
    touch: (x, y) => page.mouse.click(x, y),
    press: (key) => page.keyboard.press(key as KeyInput),
    async setFiles(label, named: readonly NamedFile[]) {
      const handle = await page.evaluateHandle(
        `globalThis.evenfallFinder.field(${JSON.stringify(label)}, null)`,
      );
      const paths = await Promise.all(
        named.map(async ({ name, bytes }) => {
          files += 1;
          const path = join(folder, `${files}-${name}`);
          await writeFile(path, bytes);
          return path;
        }),
      );
      await (handle.asElement() as ElementHandle<HTMLInputElement>).uploadFile(...paths);
    },
    picture: () => page.screenshot({ type: 'png' }),
    resize: (size) => page.setViewport(size),
  };
}

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
    return new RemoteWindow(await remoteOf(page, this.#profile), await finderScript());
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
