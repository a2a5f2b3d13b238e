import 'fake-indexeddb/auto';
import { forceCloseDatabase, IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { note, reader, storeOptions } from '../../test/contract/journals.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { OutingId } from '../outing/ids.ts';
import type { Store, StoredEvent, StoreFault } from './contract.ts';
import { openStore } from './indexedDb.ts';
import { DATABASE_NAME, DATABASE_VERSION, MIGRATIONS } from './schema.ts';
import { LIMIT_MS } from './time-limit.ts';

/*
 * What goes wrong below the store, made with the platform's own means: the fake
 * database keeps its rules, and only what a phone does to it is played here.
 */

const OUTING = 'outing-1' as OutingId;
const beginTransaction = IDBDatabase.prototype.transaction;

let store: Store;
/** Connections that were opened, the newest last. */
let connections: IDBDatabase[];

beforeEach(async () => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  globalThis.indexedDB = new IDBFactory();
  connections = [];
  vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (
    this: IDBDatabase,
    ...how
  ) {
    if (!connections.includes(this)) connections.push(this);
    return beginTransaction.apply(this, how);
  });
  store = await openStore(storeOptions());
});

afterEach(() => {
  store.close();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** Lets the database work through what it has to do. */
async function databaseWorks(): Promise<void> {
  for (let turn = 0; turn < 60; turn += 1) await new Promise((done) => setImmediate(done));
}

/** Lets time pass, and the database work before and after. */
async function pass(ms: number): Promise<void> {
  await databaseWorks();
  await vi.advanceTimersByTimeAsync(ms);
  await databaseWorks();
}

/** Does something to the next transaction of the store. */
function nextTransaction(harm: (transaction: IDBTransaction) => void): void {
  vi.mocked(IDBDatabase.prototype.transaction).mockImplementationOnce(function (
    this: IDBDatabase,
    ...how
  ) {
    if (!connections.includes(this)) connections.push(this);
    const transaction = beginTransaction.apply(this, how);
    harm(transaction);
    return transaction;
  });
}

/** The page is never told how the transaction ended. */
function unheard(transaction: IDBTransaction): void {
  const listen = transaction.addEventListener.bind(transaction);
  transaction.addEventListener = (type: string, ...rest: [EventListener]) => {
    if (type !== 'complete' && type !== 'abort') listen(type, ...rest);
  };
}

/** The request succeeds, and then the browser aborts the commit: only it can do that. */
const abortedAtCommit =
  (reason: string) =>
  (transaction: IDBTransaction): void => {
    const { _abort: abort } = transaction as unknown as { _abort(name: string): void };
    transaction.addEventListener('success', () => abort.call(transaction, reason), true);
  };
const diskFull = abortedAtCommit('QuotaExceededError');
const connectionLost = abortedAtCommit('AbortError');

const writesTried = (): number =>
  vi.mocked(IDBDatabase.prototype.transaction).mock.calls.filter(([, mode]) => mode === 'readwrite')
    .length;

/** A connection of another window, which knows none of our manners. */
function otherWindow(version?: number): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE_NAME, version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('no reason given'));
  });
}

/** A suspended window: its transaction holds the journal until it is let go. */
async function heldByOther(): Promise<() => void> {
  const journal = (await otherWindow()).transaction('events', 'readwrite').objectStore('events');
  let holding = true;
  const hold = (): void => {
    if (holding) journal.count().onsuccess = hold;
  };
  hold();
  return () => {
    holding = false;
  };
}

const fault = (promise: Promise<unknown>): Promise<StoreFault['kind'] | 'none'> =>
  promise.then(
    () => 'none' as const,
    (cause: StoreFault) => cause.kind,
  );

