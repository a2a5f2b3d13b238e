import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { A, dialled, frame } from '../evenings/evening.ts';
import { backupOf, takeIn } from './acts/backups.ts';
import { record, seeAsked, setUp, shoot, start, unhurried, wait, wake } from './acts/run.ts';
import { takePhone } from './driver/chromium.ts';
import type { AppWindow, Phone } from './driver/phone.ts';
import { type AppServer, startServer } from './driver/server.ts';
import { goTo } from './places.ts';

/*
 * Browsers that lack what the app would like to have. Each service is taken away, or made to refuse,
 * before the app's first script; the app starts, says its sentence where a person must know, and the
 * walk goes on to a recorded frame.
 *
 * Seen to fail on an app that threw at the tap what an audio clock answers, asked a storage without
 * `persisted`, took a page that does not say whether it is seen for hidden, made ids by `randomUUID`
 * alone and talked to other windows unasked: all of that together, not each by itself.
 */

const RIG = 'A Alder 44';
const FRAMES = ['one', 'two', 'three', 'four'].map((set) =>
  frame(set, A, dialled('8', '8', '400')),
);
/** With the lead-in of the practice body. */
const FRAME_S = 8 + 3;

/** Where the services of a browser hang, by the names that the standards give them. */
const SERVICES = {
  wakeLock: ['Navigator.prototype', 'wakeLock'],
  vibrate: ['Navigator.prototype', 'vibrate'],
  speechSynthesis: ['globalThis', 'speechSynthesis'],
  AudioContext: ['globalThis', 'AudioContext'],
  audioStamp: ['AudioContext.prototype', 'getOutputTimestamp'],
  locks: ['Navigator.prototype', 'locks'],
  BroadcastChannel: ['globalThis', 'BroadcastChannel'],
  storage: ['Navigator.prototype', 'storage'],
  persist: ['StorageManager.prototype', 'persist'],
  persisted: ['StorageManager.prototype', 'persisted'],
  estimate: ['StorageManager.prototype', 'estimate'],
  serviceWorker: ['Navigator.prototype', 'serviceWorker'],
  showSaveFilePicker: ['globalThis', 'showSaveFilePicker'],
  geolocation: ['Navigator.prototype', 'geolocation'],
  mediaSession: ['Navigator.prototype', 'mediaSession'],
  visibilityState: ['Document.prototype', 'visibilityState'],
  randomUUID: ['Crypto.prototype', 'randomUUID'],
  Temporal: ['globalThis', 'Temporal'],
  Notification: ['globalThis', 'Notification'],
} as const satisfies Record<string, readonly [holder: string, name: string]>;

/** Runs in the page: takes these away. One that was not there proves nothing, so that is an error. */
function without(services: readonly (readonly [holder: string, name: string])[]): void {
  for (const [path, name] of services) {
    let holder: object = globalThis;
    for (const step of path.split('.').filter((part) => part !== 'globalThis')) {
      holder = Reflect.get(holder, step) as object;
    }
    if (!(name in holder)) throw new Error(`${path}.${name} was not there to be taken away`);
    Reflect.deleteProperty(holder, name);
    if (name in holder) throw new Error(`${path}.${name} is still there`);
  }
}

let server: AppServer;
let phone: Phone;

beforeAll(async () => {
  server = await startServer(inject('builtApp'));
  phone = await takePhone();
  await phone.window.clock.start(new Date(Date.UTC(2027, 1, 12, 17, 30)));
});

afterAll(async () => {
  await phone?.throwAway();
  await server?.stop();
});

/** The next frame of the outing that is under way, in a browser of another kind. */
async function inAnother<Argument>(
  kind: (argument: Argument) => void,
  argument: Argument,
  walk: (window: AppWindow) => Promise<void>,
): Promise<void> {
  const window = await phone.openSecondWindow();
  await window.beforeLoad(kind, argument);
  await window.open(server.address);
  await walk(window);
  expect(window.problems).toEqual([]);
  await window.close();
}

