import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Gear } from '../gear/rig.ts';
import type { PlanId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { type Prepared, preparePlan } from '../plan/prepare.ts';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';

/** The plans as they are kept, as far as the first script needs them; the acts on them are the desk's (`plans.ts`). */
export interface KeptPlans {
  /** Own plans first, by name. */
  readonly plans: ReadonlySignal<readonly Plan[]>;
  /** The plan that was left open, also over a restart; null = the list. */
  readonly open: ReadonlySignal<PlanId | null>;
  load(): Promise<void>;
  /** Remembers what is open. */
  show(id: PlanId | null): void;
  /** Shows a plan at once and writes it behind. It has been parsed; `deleted` leaves a tombstone. */
  put(plan: Plan, deleted: boolean): void;
  /** The plan worked out on the gear as it is now; null if it is gone. */
  prepared(id: PlanId): ReadonlySignal<Prepared | null>;
}

const OPEN_KEY = 'open-plan';

export function createKeptPlans({
  store,
  gear,
  saving,
}: {
  readonly store: Pick<Store, 'plans' | 'putPlans' | 'setting' | 'putSetting'>;
  readonly gear: ReadonlySignal<Gear>;
  readonly saving: Pick<Saving, 'save'>;
}): KeptPlans {
  const kept = signal<readonly Plan[]>([]);
  const open = signal<PlanId | null>(null);
  const worked = new Map<PlanId, ReadonlySignal<Prepared | null>>();
  return {
    plans: kept,
    open,
    async load() {
      const [plans, last] = await Promise.all([store.plans(), store.setting(OPEN_KEY)]);
      kept.value = plans.toSorted(ownFirst);
      open.value = plans.find(({ id }) => id === last)?.id ?? null;
    },
    show(id) {
      if (id === open.peek()) return;
      open.value = id;
      saving.save(() => store.putSetting(OPEN_KEY, id));
    },
    put(plan, deleted) {
      const others = kept.peek().filter(({ id }) => id !== plan.id);
      kept.value = (deleted ? others : [...others, plan]).toSorted(ownFirst);
      saving.save(() => store.putPlans([{ plan, deleted }]));
    },
    prepared(id) {
      let known = worked.get(id);
      if (known === undefined) {
        known = computed(() => {
          const plan = kept.value.find((candidate) => candidate.id === id);
          return plan ? preparePlan(plan, gear.value) : null;
        });
        worked.set(id, known);
      }
      return known;
    },
  };
}

/** The store knows no order but that of the ids, which are random. */
const ownFirst = (a: Plan, b: Plan): number =>
  Number(a.invented) - Number(b.invented) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);
