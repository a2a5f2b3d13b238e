import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { A, dialled, frame } from '../evenings/evening.ts';
import { backupOf, takeIn } from './acts/backups.ts';
import { seeAsked, setUp, unhurried, untilExpose } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * The copies that leave after each set: into a chosen file by themselves, or to the share sheet by a
 * tap. The system's own sheets cannot be driven; what stands in for them is a real file of the
 * browser's, and a share that notes what it was handed.
 *
 * Seen to fail: no copy at the end of a set; a reminder that stays after the export.
 */

const SHORT = dialled('8', '0.5', '800');
const FRAMES = ['one', 'two', 'three'].map((set) => frame(set, A, SHORT));

let server: AppServer;
let phone: Phone;

beforeEach(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
});

afterEach(async () => {
  await phone.throwAway();
  await server.stop();
});

async function begin(window: AppWindow): Promise<void> {
  await window.open(server.address);
  await takeIn(window, backupOf('To be copied', FRAMES));
  await goTo(window, 'Outing');
  await window.tap('button', 'Start To be copied');
  await window.seeThe('heading', 'Set up the rigs');
}

async function take(window: AppWindow): Promise<void> {
  await untilExpose(window);
  await unhurried();
  await window.tap('button', 'Taken');
}

interface Copied {
  readonly events?: readonly { readonly kind: string }[];
}
const kindsOf = (text: string): readonly string[] =>
  ((JSON.parse(text || '{}') as Copied).events ?? []).map(({ kind }) => kind);

test('a copy goes into the chosen file after each set, and the end asks until the log has left', async () => {
  const { window } = phone;
  await window.beforeLoad(() => {
    Object.assign(globalThis, {
      showSaveFilePicker: async ({ suggestedName }: { suggestedName: string }) =>
        (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true }),
    });
  }, undefined);
  await begin(window);
  const copied = async () =>
    kindsOf(
      await window.evaluate(async () => {
        const folder = (await navigator.storage.getDirectory()) as unknown as {
          values(): AsyncIterable<FileSystemFileHandle>;
        };
        for await (const handle of folder.values()) return (await handle.getFile()).text();
        return '';
      }, undefined),
    );
  const recorded = async () => (await copied()).filter((kind) => kind === 'recorded').length;

  await window.tap('button', 'Choose the file');
  await window.see(/^After each set the journal goes into evenfall-/);
  await expect.poll(copied).toEqual(['outing-started']);
  await setUp(window, ['A Alder 44']);
  await take(window);
  await expect.poll(recorded).toBe(1);
  await window.see(/^Safety copy written \d\d:\d\d\.$/);

  // A reload keeps the file of the outing in hand.
  await window.reload();
  await take(window);
  await expect.poll(recorded).toBe(2);
  await take(window);
  await seeAsked(window, 'List done');
  await window.tap('button', 'End the outing');
  await seeAsked(window, 'Ended');
  await expect.poll(copied).toContain('ended');

  // A copy on the same phone is no export.
  await window.see('Get the log off this phone now. Then it survives the phone.');
  await window.tap('button', 'Export');
  await window.tap('button', 'Make the journal ready');
  await window.download(() => window.tap('button', 'Save it'));
  await window.tap('button', 'Close');
  await goTo(window, 'Outing');
  await window.see(/^Last left /);
  expect(await window.count('button', 'Export')).toBe(0);
  await window.seeThe('button', 'Open the log');
  expect(window.problems).toEqual([]);
});

test('where no file can be chosen a copy is offered after each set, and put aside it is reminded of', async () => {
  const { window } = phone;
  await window.beforeLoad(() => {
    Reflect.deleteProperty(globalThis, 'showSaveFilePicker');
    navigator.canShare = () => true;
    navigator.share = async ({ files = [] } = {}) => {
      const handed = globalThis as unknown as { evenfallHanded: string };
      handed.evenfallHanded = (await files[0]?.text()) ?? '';
    };
  }, undefined);
  await begin(window);
  await window.tap('switch', /^Offer a copy after each set/);
  await setUp(window, ['A Alder 44']);
  const due = /^A set is through\./;
  await take(window);
  await window.see(due);
  await window.tap('button', 'Hand a copy on');
  await window.tap('button', 'Share it');
  await window.see('Handed on.');
  const handed = await window.evaluate(
    () => (globalThis as unknown as { evenfallHanded: string }).evenfallHanded,
    undefined,
  );
  expect(kindsOf(handed).at(-1)).toBe('recorded');
  await window.tap('button', 'Close');
  await window.seeGone(due);

  await take(window);
  await window.see(due);
  await window.tap('button', 'Not now');
  await window.seeGone(due);
  // Chosen once, also after a reload.
  await window.reload();
  await take(window);
  await window.see(due);
  await window.tap('button', 'Not now');
  await seeAsked(window, 'List done');
  await window.tap('button', 'End the outing');
  await seeAsked(window, 'Ended');
  await window.see('Get the log off this phone now. Then it survives the phone.');
  await window.tap('button', 'Put the outing aside');
  await window.see(/^To be copied has ended and has not left this phone yet\./);
  await window.reload();
  await window.see(/^To be copied has ended and has not left this phone yet\./);
  await window.tap('button', 'Export');
  await window.tap('button', 'Make the journal ready');
  await window.tap('button', 'Share it');
  await window.see('Handed on.');
  await window.tap('button', 'Close');
  await goTo(window, 'Outing');
  await window.seeGone(/has not left this phone yet/);
  expect(window.problems).toEqual([]);
});