describe('a browser that has none of the services', () => {
  test('starts, and says at home what it cannot do', async () => {
    const { window } = phone;
    await window.beforeLoad(
      without,
      // A whole that is gone has no parts to take away.
      Object.values(SERVICES).filter(([holder]) => !/^(Storage|AudioC)/.test(holder)),
    );
    // An app on the home screen of a phone whose downloads end nowhere.
    await window.beforeLoad(() => Object.assign(Navigator.prototype, { standalone: true }), null);
    await window.open(server.address);
    await takeIn(window, backupOf('Without anything', FRAMES));
    await goTo(window, 'Gear');
    await window.see(/^This browser cannot start the app without a network\./);
    await window.see(/^Storage: the browser does not say whether it is kept\./);
    await window.see('This browser has no audio clock. The other cues tell.');
    await window.see('This device does not vibrate for a page.');
    await window.see(/^This device has no English voice that speaks without a network\./);
    await window.see('This browser does not give a headset’s button to a page.');
    await goTo(window, 'Light');
    await window.tap('button', 'Add a site');
    await window.tap('button', 'Use where I am');
    await window.see('This browser knows no position. Type the coordinates instead.');
  });

  test('says before the first frame what the walk must do without, and walks it', async () => {
    const { window } = phone;
    await goTo(window, 'Outing');
    await window.tap('button', 'Start Without anything');
    await window.see('This browser cannot keep the screen on. Set auto-lock to never.');
    await window.see(/^This browser cannot keep two windows apart\./);
    await window.see(/^This browser writes no file by itself\./);
    await setUp(window, [RIG]);
    await shoot(window, FRAME_S);
    await window.see(/3 left/);
  });

  test('gives the log out as text where neither a share sheet nor a download is', async () => {
    const { window } = phone;
    await window.tap('button', 'More');
    await window.tap('button', 'Log');
    // Left at the backup; a second tap leads to the head of the place.
    await window.seeThe('heading', 'Backup and restore');
    await unhurried();
    await window.tap('button', 'Log');
    await window.tap('button', /^Without anything/);
    await window.tap('button', /^Export/);
    await window.tap('button', 'Make the journal ready');
    await window.tap('button', 'Show it as text');
    const text = await window.readField('The file as text. Select all and copy it.');
    const { events } = JSON.parse(text) as { events: { kind: string }[] };
    expect(events.at(-1)?.kind).toBe('recorded');
    expect(window.problems).toEqual([]);
    await window.close();
  });
});

test.each(Object.keys(SERVICES) as (keyof typeof SERVICES)[])(
  'a browser that lacks %s alone comes back to the step',
  async (service) => {
    await inAnother(without, [SERVICES[service]], async (window) => {
      await seeAsked(window, 'Expose');
      await window.tap('button', 'More');
      await window.tap('button', 'Gear');
      await window.see(/^Version /);
    });
  },
);

/** Runs in the page: everything is there and nothing obeys, each in the way that its standard allows. */
function refusing(): void {
  const refused = () => Promise.reject(new DOMException('by the test', 'NotAllowedError'));
  const never = () => new Promise<never>(() => undefined);
  WakeLock.prototype.request = refused;
  LockManager.prototype.request = refused as LockManager['request'];
  StorageManager.prototype.persisted = refused;
  StorageManager.prototype.persist = never;
  StorageManager.prototype.estimate = refused;
  ServiceWorkerContainer.prototype.register = refused;
  navigator.vibrate = () => false;
  // The system gives no more of them.
  globalThis.AudioContext = class {
    constructor() {
      throw new DOMException('by the test', 'NotSupportedError');
    }
  } as unknown as typeof AudioContext;
  Geolocation.prototype.getCurrentPosition = (_, fail) =>
    fail?.({ code: 1 } as GeolocationPositionError);
  HTMLMediaElement.prototype.play = refused;
  navigator.canShare = () => true;
  navigator.share = refused;
  Object.assign(globalThis, { showSaveFilePicker: refused });
}

test('a browser in which every service refuses walks on, and says so', async () => {
  await inAnother(refusing, null, async (window) => {
    await seeAsked(window, 'Expose');
    await window.see(/screen may go off/);
    await window.see(/^This browser cannot keep two windows apart\./);
    await start(window);
    await wait(window, FRAME_S);
    await wake(window);
    await record(window);
    await window.see(/2 left/);
    await window.tap('button', 'More');
    await window.tap('button', 'Gear');
    const cues = { within: { role: 'region', name: 'Cues' } } as const;
    await window.see(/^Not ready for offline\./);
    await window.see(/^Storage: the browser does not say whether it is kept\./);
    await window.tap('button', 'Try it: Sound', cues);
    await window.clock.advance(2000);
    await window.see(/^The system kept the sound back\./);
    await window.tap('button', 'Try it: Vibration', cues);
    await window.see('The system did not take it. Tap again.');
    await window.tap('switch', /^The button of a headset too/, cues);
    await goTo(window, 'Outing');
    await shoot(window, FRAME_S);
    await window.see(/1 left/);
    await window.tap('button', 'More');
    await window.tap('button', 'Log');
    await window.tap('button', /^Without anything/);
    await window.tap('button', /^Export/);
    await window.tap('button', 'Make the journal ready');
    await window.tap('button', 'Share it');
    await window.see('The system did not take it. The file is still here. Try the other way.');
    await unhurried();
    const file = await window.download(() => window.tap('button', 'Save it'));
    expect(file.name).toMatch(/\.json$/);
  });
});

test('a browser without a database says that nothing can be kept, and what to do', async () => {
  const window = await phone.openSecondWindow();
  await window.beforeLoad(without, [['globalThis', 'indexedDB']]);
  await window.open(server.address);
  await window.see(/^The app cannot open its storage\. What was saved is safe\./);
  await window.seeThe('button', 'Try again');
  await window.close();
});