describe('every write', () => {
  it('is strict, so that it is on the disk before it is called recorded', async () => {
    await store.writer();
    await store.append([note({ seq: 1 })]);
    await store.append([note({ seq: 1 })]);
    await store.merge([note({ seq: 2 })]);
    await store.restore({
      events: [note({ seq: 3 })],
      gear: [],
      plans: [],
      sites: [],
      tombstones: ['a'],
    });
    await store.putGear([]);
    await store.putPlans([]);
    await store.putSites([]);
    await store.putSetting('theme', 'night');
    const { calls, results } = vi.mocked(IDBDatabase.prototype.transaction).mock;
    const durabilities = calls.flatMap(([, mode], i) =>
      mode === 'readwrite' ? [(results[i] as { value: IDBTransaction }).value.durability] : [],
    );
    // The repeated append makes two: the attempt, and the comparison.
    expect(durabilities).toEqual(Array(10).fill('strict'));
  });

  it('is committed in the same breath as its last request', async () => {
    const log: string[] = [];
    nextTransaction((transaction) => {
      const commit = transaction.commit.bind(transaction);
      transaction.commit = () => {
        log.push('commit');
        commit();
      };
      transaction.addEventListener('complete', () => log.push('complete'));
    });
    const appending = store.append([note({ seq: 1 }), note({ seq: 2 })]);
    // Microtasks only: the database has not answered anything yet.
    for (let i = 0; i < 20; i += 1) await Promise.resolve();
    expect(log).toEqual(['commit']);
    await appending;
    expect(log).toEqual(['commit', 'complete']);
  });
});

describe('the disk is full', () => {
  it('only at the commit: the tap is not called recorded, and a retry is stored once', async () => {
    await store.append([note({ seq: 1 })]);
    nextTransaction(diskFull);
    expect(await fault(store.append([note({ seq: 2 })]))).toBe('full');
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 })]);
    await store.append([note({ seq: 2 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 }), note({ seq: 2 })]);
  });

  it('is not tried again by itself: only the photographer can make room', async () => {
    nextTransaction(diskFull);
    await fault(store.append([note({ seq: 1 })]));
    expect(writesTried()).toBe(1);
  });
});

describe('the browser ends the connection', () => {
  it('between two taps: the loss is told and the next tap is stored once', async () => {
    const told = vi.fn();
    store.onClosed(told);
    await store.append([note({ seq: 1 })]);
    forceCloseDatabase(connections.at(-1) as never);
    await databaseWorks();
    expect(told).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ kind: 'closed' }));
    await store.append([note({ seq: 2 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 }), note({ seq: 2 })]);
    expect(connections).toHaveLength(2);
  });

  it('without telling: the next tap finds out, reconnects and is stored once', async () => {
    await store.append([note({ seq: 1 })]);
    connections.at(-1)?.close();
    await store.append([note({ seq: 2 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 }), note({ seq: 2 })]);
  });

  it('in the middle of a write: the same tap goes in on a new connection', async () => {
    nextTransaction(connectionLost);
    await store.append([note({ seq: 1 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 })]);
    expect(connections).toHaveLength(2);
  });

  it('each time it is tried: after three it is reported, and a later tap still gets through', async () => {
    const failing = () => {
      throw new DOMException('the files are gone', 'UnknownError');
    };
    const transaction = vi.mocked(IDBDatabase.prototype.transaction);
    transaction.mockImplementationOnce(failing);
    transaction.mockImplementationOnce(failing);
    transaction.mockImplementationOnce(failing);
    expect(await fault(store.append([note({ seq: 1 })]))).toBe('closed');
    expect(writesTried()).toBe(3);
    await store.append([note({ seq: 1 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 })]);
  });

  it('while two taps wait: they are stored in the order of the taps', async () => {
    const stored: number[] = [];
    nextTransaction(connectionLost);
    await Promise.all(
      [1, 2].map(async (seq) => {
        await store.append([note({ seq })]);
        stored.push(seq);
      }),
    );
    expect(stored).toEqual([1, 2]);
  });

  it('with all data: it is told, and what is at hand is merged back and counted', async () => {
    const told = vi.fn();
    store.onClosed(told);
    const evening = [1, 2, 3].map((seq) => note({ seq }));
    for (const event of evening) await store.append([event]);
    indexedDB.deleteDatabase(DATABASE_NAME);
    await databaseWorks();
    expect(told).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ kind: 'closed' }));
    await store.append([note({ seq: 4 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 4 })]);
    expect(await store.merge([...evening, note({ seq: 4 })])).toBe(3);
    expect(await store.events(OUTING)).toEqual([...evening, note({ seq: 4 })]);
  });

  it('after the listener went away: nobody is called', async () => {
    const told = vi.fn();
    const stop = store.onClosed(told);
    await store.outings();
    stop();
    forceCloseDatabase(connections.at(-1) as never);
    await databaseWorks();
    expect(told).not.toHaveBeenCalled();
  });
});

