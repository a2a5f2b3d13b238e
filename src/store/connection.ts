import { openDB } from 'idb';
import type { OlderShapes, StoreFault } from './contract.ts';
import { isPassing, StoreFailure, toFault } from './fault.ts';
import {
  DATABASE_NAME,
  DATABASE_VERSION,
  type Database,
  MIGRATIONS,
  type Schema,
  type Upgrade,
} from './schema.ts';
import { LIMIT_MS, within } from './time-limit.ts';

/** Every migration from a version on, whole or not at all. */
async function migrateFrom(
  version: number,
  db: Database,
  upgrade: Upgrade,
  older: OlderShapes,
): Promise<void> {
  try {
    for (const migrate of MIGRATIONS.slice(version)) await migrate(db, upgrade, older);
  } catch (cause) {
    // Half a migration must not stand. One whose transaction is gone has failed to open already.
    if (!(cause instanceof DOMException)) upgrade.abort();
  }
}

/** Tries in all before a lost connection is reported. */
const TRIES = 3;

/**
 * The page's one connection to the database, opened again when it was lost.
 *
 *     none --asked for--> opening --> open --found closed, or no answer--+
 *       ^                    |         |                                 |
 *       +------- fault ------+       close() --> closed for good         |
 *       +----------------------------------------------------------------+
 */
export class Connection {
  #opening: Promise<Database> | null = null;
  #closed = false;
  readonly #listeners = new Set<(fault: StoreFault) => void>();
  readonly #older: OlderShapes;

  constructor(older: OlderShapes) {
    this.#older = older;
  }

  onClosed(listener: (fault: StoreFault) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Does the work, within the limit, and on a fresh connection again if the first
   * one was lost or did not answer. The work must be safe to repeat.
   *
   * @throws StoreFailure
   */
  async run<T>(work: (db: Database) => Promise<T>, limitMs = LIMIT_MS): Promise<T> {
    for (let tries = 1; ; tries += 1) {
      const opening = this.open();
      try {
        const db = await opening;
        return await within(limitMs, work(db));
      } catch (cause) {
        const fault = toFault(cause);
        if (!isPassing(fault) || this.#closed) throw fault;
        this.#drop(opening);
        if (tries === TRIES) throw fault;
      }
    }
  }

  /** @throws StoreFailure 'blocked', 'newer', 'timeout' or 'closed'. */
  open(): Promise<Database> {
    if (this.#closed) return Promise.reject(new StoreFailure('closed', 'the store was closed'));
    if (this.#opening !== null) return this.#opening;
    const opening = this.#connect();
    this.#opening = opening;
    opening.catch(() => this.#forget(opening));
    return opening;
  }

  close(): void {
    this.#closed = true;
    if (this.#opening !== null) this.#drop(this.#opening);
  }

  #forget(opening: Promise<Database>): void {
    if (this.#opening === opening) this.#opening = null;
  }

  #drop(opening: Promise<Database>): void {
    this.#forget(opening);
    opening
      .then((db) => db.close())
      .catch(() => {
        // It never opened: nothing to close, and the fault went to whoever asked.
      });
  }

  async #connect(): Promise<Database> {
    let blocked = false;
    // The next use finds the connection closed and opens another.
    const tell = (fault: StoreFault): void => {
      for (const listener of this.#listeners) listener(fault);
    };
    try {
      if (!('indexedDB' in globalThis))
        throw new StoreFailure('closed', 'this browser has no database');
      const opening = openDB<Schema>(DATABASE_NAME, DATABASE_VERSION, {
        upgrade: (db, from, _to, upgrade) => migrateFrom(from, db, upgrade, this.#older),
        // Not final: the other window may close in time.
        blocked() {
          blocked = true;
        },
        blocking(_from, to, event) {
          // At once: whoever asks cannot go on before we are gone.
          (event.target as IDBDatabase).close();
          tell(
            to === null
              ? { kind: 'closed', detail: 'the database is being deleted' }
              : { kind: 'newer', detail: `another window wants version ${to}` },
          );
        },
        terminated() {
          tell({ kind: 'closed', detail: 'the browser closed the connection' });
        },
      });
      try {
        return await within(LIMIT_MS, opening);
      } catch (cause) {
        // One that opens after the limit must not stand in another window's way.
        opening
          .then((late) => late.close())
          .catch(() => {
            // It failed: told by the throw below.
          });
        throw cause;
      }
    } catch (cause) {
      const fault = toFault(cause);
      if (blocked && fault.kind === 'timeout')
        throw new StoreFailure('blocked', 'another window holds an older version open');
      throw fault;
    }
  }
}
