/**
 * Who may write an outing: this window, another one, or nobody can tell because
 * the browser has no locks (the journal's keys are then the only fence).
 */
export type Ownership = 'owner' | 'elsewhere' | 'unsupported';

/** Keeps two windows from running one outing. A window that dies gives its outings up. */
export interface OutingLocks {
  /** Takes the outing if no other window has it. Owning it already is no error. */
  claim(outing: string): Promise<Ownership>;
  /** Gives the outing up; the next window that waits gets it. */
  release(outing: string): void;
  /**
   * Waits until the outing is given up elsewhere and takes it.
   *
   * @returns 'elsewhere' if the signal ended the wait.
   */
  takeOver(outing: string, signal: AbortSignal): Promise<Ownership>;
}

/** The part of the browser's lock manager that is used. */
interface LockRequests {
  request(
    name: string,
    options: LockOptions,
    whenDecided: (lock: Lock | null) => Promise<void> | undefined,
  ): Promise<unknown>;
}

export function browserLocks(locks: LockRequests | undefined): OutingLocks {
  const owned = new Map<string, () => void>();

  const request = (outing: string, options: LockOptions): Promise<Ownership> => {
    if (locks === undefined) return Promise.resolve('unsupported');
    if (owned.has(outing)) return Promise.resolve('owner');
    return new Promise((resolve) => {
      locks
        .request(`evenfall-outing-${outing}`, options, (lock) => {
          if (lock === null) {
            // Our own second question may have lost against our first.
            resolve(owned.has(outing) ? 'owner' : 'elsewhere');
            return undefined;
          }
          resolve('owner');
          // Held until this is called, or the window is gone.
          return new Promise<void>((release) => {
            owned.set(outing, release);
          });
        })
        .catch(() => {
          resolve(options.signal?.aborted === true ? 'elsewhere' : 'unsupported');
        });
    });
  };

  return {
    claim: (outing) => request(outing, { ifAvailable: true }),
    takeOver: (outing, signal) => request(outing, { signal }),
    release(outing) {
      owned.get(outing)?.();
      owned.delete(outing);
    },
  };
}