describe('the phone suspends the page in the middle of a write', () => {
  it('and the end is never told: after the limit it reconnects and the event is there once', async () => {
    nextTransaction(unheard);
    const appending = fault(store.append([note({ seq: 1 })]));
    await pass(LIMIT_MS - 1);
    expect(connections).toHaveLength(1);
    await pass(1);
    expect(await appending).toBe('none');
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 })]);
    expect(connections).toHaveLength(2);
  });

  it('of another window, which holds the journal: the tap is refused in time and goes in later', async () => {
    const letGo = await heldByOther();
    const appending = fault(store.append([note({ seq: 1 })]));
    for (let i = 0; i < 3; i += 1) await pass(LIMIT_MS);
    expect(await appending).toBe('timeout');
    letGo();
    await databaseWorks();
    await store.append([note({ seq: 1 })]);
    expect(await store.events(OUTING)).toEqual([note({ seq: 1 })]);
    // Three that did not answer, the other window's, and a fresh one.
    expect(connections).toHaveLength(5);
  });

  it('so that a read hangs: the read goes on on a new connection', async () => {
    await store.append([note({ seq: 1 })]);
    const getAll = IDBObjectStore.prototype.getAll;
    vi.spyOn(IDBObjectStore.prototype, 'getAll').mockImplementationOnce(function (
      this: IDBObjectStore,
      ...what
    ) {
      return Object.assign(getAll.apply(this, what), { addEventListener: () => {} });
    });
    const reading = store.events(OUTING);
    await pass(LIMIT_MS);
    expect(await reading).toEqual([note({ seq: 1 })]);
  });
});

describe('a large file', () => {
  it('gets more time than a tap', async () => {
    const events = Array.from({ length: 1000 }, (_, i) => note({ seq: i + 1 }));
    const letGo = await heldByOther();
    const merging = fault(store.merge(events));
    await pass(LIMIT_MS + 3000);
    expect(connections).toHaveLength(2);
    letGo();
    for (let i = 0; i < 40; i += 1) await databaseWorks();
    expect(await merging).toBe('none');
  });
});

