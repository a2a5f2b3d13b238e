import { describe, expect, it } from 'vitest';
import { FakeLockManager } from '../../test/contract/fakes/lockManager.ts';
import { locksCases } from '../../test/contract/locks.contract.ts';
import { browserLocks } from './locks.ts';

describe('an outing has one window', () => {
  it.each(locksCases)('$name', async ({ run }) => {
    await run(() => {
      const locks = new FakeLockManager();
      return { one: browserLocks(locks), other: browserLocks(locks), outing: 'outing-1' };
    });
  });

  it('in a browser without locks nobody can tell', async () => {
    const locks = browserLocks(undefined);
    expect(await locks.claim('outing-1')).toBe('unsupported');
    expect(await locks.takeOver('outing-1', new AbortController().signal)).toBe('unsupported');
    locks.release('outing-1');
  });

  it('nor where the browser forbids them', async () => {
    const forbidden = () => Promise.reject(new DOMException('no', 'SecurityError'));
    expect(await browserLocks({ request: forbidden }).claim('outing-1')).toBe('unsupported');
  });
});
