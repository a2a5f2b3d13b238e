import { type ReadonlySignal, signal } from '@preact/signals';
import type { StoreFault } from '../store/contract.ts';
import { toFault } from '../store/fault.ts';

export type { StoreFault } from '../store/contract.ts';

export type SavingState =
  | { readonly kind: 'saved' }
  | { readonly kind: 'saving' }
  /** Everything since is kept in memory, in order, until it can be written. */
  | { readonly kind: 'not-saved'; readonly fault: StoreFault };

/**
 * Writes what is edited at the desk (gear, plans, preferences), one after the other. A write that
 * fails stays at the head of the queue: nothing is dropped, and the screen can say so.
 *
 * Not for an outing's journal, whose taps wait for their own write.
 */
export interface Saving {
  readonly state: ReadonlySignal<SavingState>;
  /** Takes a write into the queue. */
  save(write: () => Promise<void>): void;
  /** Tries again from the write that failed. */
  retry(): void;
}

export function createSaving(): Saving {
  const state = signal<SavingState>({ kind: 'saved' });
  const queue: (() => Promise<void>)[] = [];

  const run = async (): Promise<void> => {
    state.value = { kind: 'saving' };
    for (let write = queue[0]; write !== undefined; write = queue[0]) {
      try {
        await write();
      } catch (cause) {
        state.value = { kind: 'not-saved', fault: toFault(cause) };
        return;
      }
      queue.shift();
    }
    state.value = { kind: 'saved' };
  };

  return {
    state,
    save(write) {
      queue.push(write);
      if (state.peek().kind !== 'saving') void run();
    },
    retry() {
      if (state.peek().kind === 'not-saved') void run();
    },
  };
}
