import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { browserPersistence } from './persistence.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const never = new Promise<never>(() => {});
const storage = (answers: {
  readonly persist?: Promise<boolean>;
  readonly persisted?: Promise<boolean>;
  readonly estimate?: Promise<StorageEstimate>;
}) => ({
  persist: () => answers.persist ?? never,
  persisted: () => answers.persisted ?? never,
  estimate: () => answers.estimate ?? never,
});

describe('whether the browser keeps what is stored', () => {
  it.each([
    [true, 'kept'],
    [false, 'may-be-cleared'],
  ] as const)('it says %s: %s', async (answer, keeping) => {
    const persistence = browserPersistence(
      storage({ persist: Promise.resolve(answer), persisted: Promise.resolve(answer) }),
    );
    expect(await persistence.persisted()).toBe(keeping);
    expect(await persistence.askPersist()).toBe(keeping);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('its own question to the user stays open: unknown, in the end', async () => {
    const persistence = browserPersistence(storage({}));
    const asked = vi.fn();
    void persistence.askPersist().then(asked);
    await vi.advanceTimersByTimeAsync(59_000);
    expect(asked).not.toHaveBeenCalled();
    await vi.advanceTimersByTimeAsync(1000);
    expect(asked).toHaveBeenCalledExactlyOnceWith('unknown');
  });

  it('it refuses to talk, or cannot: unknown', async () => {
    const refusing = browserPersistence(
      storage({
        persist: Promise.reject(new TypeError('no')),
        persisted: Promise.reject(new TypeError('no')),
        estimate: Promise.reject(new TypeError('no')),
      }),
    );
    const none = browserPersistence(undefined);
    // Seen to fail where the question is put outside of the try.
    const halfMade = browserPersistence({} as StorageManager);
    for (const persistence of [refusing, none, halfMade]) {
      expect(await persistence.persisted()).toBe('unknown');
      expect(await persistence.askPersist()).toBe('unknown');
      expect(await persistence.space()).toBeNull();
    }
  });
});

describe('the space', () => {
  it('is told in bytes, if both figures are', async () => {
    const full = storage({ estimate: Promise.resolve({ usage: 10, quota: 100 }) });
    expect(await browserPersistence(full).space()).toEqual({ usedBytes: 10, allowedBytes: 100 });
    const half = storage({ estimate: Promise.resolve({ usage: 10 }) });
    expect(await browserPersistence(half).space()).toBeNull();
  });

  it('is unknown if the browser does not answer within four seconds', async () => {
    const asked = vi.fn();
    void browserPersistence(storage({})).space().then(asked);
    await vi.advanceTimersByTimeAsync(4000);
    expect(asked).toHaveBeenCalledExactlyOnceWith(null);
  });
});
