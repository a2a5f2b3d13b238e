import 'fake-indexeddb/auto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { describe, expect, it } from 'vitest';
import { openStore } from '../../src/store/indexedDb.ts';
import { DATABASE_NAME, DATABASE_VERSION } from '../../src/store/schema.ts';
import { storeOptions } from './journals.ts';

interface StoreShape {
  readonly keyPath: string | string[] | null;
  readonly autoIncrement: boolean;
  readonly indexes: Readonly<
    Record<string, { readonly keyPath: string | string[]; readonly unique: boolean }>
  >;
}
type Shape = Readonly<Record<string, StoreShape>>;

/** The shapes that were shipped: one file for each version, never edited afterwards. */
const folder = join(import.meta.dirname, 'schema');
const shipped = readdirSync(folder)
  .sort()
  .map((file) => JSON.parse(readFileSync(join(folder, file), 'utf8')) as Shape);

async function shapeNow(): Promise<Shape> {
  globalThis.indexedDB = new IDBFactory();
  (await openStore(storeOptions())).close();
  const db = await openDB(DATABASE_NAME);
  const transaction = db.transaction([...db.objectStoreNames]);
  const shape = Object.fromEntries(
    [...db.objectStoreNames].map((name): [string, StoreShape] => {
      const store = transaction.objectStore(name);
      return [
        name,
        {
          keyPath: store.keyPath,
          autoIncrement: store.autoIncrement,
          indexes: Object.fromEntries(
            [...store.indexNames].map((index) => {
              const { keyPath, unique } = store.index(index);
              return [index, { keyPath, unique }];
            }),
          ),
        },
      ];
    }),
  );
  await transaction.done;
  db.close();
  return shape;
}

describe('the database', () => {
  it('has the shape that is written down for its version', async () => {
    expect(shipped).toHaveLength(DATABASE_VERSION);
    expect(await shapeNow()).toEqual(shipped.at(-1));
  });

  it('still has every store and index of every version before, unchanged', async () => {
    const now = await shapeNow();
    for (const shape of shipped) expect(now).toMatchObject(shape);
  });
});
