import { type ReadonlySignal, signal } from '@preact/signals';

/** A thing that was deleted. */
export interface Deleted {
  readonly act: 'deleted';
  readonly thing: 'body' | 'lens' | 'rig' | 'offset' | 'heat' | 'plan' | 'set' | 'site' | 'outing';
  /** What the user calls it; empty if it has no name. */
  readonly name: string;
}

/** A destructive act, as the screen words it. */
export type Deed = Deleted | { readonly act: 'order-replaced' };

/** Remembers how to take back the last destructive act. */
export interface Undo {
  readonly last: ReadonlySignal<{ readonly deed: Deed } | null>;
  /** Replaces the act before it: two deep would need an order to take back in. */
  offer(deed: Deed, takeBack: () => void): void;
  take(): void;
  dismiss(): void;
}

export function createUndo(): Undo {
  const last = signal<{ readonly deed: Deed; readonly takeBack: () => void } | null>(null);
  return {
    last,
    offer(deed, takeBack) {
      last.value = { deed, takeBack };
    },
    take() {
      const act = last.value;
      last.value = null;
      act?.takeBack();
    },
    dismiss() {
      last.value = null;
    },
  };
}
