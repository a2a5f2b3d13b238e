import { randomIds } from '../../../src/device/ids.ts';
import { browserLocks, windowTalk } from '../../../src/device/locks.ts';
import { browserPersistence } from '../../../src/device/persistence.ts';
import { browserShare, downloadIn } from '../../../src/device/share.ts';
import { webSound } from '../../../src/device/sound.ts';
import { type CueKind, placeTone, toneSamples } from '../../../src/device/tones.ts';
import type { OutingId } from '../../../src/outing/ids.ts';
import { seconds } from '../../../src/science/units.ts';
import type { Store, StoreFault } from '../../../src/store/contract.ts';
import { openStore } from '../../../src/store/indexedDb.ts';
import { note, storeOptions } from '../journals.ts';
import { locksCases } from '../locks.contract.ts';
import { storeCases } from '../store.contract.ts';

/*
 * What the contracts need of a real browser, for a test that drives this page. It
 * is built from the same sources as the app, but is no part of it.
 */

const OUTING = 'outing-1' as OutingId;

let open: Store | null = null;

/** A store on an empty database, as on a new phone. */
async function freshStore(): Promise<Store> {
  open?.close();
  await new Promise<void>((done, fail) => {
    const request = indexedDB.deleteDatabase('evenfall');
    request.onsuccess = () => done();
    request.onerror = () => fail(request.error ?? new Error('could not delete'));
  });
  open = await openStore(storeOptions());
  return open;
}

async function outcome(run: () => Promise<void>): Promise<string> {
  try {
    await run();
    return 'kept';
  } catch (cause) {
    return cause instanceof Error ? (cause.stack ?? cause.message) : JSON.stringify(cause);
  }
}

/** The store that the acts below work with, on whatever lies in the database. */
let store: Store;
let acknowledged = 0;
const closedBy: StoreFault['kind'][] = [];

const acts = {
  storeNames: storeCases.map(({ name }) => name),
  locksNames: locksCases.map(({ name }) => name),
  runStore: (at: number) => outcome(async () => storeCases[at]?.run(freshStore)),
  runLocks: (at: number) =>
    outcome(async () =>
      locksCases[at]?.run(() => ({
        one: browserLocks(navigator.locks, windowTalk()),
        other: browserLocks(navigator.locks, windowTalk()),
        outing: randomIds.make(),
      })),
    ),

  /** Opens the store as at a start of the app. @returns the sequence numbers of the stored events. */
  async start(): Promise<readonly number[]> {
    store = await openStore(storeOptions());
    store.onClosed(({ kind }) => closedBy.push(kind));
    return (await store.events(OUTING)).map(({ seq }) => seq);
  },
  /** Appends for ever, one tap after the other. */
  async appendOn(from: number): Promise<void> {
    for (let seq = from; ; seq += 1) {
      await store.append([note({ seq, text: 'x'.repeat(500) })]);
      acknowledged = seq;
    }
  },
  acknowledged: () => acknowledged,
  append: (seq: number): Promise<string> =>
    store.append([note({ seq })]).then(
      () => 'stored',
      ({ kind }: StoreFault) => kind,
    ),
  closedBy: () => closedBy,
  /** As a newer version of the app would: asks for the next version of the database. */
  upgrade: (): Promise<string> =>
    new Promise((done) => {
      const request = indexedDB.open('evenfall', 99);
      request.onblocked = () => done('blocked');
      request.onsuccess = () => {
        request.result.close();
        done('opened');
      };
    }),

  locks: browserLocks(navigator.locks, windowTalk()),
  persistence: browserPersistence(navigator.storage),
  sound: webSound(() => new AudioContext(), {}),

  /** A tone as the browser itself renders it. @returns the first sample that sounds, and the loudest. */
  async render(
    kind: CueKind,
    atS: number,
  ): Promise<{ first: number; loudest: number; off: number }> {
    const rate = 48_000;
    const context = new OfflineAudioContext(1, rate * 3, rate);
    placeTone(context, kind, seconds(atS));
    const rendered = (await context.startRendering()).getChannelData(0);
    const asked = toneSamples(kind, rate);
    const begin = Math.round(atS * rate);
    return {
      first: rendered.findIndex((value) => value !== 0),
      loudest: largest(rendered),
      off: largest(asked.map((value, i) => value - (rendered[begin + i] ?? 0))),
    };
  },
  /** Places a cue and waits. @returns how far from its time the audio clock got there, in ms. */
  async playIn(inMs: number): Promise<number | null> {
    const dueMs = performance.now() + inMs;
    const placed = acts.sound.place('end', dueMs);
    await new Promise((done) => setTimeout(done, inMs + 500));
    const reachedMs = placed?.reachedMs() ?? null;
    return reachedMs === null ? null : reachedMs - dueMs;
  },
};

const largest = (samples: Float32Array): number =>
  samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);

declare global {
  var contracts: Contracts;
}
export type Contracts = typeof acts;
globalThis.contracts = acts;

function button(name: string, act: () => void): void {
  const made = document.createElement('button');
  made.textContent = name;
  made.addEventListener('click', act);
  document.body.append(made);
}
button('Tap', () => acts.sound.unlock());
button('Save', () => {
  const share = browserShare({ navigator, download: downloadIn(document) });
  const file = { name: 'evening.json', type: 'application/json', content: '{"name":"Größe"}' };
  void share.offer(file)?.give();
});
