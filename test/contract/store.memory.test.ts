import { describe, it } from 'vitest';
import { memoryStore } from '../../src/store/memory.ts';
import { storeOptions } from './journals.ts';
import { storeCases } from './store.contract.ts';

describe('the store in memory', () => {
  it.each(storeCases)('$name', async ({ run }) => {
    await run(async () => memoryStore(storeOptions()));
  });
});
