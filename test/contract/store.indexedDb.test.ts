import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { describe, it } from 'vitest';
import { openStore } from '../../src/store/indexedDb.ts';
import { storeOptions } from './journals.ts';
import { storeCases } from './store.contract.ts';

describe('the store in a database', () => {
  it.each(storeCases)('$name', async ({ run }) => {
    await run(() => {
      globalThis.indexedDB = new IDBFactory();
      return openStore(storeOptions());
    });
  });
});
