import { rm } from 'node:fs/promises';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { buildApp } from './driver/build.ts';
import { takePhone } from './driver/chromium.ts';
import { countOfflineFiles } from './driver/offline-files.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

const firstBuild = inject('builtApp');
let secondBuild: string;
let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  secondBuild = await buildApp('another version');
});

afterAll(async () => {
  await rm(secondBuild, { recursive: true });
});

beforeEach(async () => {
  server = await startServer(firstBuild);
  phone = await takePhone();
  await phone.window.open(server.address);
  await isReadyForOffline(phone.window);
});

afterEach(async () => {
  await phone.throwAway();
  await server.stop();
});

async function isReadyForOffline(window: AppWindow): Promise<void> {
  const { present, expected } = await countOfflineFiles(window);
  expect(expected).toBeGreaterThan(5);
  expect(present).toBe(expected);
}

/** Takes the newer build by the button of the Gear place. */
async function takeNewerBuild(window: AppWindow): Promise<void> {
  await goTo(window, 'Gear');
  await window.tap('button', 'Change to it now');
}

/** The address of the script that runs: its name holds a hash of its content. */
const runningScript = (window: AppWindow): Promise<string> =>
  window.evaluate(() => document.querySelector('script')?.src ?? '', undefined);

/** Waits until the page has come back with another build. */
const runsAnotherThan = (window: AppWindow, before: string) =>
  expect
    .poll(() => runningScript(window).catch(() => before), { timeout: 10_000 })
    .not.toBe(before);

/** Waits until a worker of another build has installed itself and waits its turn. */
const newerBuildIsHere = (window: AppWindow): Promise<void> =>
  window.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (registration.waiting === null) await new Promise((wait) => setTimeout(wait, 50));
  }, undefined);

const cachedBuilds = (window: AppWindow): Promise<readonly string[]> =>
  window.evaluate(
    async () => (await caches.keys()).filter((name) => name.startsWith('build-')),
    undefined,
  );

test('a newer build stays away over reload, kill and restart until it is taken', async () => {
  const before = await runningScript(phone.window);
  server.publish(secondBuild);
  await newerBuildIsHere(phone.window);
  await phone.window.reload();
  expect(await runningScript(phone.window)).toBe(before);

  await server.stop();
  await phone.kill();
  await phone.restart();
  await phone.window.open(server.address);
  expect(await runningScript(phone.window)).toBe(before);
  await isReadyForOffline(phone.window);
  // The browser has made the newer worker the active one by now; the page still gets its own build.
  await phone.window.reload();
  expect(await runningScript(phone.window)).toBe(before);

  await takeNewerBuild(phone.window);
  await runsAnotherThan(phone.window, before);
  await isReadyForOffline(phone.window);
});

test('a newer build is taken at once, and the one before is let go at the next start', async () => {
  const before = await runningScript(phone.window);
  server.publish(secondBuild);
  await newerBuildIsHere(phone.window);
  await takeNewerBuild(phone.window);
  await runsAnotherThan(phone.window, before);
  await isReadyForOffline(phone.window);
  expect(await cachedBuilds(phone.window)).toHaveLength(2);

  await server.stop();
  await phone.kill();
  await phone.restart();
  await phone.window.open(server.address);
  expect(await runningScript(phone.window)).not.toBe(before);
  await isReadyForOffline(phone.window);
  await expect.poll(() => cachedBuilds(phone.window)).toHaveLength(1);
});

test('a build that lacks one file on its host is not installed', async () => {
  const before = await runningScript(phone.window);
  server.publish(secondBuild);
  server.lose('icons/evenfall-512.png');
  const outcome = await phone.window.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    const worker = registration.installing;
    if (worker === null) return 'nothing was installed';
    return await new Promise<string>((settled) => {
      worker.addEventListener('statechange', () => settled(worker.state));
    });
  }, undefined);
  expect(outcome).toBe('redundant');
  await phone.window.reload();
  await isReadyForOffline(phone.window);
  expect(await runningScript(phone.window)).toBe(before);
});

/** Does to the cache what a browser short of space does. */
const throwAway = (window: AppWindow, ending: string): Promise<number> =>
  window.evaluate(async (wanted) => {
    let gone = 0;
    for (const name of (await caches.keys()).filter((each) => each.startsWith('build-'))) {
      const cache = await caches.open(name);
      for (const request of await cache.keys()) {
        if (new URL(request.url).pathname.endsWith(wanted) && (await cache.delete(request)))
          gone += 1;
      }
    }
    return gone;
  }, ending);

test('a script that the browser threw away leaves words on the screen, not a white page', async () => {
  expect(await throwAway(phone.window, '.js')).toBeGreaterThan(0);
  await server.stop();
  await phone.window.reload();
  await phone.window.see(/Evenfall has not started/);
});

test('a file that the browser threw away comes back as soon as there is a network', async () => {
  expect(await throwAway(phone.window, 'evenfall-512.png')).toBe(1);
  await phone.window.reload();
  await isReadyForOffline(phone.window);
  expect(await throwAway(phone.window, 'evenfall-512.png')).toBe(1);
});

test('a file that is missing far from any network is not passed over', async () => {
  await throwAway(phone.window, 'evenfall-512.png');
  await server.stop();
  await phone.window.reload();
  const { present, expected } = await countOfflineFiles(phone.window);
  expect(present).toBe(expected - 1);
  await goTo(phone.window, 'Gear');
  await phone.window.see(/^Not ready for offline/);
});

test('the link of an app that does not start leads to the newest build', async () => {
  server.publish(secondBuild);
  await newerBuildIsHere(phone.window);
  const before = await runningScript(phone.window);
  await throwAway(phone.window, before.split('/').at(-1) ?? 'no script');
  await server.stop();
  await phone.window.reload();
  await phone.window.tap('link', 'open the newest version');
  await runsAnotherThan(phone.window, before);
  await isReadyForOffline(phone.window);
});