describe('opening', () => {
  /** The store as a later version of the app would have it. */
  async function nextVersion(): Promise<typeof openStore> {
    vi.resetModules();
    vi.doMock('./schema.ts', async (original) => ({
      ...(await original<typeof import('./schema.ts')>()),
      MIGRATIONS: [...MIGRATIONS, () => {}],
      DATABASE_VERSION: DATABASE_VERSION + 1,
    }));
    const { openStore: open } = await import('./indexedDb.ts');
    vi.doUnmock('./schema.ts');
    return open;
  }

  it('a database that a newer version wrote is refused whole', async () => {
    store.close();
    (await otherWindow(DATABASE_VERSION + 1)).close();
    expect(await fault(openStore(storeOptions()))).toBe('newer');
  });

  it('a newer version in another window: this one lets go at once, says so, and writes no more', async () => {
    const told = vi.fn();
    store.onClosed(told);
    await store.append([note({ seq: 1 })]);
    const newer = await (await nextVersion())(storeOptions());
    expect(told).toHaveBeenCalledExactlyOnceWith(expect.objectContaining({ kind: 'newer' }));
    expect(await fault(store.append([note({ seq: 2 })]))).toBe('newer');
    expect(await newer.events(OUTING)).toEqual([note({ seq: 1 })]);
    newer.close();
  });

  it('an old window that does not let go: blocked is told in time, and opens once it is closed', async () => {
    await store.append([note({ seq: 1 })]);
    store.close();
    const old = await otherWindow();
    const open = await nextVersion();
    const opening = fault(open(storeOptions()));
    await pass(LIMIT_MS);
    expect(await opening).toBe('blocked');
    old.close();
    await databaseWorks();
    const newer = await open(storeOptions());
    expect(await newer.events(OUTING)).toEqual([note({ seq: 1 })]);
    newer.close();
  });

  it('one that opens after its limit does not stay open unseen', async () => {
    store.close();
    const old = await otherWindow();
    const open = await nextVersion();
    const opening = fault(open(storeOptions()));
    await pass(LIMIT_MS);
    expect(await opening).toBe('blocked');
    const close = vi.spyOn(IDBDatabase.prototype, 'close');
    old.close();
    await databaseWorks();
    const closed = close.mock.contexts.map((db) => (db as IDBDatabase).version);
    expect(closed).toEqual([DATABASE_VERSION, DATABASE_VERSION + 1]);
  });

  it('an old window that lets go a little late is no fault', async () => {
    store.close();
    const old = await otherWindow();
    const open = await nextVersion();
    const opening = open(storeOptions());
    await pass(LIMIT_MS / 2);
    old.close();
    (await opening).close();
  });

  it('a refusal is not remembered: the next tap tries afresh', async () => {
    await store.append([note({ seq: 1 })]);
    connections.at(-1)?.close();
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementationOnce(() => {
      throw new DOMException('for the moment', 'VersionError');
    });
    expect(await fault(store.append([note({ seq: 2 })]))).toBe('newer');
    await store.append([note({ seq: 2 })]);
    expect(await store.events(OUTING)).toHaveLength(2);
  });

  it('a browser without a database, or one that forbids it, is refused in words', async () => {
    const factory = globalThis.indexedDB;
    Reflect.deleteProperty(globalThis, 'indexedDB');
    expect(await fault(openStore(storeOptions()))).toBe('closed');
    globalThis.indexedDB = factory;
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementationOnce(() => {
      throw new DOMException('not here', 'SecurityError');
    });
    expect(await fault(openStore(storeOptions()))).toBe('closed');
  });

  it('a database that never answers is given up in time', async () => {
    vi.spyOn(IDBFactory.prototype, 'open').mockImplementationOnce(() =>
      new IDBFactory().open('another', 1),
    );
    // That one has no answer for us: its events are swallowed.
    vi.spyOn(IDBRequest.prototype, 'addEventListener').mockImplementation(() => {});
    const opening = fault(openStore(storeOptions()));
    await pass(LIMIT_MS);
    expect(await opening).toBe('timeout');
  });
});

describe('events of other versions', () => {
  /** Puts an event in as another version of the app would have done. */
  async function written(event: StoredEvent): Promise<void> {
    const other = await otherWindow();
    const transaction = other.transaction('events', 'readwrite');
    transaction.objectStore('events').add(event);
    await new Promise((done) => {
      transaction.oncomplete = done;
    });
    other.close();
  }

  it('older ones are read through the upcast, and newer reading changes nothing stored', async () => {
    await written({ ...note({ seq: 1 }), v: 0, data: { words: 'old shape' } });
    const upcast = vi.fn((older: StoredEvent): OutingEvent => {
      const { words } = older.data as { words: string };
      return note({ seq: older.seq, text: words });
    });
    const reading = await openStore({ ...storeOptions(), reader: { ...reader, upcast } });
    expect(await reading.events(OUTING)).toEqual([note({ seq: 1, text: 'old shape' })]);
    expect(upcast).toHaveBeenCalledTimes(1);
    // A backup made by this version holds the new shape: still the same event.
    expect(await reading.merge([note({ seq: 1, text: 'old shape' })])).toBe(0);
    reading.close();
  });

  it('newer ones are refused with their outing, and only that', async () => {
    await store.append([note({ seq: 1, outing: 'outing-2' })]);
    await written({ ...note({ seq: 1 }), v: reader.version + 1 });
    expect(await fault(store.events(OUTING))).toBe('newer');
    expect(await store.events('outing-2' as OutingId)).toHaveLength(1);
    expect(await fault(store.merge([note({ seq: 2 })]))).toBe('newer');
  });
});
