import type { WriterId } from '../outing/ids.ts';
import type { Database } from './schema.ts';
import { writeStrictly } from './transaction.ts';

/** The stored value; undefined if there is none. */
export const readSetting = async (db: Database, key: string): Promise<unknown> =>
  (await db.get('settings', key))?.value;

export const writeSetting = (db: Database, key: string, value: unknown): Promise<void> =>
  writeStrictly(db, ['settings'], (transaction, requests) => {
    requests.push(transaction.objectStore('settings').put({ key, value }));
  });

/** The id of this installation. */
export async function readOrMakeWriter(db: Database, makeId: () => string): Promise<WriterId> {
  const known = await db.get('installation', 'writer');
  return known === undefined ? makeWriter(db, makeId) : (known.id as WriterId);
}

/** Asked again and made in one transaction, so that two windows that start together agree on it. */
const makeWriter = (db: Database, makeId: () => string): Promise<WriterId> =>
  writeStrictly(db, ['installation'], async (transaction, requests) => {
    const store = transaction.objectStore('installation');
    const known = await store.get('writer');
    if (known !== undefined) return known.id as WriterId;
    const id = makeId();
    requests.push(store.add({ key: 'writer', id }));
    return id as WriterId;
  });
