import { deleteDB, openDB } from 'idb';
import { toFault } from './fault.ts';
import { DATABASE_NAME } from './schema.ts';
import { LIMIT_MS, within } from './time-limit.ts';

/** What lies in the database: its own version and the records of each of its stores. */
export interface Dump {
  readonly version: number;
  readonly stores: Readonly<Record<string, readonly unknown[]>>;
}

/** A journal of many evenings from a slow flash (our choice). */
const READ_LIMIT_MS = 60_000;

/**
 * Reads whatever lies in the database, of whatever version, and changes nothing: no migration, no
 * reader, no trust in what is found.
 *
 * @returns null where there is no database.
 * @throws StoreFailure
 */
export async function dumpDatabase(): Promise<Dump | null> {
  let isNew = false;
  try {
    const db = await within(
      LIMIT_MS,
      openDB(DATABASE_NAME, undefined, {
        upgrade() {
          isNew = true;
        },
      }),
    );
    try {
      const names = [...db.objectStoreNames];
      const { version } = db;
      if (isNew || names.length === 0) return null;
      const transaction = db.transaction(names);
      const stores = await within(
        READ_LIMIT_MS,
        Promise.all(
          names.map(async (name) => [name, await transaction.objectStore(name).getAll()] as const),
        ),
      );
      return { version, stores: Object.fromEntries(stores) };
    } finally {
      db.close();
      // Looking must not leave an empty one behind.
      if (isNew) await deleteDB(DATABASE_NAME);
    }
  } catch (cause) {
    throw toFault(cause);
  }
}
