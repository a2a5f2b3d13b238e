import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, CDPSession, Locator, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { findChromium } from '../../../.ci/chromium.mjs';
import { Hand } from './hand.ts';
import type {
  AppWindow,
  HeardPhone,
  Name,
  NamedFile,
  Phone,
  PhoneOptions,
  Role,
  Within,
} from './phone.ts';
import { killAllOf } from './processes.ts';

/** A phone held upright, in CSS pixels. */
const handSize = { width: 390, height: 844 };
/** Two walks share two cores, so that a wait for a state may take longer than on a phone. */
const patience = 20_000;

const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const named = (name: Name) => (typeof name === 'string' ? { name, exact: true } : { name });

class ChromiumWindow implements AppWindow {
  readonly problems: string[] = [];
  readonly #page: Page;
  readonly #touch: boolean;
  readonly #hand = new Hand();
  #devtools: CDPSession | undefined;

  constructor(page: Page, touch: boolean) {
    this.#page = page;
    this.#touch = touch;
    page.setDefaultTimeout(patience);
    page.on('pageerror', (error) => this.problems.push(`uncaught: ${error.message}`));
    page.on('console', (message) => {
      if (message.type() !== 'error') return;
      this.problems.push(`console: ${message.text()} (${message.location().url})`);
    });
  }

  #find(role: Role, name?: Name, { within }: Within = {}): Locator {
    const place = within === undefined ? this.#page : this.#find(within.role, within.name);
    return place.getByRole(role, name === undefined ? {} : named(name));
  }

  #field(label: Name, { within }: Within = {}): Locator {
    const place = within === undefined ? this.#page : this.#find(within.role, within.name);
    return place.getByLabel(label, { exact: typeof label === 'string' });
  }

  #text(text: Name): Locator {
    return this.#page.getByText(text).filter({ visible: true }).first();
  }

  async open(address: string) {
    await this.#page.goto(address);
  }

  async reload() {
    await this.#page.reload();
  }

  async back() {
    await this.#page.goBack();
  }

  async close() {
    await this.#page.close();
  }

  async tap(role: Role, name: Name, inside?: Within) {
    const target = this.#find(role, name, inside);
    await this.#hand.lifted(role, name, inside);
    await (this.#touch ? target.tap() : target.click());
  }

  async touchTwice({ x, y }: { readonly x: number; readonly y: number }) {
    const devtools = await this.#attach();
    // All four at once, in their order: one after the other they would be as far apart as the
    // machine is busy, and no bounce any more.
    const touch = (type: 'touchStart' | 'touchEnd') =>
      devtools.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchStart' ? [{ x, y }] : [],
      });
    await Promise.all([
      touch('touchStart'),
      touch('touchEnd'),
      touch('touchStart'),
      touch('touchEnd'),
    ]);
  }

  async type(label: Name, text: string, inside?: Within) {
    await this.#field(label, inside).fill(text);
  }

  async choose(label: Name, option: string, inside?: Within) {
    await this.#field(label, inside).selectOption({ label: option });
  }

  async press(key: string) {
    await this.#page.keyboard.press(key);
  }

  async upload(label: Name, ...files: readonly NamedFile[]) {
    await this.#field(label).setInputFiles(
      files.map(({ name, bytes }) => ({
        name,
        mimeType: 'application/octet-stream',
        buffer: Buffer.from(bytes),
      })),
    );
  }

  async download(act: () => Promise<void>) {
    const [download] = await Promise.all([this.#page.waitForEvent('download'), act()]);
    return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
  }

  async see(text: Name) {
    await this.#text(text).waitFor({ state: 'visible' });
  }

  async seeThe(role: Role, name: Name, inside?: Within) {
    await this.#find(role, name, inside).first().waitFor({ state: 'visible' });
  }

  async seeGone(text: Name) {
    await this.#text(text).waitFor({ state: 'hidden' });
  }

  async read(role: Role, name: Name, inside?: Within) {
    return await this.#find(role, name, inside).innerText();
  }

  async readField(label: Name, inside?: Within) {
    return await this.#field(label, inside).inputValue();
  }

  async count(role: Role, name?: Name, inside?: Within) {
    return await this.#find(role, name, inside).count();
  }

  async placeOf(role: Role, name: Name, inside?: Within) {
    const target = this.#find(role, name, inside);
    await target.waitFor({ state: 'visible' });
    const box = await target.boundingBox();
    if (box === null) throw new Error(`${role} ${name} has no place on the screen`);
    return box;
  }

  async picture(size?: { width: number; height: number }) {
    if (size !== undefined) await this.resize(size);
    return await this.#page.screenshot({ type: 'png' });
  }

  async printed() {
    return await this.#page.pdf({ preferCSSPageSize: true, printBackground: true });
  }

  async resize(size: { width: number; height: number }) {
    await this.#page.setViewportSize(size);
  }

  async prefer(preferences: Parameters<AppWindow['prefer']>[0]) {
    await this.#page.emulateMedia({
      colorScheme: preferences.scheme ?? null,
      reducedMotion: preferences.reducedMotion === true ? 'reduce' : null,
      contrast: preferences.moreContrast === true ? 'more' : null,
    });
  }

  readonly clock = {
    start: async (at: Date) => {
      await this.#page.clock.install({ time: at });
    },
    advance: async (milliseconds: number) => {
      await this.#page.clock.runFor(milliseconds);
    },
    jumpWall: async (to: Date) => {
      await this.#page.clock.setSystemTime(to);
    },
  };

  async offline(cut: boolean) {
    await this.#page.context().setOffline(cut);
  }

  async #attach(): Promise<CDPSession> {
    this.#devtools ??= await this.#page.context().newCDPSession(this.#page);
    return this.#devtools;
  }

  async slowDown(factor: number) {
    const devtools = await this.#attach();
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: factor });
  }

  async heapBytes() {
    const devtools = await this.#attach();
    // What hangs on a finalizer or a weak reference goes with a later round.
    for (let round = 0; round < 3; round += 1) await devtools.send('HeapProfiler.collectGarbage');
    return (await devtools.send('Runtime.getHeapUsage')).usedSize;
  }

  async evaluate<Result, Argument>(
    work: (argument: Argument) => Result | Promise<Result>,
    argument: Argument,
  ) {
    // Playwright's type unboxes handles, which never pass here.
    const run = this.#page.evaluate.bind(this.#page) as (
      work: unknown,
      argument: unknown,
    ) => Promise<Result>;
    return await run(work, argument);
  }

  async beforeLoad<Argument>(work: (argument: Argument) => void, argument: Argument) {
    const run = this.#page.addInitScript.bind(this.#page) as (
      work: unknown,
      argument: unknown,
    ) => Promise<unknown>;
    await run(work, argument);
  }
}

