import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { applyChanges } from '../gear/applyChanges.ts';
import type { Change } from '../gear/edit.ts';
import type { Gear } from '../gear/rig.ts';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';

/** The gear as it is kept, as far as the first script needs it; the acts on it are the desk's (`gear.ts`). */
export interface KeptGear {
  /** Own things first, each kind by letter and name. */
  readonly gear: ReadonlySignal<Gear>;
  /** Whether the user has a body of their own. */
  readonly hasOwn: ReadonlySignal<boolean>;
  load(): Promise<void>;
  /** Shows changes at once and writes them behind it, as one. What is put has been parsed. */
  apply(changes: readonly Change[]): void;
}

export function createKeptGear({
  store,
  saving,
  onFirstOwnBody,
}: {
  readonly store: Pick<Store, 'gear' | 'putGear'>;
  readonly saving: Pick<Saving, 'save'>;
  /** From now on there is something of the user's own to lose. */
  readonly onFirstOwnBody: () => void;
}): KeptGear {
  const kept = signal<Gear>({ bodies: [], lenses: [], rigs: [] });
  const hasOwn = computed(() => kept.value.bodies.some((body) => !body.invented));
  return {
    gear: computed(() => ordered(kept.value)),
    hasOwn,
    async load() {
      kept.value = await store.gear();
    },
    apply(changes) {
      const hadOwn = hasOwn.peek();
      kept.value = applyChanges(kept.peek(), changes);
      saving.save(() => store.putGear(changes));
      if (hasOwn.peek() && !hadOwn) onFirstOwnBody();
    },
  };
}

/** The store knows no order but that of the ids, which are random. */
function ordered({ bodies, lenses, rigs }: Gear): Gear {
  const by =
    <T extends { readonly invented: boolean }>(label: (thing: T) => string) =>
    (a: T, b: T): number =>
      Number(a.invented) - Number(b.invented) || (label(a) < label(b) ? -1 : 1);
  return {
    bodies: bodies.toSorted(by(({ sign, name }) => `${sign} ${name}`)),
    lenses: lenses.toSorted(by(({ name }) => name)),
    rigs: rigs.toSorted(by(({ letter }) => letter)),
  };
}
