import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * What is said of installing, by what the browser says that it is. Seen to fail: the hint of the first
 * screen left out, the ways in shown beside it, and a hint that stays in the installed app.
 */

let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
});

afterAll(async () => {
  await phone.throwAway();
  await server.stop();
});

/** Makes the browser one of iOS: only there the property is, true from the home screen. */
async function openOnIos(standalone: boolean): Promise<AppWindow> {
  const window = await phone.openSecondWindow();
  await window.beforeLoad((own: boolean) => {
    Object.assign(Navigator.prototype, { standalone: own });
  }, standalone);
  await window.open(server.address);
  return window;
}

test('in a tab on iOS install comes before anything is entered, with why it protects the data', async () => {
  const window = await openOnIos(false);
  await window.see(/^Install first: in the browser, tap Share, then Add to Home Screen/);
  await window.see(/keeps what is stored; a tab loses it after seven days without a visit/);
  for (const way of ['Try the practice outing', 'Add a body', 'Restore a backup']) {
    expect(await window.count('button', way)).toBe(0);
  }
  expect(window.problems).toEqual([]);
  await window.close();
});

test('elsewhere the ways in come first, and the device says how the browser installs', async () => {
  const { window } = phone;
  await window.open(server.address);
  await window.seeThe('button', 'Add a body');
  await goTo(window, 'Gear');
  await window.see(/^Install it from the browser’s menu\./);
  await window.seeGone(/Add to Home Screen/);
});

test('from the home screen of iOS nothing more is said of it', async () => {
  const window = await openOnIos(true);
  await goTo(window, 'Gear');
  await window.see(/^Version /);
  await window.seeGone(/[Ii]nstall/);
  await window.close();
});