class ChromiumPhone implements HeardPhone {
  readonly requests: string[] = [];
  readonly #profile: string;
  readonly #options: PhoneOptions;
  #context: BrowserContext | undefined;
  #window: ChromiumWindow | undefined;

  constructor(profile: string, options: PhoneOptions) {
    this.#profile = profile;
    this.#options = options;
  }

  get #touch(): boolean {
    return this.#options.touch ?? true;
  }

  #running(): BrowserContext {
    if (this.#context === undefined) throw new Error('this phone is off: restart it first');
    return this.#context;
  }

  get window() {
    if (this.#window === undefined) throw new Error('this phone is off: restart it first');
    return this.#window;
  }

  async openSecondWindow() {
    return new ChromiumWindow(await this.#running().newPage(), this.#touch);
  }

  async allow(permission: Parameters<Phone['allow']>[0]) {
    if (permission !== 'persistent-storage') {
      await this.#running().grantPermissions([permission]);
      return;
    }
    const page = this.#running().pages()[0];
    if (page === undefined) throw new Error('no window is open');
    const devtools = await this.#running().newCDPSession(page);
    await devtools.send('Browser.grantPermissions', { permissions: ['durableStorage'] });
  }

  async kill() {
    await killAllOf(this.#profile);
    this.#context = undefined;
    this.#window = undefined;
  }

  async restart() {
    await this.#context?.close();
    // A killed browser leaves its locks behind, and the next one would refuse the profile.
    for (const lock of ['SingletonLock', 'SingletonCookie', 'SingletonSocket']) {
      await rm(join(this.#profile, lock), { force: true });
    }
    const executablePath = findChromium();
    if (executablePath === undefined) throw new Error('no Chromium here: see npm test');
    const { size = handSize, zone, language, world } = this.#options;
    this.#context = await chromium.launchPersistentContext(this.#profile, {
      executablePath,
      headless: true,
      args:
        world === undefined
          ? flags
          : [...flags, `--host-resolver-rules=MAP * 127.0.0.1:${world}, EXCLUDE localhost`],
      viewport: size,
      hasTouch: this.#touch,
      ...(zone === undefined ? {} : { timezoneId: zone }),
      ...(language === undefined ? {} : { locale: language }),
    });
    this.#context.on('request', (request) => this.requests.push(request.url()));
    const page = this.#context.pages()[0] ?? (await this.#context.newPage());
    this.#window = new ChromiumWindow(page, this.#touch);
  }

  async throwAway() {
    await this.#context?.close();
    await killAllOf(this.#profile);
    await rm(this.#profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

/** Takes a new phone with an empty profile and starts its browser. */
export async function takePhone(options: PhoneOptions = {}): Promise<HeardPhone> {
  const profile = await mkdtemp(join(tmpdir(), 'evenfall-phone-'));
  const phone = new ChromiumPhone(profile, options);
  await phone.restart();
  return phone;
}
