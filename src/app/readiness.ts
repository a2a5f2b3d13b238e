import { type ReadonlySignal, signal } from '@preact/signals';
import type { Keeping, Persistence } from '../device/persistence.ts';

export type { Keeping } from '../device/persistence.ts';

/** Whether the app starts without a network; 'unsupported': this browser lets no app do so. */
export type OfflineState = 'looking' | 'ready' | 'not-ready' | 'unsupported';

/** What the app can promise about itself on this device. */
export interface Readiness {
  readonly offline: ReadonlySignal<OfflineState>;
  readonly keeping: ReadonlySignal<Keeping>;
  /** A newer version lies here whole and waits. */
  readonly updateWaits: ReadonlySignal<boolean>;
  /** Told by the service worker. */
  readonly onOffline: (state: OfflineState) => void;
  readonly onUpdateWaits: () => void;
  /** Asks the browser to keep what is stored. Nothing waits for the answer. */
  askToKeep(): void;
}

export function createReadiness({ persistence }: { readonly persistence: Persistence }): Readiness {
  const offline = signal<OfflineState>('looking');
  const keeping = signal<Keeping>('unknown');
  const updateWaits = signal(false);
  const take = (answer: Promise<Keeping>) => {
    void answer.then((state) => {
      keeping.value = state;
    });
  };
  take(persistence.persisted());
  return {
    offline,
    keeping,
    updateWaits,
    onOffline: (state) => {
      offline.value = state;
    },
    onUpdateWaits: () => {
      updateWaits.value = true;
    },
    askToKeep: () => take(persistence.askPersist()),
  };
}
