import { Listeners } from './listeners.ts';
import type { Page } from './page.ts';

/** Whether the system has promised to keep the screen on. */
export type ScreenLock = 'held' | 'not-held' | 'unsupported';

/** Keeps the screen on while it is wanted. */
export interface WakeLock {
  readonly state: ScreenLock;
  /** Asks now, and again at each return into sight until `release`. Safe to call at each tap. */
  take(): Promise<void>;
  release(): Promise<void>;
  /** @returns ends the listening. */
  onChange(listener: (state: ScreenLock) => void): () => void;
}

export function screenWakeLock(
  page: Page,
  system: Pick<globalThis.WakeLock, 'request'> | undefined,
): WakeLock {
  const changed = new Listeners<[ScreenLock]>();
  let state: ScreenLock = system === undefined ? 'unsupported' : 'not-held';
  let wanted = false;
  let asking: Promise<void> | null = null;
  let held: WakeLockSentinel | null = null;

  const become = (next: ScreenLock): void => {
    if (state === next) return;
    state = next;
    changed.tell(next);
  };

  const ask = async (): Promise<void> => {
    if (system === undefined) return;
    let sentinel: WakeLockSentinel;
    try {
      sentinel = await system.request('screen');
    } catch {
      // Refused: hidden, low battery, or by policy. The mark on the screen says so.
      become('not-held');
      return;
    }
    if (!wanted) {
      await sentinel.release();
      return;
    }
    // It may have been taken back before we heard that it was given.
    if (sentinel.released) return become('not-held');
    held = sentinel;
    sentinel.addEventListener('release', () => {
      if (held !== sentinel) return;
      held = null;
      become('not-held');
    });
    become('held');
  };

  const askOnce = (): Promise<void> => {
    if (held !== null) return Promise.resolve();
    asking ??= ask().finally(() => {
      asking = null;
    });
    return asking;
  };

  page.onReturn(() => {
    if (wanted) void askOnce();
  });

  return {
    get state() {
      return state;
    },
    take() {
      wanted = true;
      return askOnce();
    },
    async release() {
      wanted = false;
      await held?.release();
    },
    onChange: (listener) => changed.add(listener),
  };
}
