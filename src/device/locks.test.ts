import { afterEach, describe, expect, it, vi } from 'vitest';
import { FakeLockManager } from '../../test/contract/fakes/lockManager.ts';
import { tiedTalk } from '../../test/contract/fakes/windowTalk.ts';
import { locksCases } from '../../test/contract/locks.contract.ts';
import { browserLocks, type WindowTalk, windowTalk } from './locks.ts';

const channels: BroadcastChannel[] = [];

/** A window's own end of what reaches all others. */
function talk(): WindowTalk {
  const channel = new BroadcastChannel('evenfall-test');
  channels.push(channel);
  return channel;
}

afterEach(() => {
  for (const channel of channels.splice(0)) channel.close();
  vi.useRealTimers();
});

describe('an outing has one window', () => {
  it.each(locksCases)('$name', async ({ run }) => {
    await run(() => {
      const locks = new FakeLockManager();
      return {
        one: browserLocks(locks, talk()),
        other: browserLocks(locks, talk()),
        outing: 'outing-1',
      };
    });
  });

  it('a window that does not answer is silent, and the wait for it leaves nothing behind', async () => {
    vi.useFakeTimers();
    const locks = new FakeLockManager();
    const dead = browserLocks(locks, null);
    const other = browserLocks(locks, talk());
    await dead.claim('outing-1');
    const asking = other.ask('outing-1');
    await vi.advanceTimersByTimeAsync(2499);
    expect(await Promise.race([asking, 'waiting'])).toBe('waiting');
    await vi.advanceTimersByTimeAsync(1);
    expect(await asking).toBe('silent');
    dead.release('outing-1');
    await vi.advanceTimersByTimeAsync(1);
    expect(await dead.claim('outing-1')).toBe('owner');
  });

  it('a window that hears but is busy with a slow disk is waited for', async () => {
    vi.useFakeTimers();
    const locks = new FakeLockManager();
    const [here, there] = tiedTalk();
    const busy = browserLocks(locks, here);
    const other = browserLocks(locks, there);
    await busy.claim('outing-1');
    busy.onAsked(async () => {
      await new Promise((done) => setTimeout(done, 12_000));
      return true;
    });
    const asking = other.ask('outing-1');
    await vi.advanceTimersByTimeAsync(11_999);
    expect(await Promise.race([asking, 'waiting'])).toBe('waiting');
    await vi.advanceTimersByTimeAsync(1);
    expect(await asking).toBe('owner');
  });

  it('but not for ever: one that never ends its writing counts as silent', async () => {
    vi.useFakeTimers();
    const locks = new FakeLockManager();
    const [here, there] = tiedTalk();
    const stuck = browserLocks(locks, here);
    const other = browserLocks(locks, there);
    await stuck.claim('outing-1');
    stuck.onAsked(() => new Promise<never>(() => undefined));
    const asking = other.ask('outing-1');
    await vi.advanceTimersByTimeAsync(14_000);
    expect(await Promise.race([asking, 'waiting'])).toBe('waiting');
    await vi.advanceTimersByTimeAsync(1500);
    expect(await asking).toBe('silent');
  });

  it('in a browser without locks nobody can tell', async () => {
    const locks = browserLocks(undefined, null);
    expect(await locks.claim('outing-1')).toBe('unsupported');
    expect(await locks.ask('outing-1')).toBe('unsupported');
    expect(await locks.steal('outing-1')).toBe('unsupported');
    locks.release('outing-1');
    locks.tellWritten('outing-1');
  });

  it('nor where the browser forbids them', async () => {
    const forbidden = () => Promise.reject(new DOMException('no', 'SecurityError'));
    expect(await browserLocks({ request: forbidden }, null).claim('outing-1')).toBe('unsupported');
  });

  it('a browser without channels between windows has nobody to talk to', () => {
    vi.stubGlobal('BroadcastChannel', undefined);
    expect(windowTalk()).toBeNull();
    vi.unstubAllGlobals();
  });
});
