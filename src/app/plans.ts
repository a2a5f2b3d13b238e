import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { RigId } from '../gear/ids.ts';
import { positionsOf } from '../gear/positions.ts';
import { type Fault, isFault } from '../gear/read.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { addSet, changeOrder, changeRigs, changeSet, copySet, deleteSet } from '../plan/edit.ts';
import type { PlanId, SetId } from '../plan/ids.ts';
import { matchSettings } from '../plan/matching.ts';
import { newPlan, newSet } from '../plan/newPlan.ts';
import { swapCount } from '../plan/order.ts';
import { readPlan } from '../plan/parse.ts';
import { ORDERS, type OrderName, type Plan, type PlanSet } from '../plan/plan.ts';
import { PRACTICE_PLAN_ID, practicePlan } from '../plan/practicePlan.ts';
import { dialledIn, type Prepared, preparePlan } from '../plan/prepare.ts';
import { type ReadyListName, readyList } from '../plan/readyLists.ts';
import { isRefusal } from '../science/refusal.ts';
import type { Seconds } from '../science/units.ts';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';
import type { Undo } from './undo.ts';

/** What a plan starts from. */
export interface NewPlan {
  readonly name: string;
  /** The reference of a ready list first. */
  readonly rigs: readonly RigId[];
  /** Null = no sets yet. */
  readonly list: ReadyListName | null;
}

/** What one order of frames comes to. */
export interface OrderCost {
  readonly order: OrderName;
  readonly swaps: number;
  readonly wallS: Seconds;
}

/**
 * The plans and every act on them. An act shows at once and is written behind it; what cannot be
 * written is kept and said (`Saving`). An act that would make a plan absurd changes nothing and
 * returns the fault.
 */
export interface PlanDesk {
  /** Own plans first, by name. */
  readonly plans: ReadonlySignal<readonly Plan[]>;
  /** The plan that was left open, also over a restart; null = the list. */
  readonly open: ReadonlySignal<PlanId | null>;
  load(): Promise<void>;
  /** Remembers what is open. */
  show(id: PlanId | null): void;
  /** The plan worked out on the gear as it is now; null if it is gone. */
  prepared(id: PlanId): ReadonlySignal<Prepared | null>;
  /** What each order would come to, a set that keeps its own number of passes included. */
  orders(id: PlanId): readonly OrderCost[];

  make(start: NewPlan): PlanId | Fault;
  /** The copy of an invented plan is its owner's own. */
  copy(id: PlanId, name: string): PlanId | Fault;
  /** `edit` gives the changed plan: one of `plan/edit.ts`, or by hand. */
  change(id: PlanId, edit: (plan: Plan) => Plan): Fault | null;
  remove(id: PlanId): void;

  setRigs(id: PlanId, rigs: readonly RigId[]): Fault | null;
  setOrder(id: PlanId, order: OrderName): Fault | null;

  /** A set like the last one, to be changed. Null where there is no rig to be set. */
  addSet(id: PlanId): SetId | Fault | null;
  changeSet(id: PlanId, set: SetId, change: Partial<PlanSet>): Fault | null;
  copySet(id: PlanId, set: SetId): SetId | Fault;
  removeSet(id: PlanId, set: SetId): void;
  /** Another reference, which keeps what it was to be set to. */
  setReference(id: PlanId, set: SetId, rig: RigId): Fault | null;
  /** Every rig by hand, each keeping what it was to be set to. */
  setFree(id: PlanId, set: SetId): Fault | null;

  /** Puts the invented plan of the practice outing among the rest, if it is not there. */
  addPractice(): PlanId;
}

const OPEN_KEY = 'open-plan';

export function createPlanDesk({
  store,
  gear,
  saving,
  undo,
  newId,
}: {
  readonly store: Pick<Store, 'plans' | 'putPlans' | 'setting' | 'putSetting'>;
  readonly gear: ReadonlySignal<Gear>;
  readonly saving: Pick<Saving, 'save'>;
  readonly undo: Pick<Undo, 'offer'>;
  readonly newId: () => string;
}): PlanDesk {
  const kept = signal<readonly Plan[]>([]);
  const open = signal<PlanId | null>(null);
  const worked = new Map<PlanId, ReadonlySignal<Prepared | null>>();

  const find = (id: PlanId): Plan | undefined => kept.peek().find((plan) => plan.id === id);
  /** @throws RangeError if the screen shows a plan that is not there. */
  const planOf = (id: PlanId): Plan => {
    const plan = find(id);
    if (plan === undefined) throw new RangeError(`no such plan: ${id}`);
    return plan;
  };

  /** As `find`, for what is worked out again when the plan changes. */
  const shown = (id: PlanId): Plan | undefined => kept.value.find((plan) => plan.id === id);

  const apply = (plan: Plan, deleted: boolean) => {
    const others = kept.peek().filter(({ id }) => id !== plan.id);
    kept.value = (deleted ? others : [...others, plan]).toSorted(ownFirst);
    saving.save(() => store.putPlans([{ plan, deleted }]));
  };
  /** Parses before it puts. */
  const put = (plan: Plan): PlanId | Fault => {
    const read = readPlan(plan);
    if (isFault(read)) return read;
    apply(read, false);
    return read.id;
  };
  const change: PlanDesk['change'] = (id, edit) => {
    const plan = find(id);
    // A field commits what is typed in it when its screen goes away, perhaps with its plan.
    if (!plan) return null;
    const result = put(edit(plan));
    return isFault(result) ? result : null;
  };

  const prepared: PlanDesk['prepared'] = (id) => {
    let known = worked.get(id);
    if (known === undefined) {
      known = computed(() => {
        const plan = shown(id);
        return plan ? preparePlan(plan, gear.value) : null;
      });
      worked.set(id, known);
    }
    return known;
  };

  /** What a rig stands on in a set, or would have to start from; null if it has no dials. */
  const settingsOn = (id: PlanId, set: SetId, rig: RigId): Settings | null => {
    const table = prepared(id)
      .peek()
      ?.table.find((candidate) => candidate.set === set);
    const now = dialledIn(table, rig);
    if (now) return now.settings;
    const other = assemble(gear.peek(), rig);
    if (!other) return null;
    if (table?.kind === 'compared') {
      const { reference } = table;
      const assembled = assemble(gear.peek(), reference.rig);
      const match =
        assembled &&
        matchSettings({
          reference: { assembled, ...reference.dialled },
          other,
          hold: { kind: 'same-exposure' },
        });
      if (match && !isRefusal(match)) return match.settings;
    }
    return startOn([other]);
  };

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
    prepared,
    orders(id) {
      const plan = shown(id);
      if (!plan) return [];
      return ORDERS.map((order) => {
        const { frames, timeline } = preparePlan(changeOrder(plan, order), gear.value);
        return { order, swaps: swapCount(frames), wallS: timeline.wallS };
      });
    },

    make({ name, rigs, list }) {
      const plan = newPlan(newId() as PlanId, name, rigs);
      const assembled = rigs.flatMap((rig) => assemble(gear.peek(), rig) ?? []);
      const ready = list && readyList(list, assembled, () => newId() as SetId);
      // A rig whose dials refuse leaves the list empty; the plan then says which one.
      return put(ready && !isRefusal(ready) ? { ...plan, ...ready } : plan);
    },
    copy: (id, name) => put({ ...planOf(id), id: newId() as PlanId, name, invented: false }),
    change,
    remove(id) {
      const plan = planOf(id);
      apply(plan, true);
      undo.offer({ act: 'deleted', thing: 'plan', name: plan.name }, () => apply(plan, false));
    },

    setRigs: (id, rigs) =>
      change(id, (plan) => {
        const [first] = rigs;
        const changed = changeRigs(plan, rigs);
        return {
          ...changed,
          sets: changed.sets.map((set, index) =>
            first === undefined || set.reference === plan.sets[index]?.reference
              ? set
              : { ...set, settings: settingsOn(id, set.id, first) ?? set.settings },
          ),
        };
      }),
    setOrder: (id, order) => change(id, (plan) => changeOrder(plan, order)),

    addSet(id) {
      const { rigs, sets, order } = planOf(id);
      const setId = newId() as SetId;
      const last = sets.findLast(({ kind }) => kind !== 'capped-dark');
      if (last) {
        return change(id, (plan) => addSet(plan, { ...last, id: setId, intent: '' })) ?? setId;
      }
      const assembled = rigs.flatMap((rig) => assemble(gear.peek(), rig) ?? []);
      const [first] = assembled;
      const settings = startOn(assembled);
      if (!first || !settings) return null;
      return (
        change(id, (plan) => addSet(plan, newSet(setId, first.rig.id, settings, order))) ?? setId
      );
    },
    changeSet: (id, set, part) =>
      change(id, (plan) => changeSet(plan, set, (before) => ({ ...before, ...part }))),
    copySet(id, set) {
      const copyId = newId() as SetId;
      return change(id, (plan) => copySet(plan, set, copyId)) ?? copyId;
    },
    removeSet(id, setId) {
      const { sets } = planOf(id);
      const at = sets.findIndex((set) => set.id === setId);
      const set = sets[at];
      if (!set) return;
      apply(deleteSet(planOf(id), setId), false);
      // Put back into the plan as it then is: what was changed since stays.
      undo.offer({ act: 'deleted', thing: 'set', name: set.intent }, () => {
        const now = find(id);
        if (now) apply(addSet(now, set, at), false);
      });
    },
    setReference: (id, set, rig) =>
      change(id, (plan) => {
        const settings = settingsOn(id, set, rig);
        return changeSet(plan, set, (before) => ({
          ...before,
          reference: rig,
          settings: settings ?? before.settings,
          hold:
            before.hold.kind === 'free'
              ? {
                  kind: 'free',
                  settings: { ...before.hold.settings, [before.reference]: before.settings },
                }
              : before.hold,
        }));
      }),
    setFree: (id, set) =>
      change(id, (plan) => {
        const settings = Object.fromEntries(
          plan.rigs.flatMap((rig) => {
            const now = settingsOn(id, set, rig);
            return now ? [[rig, now]] : [];
          }),
        );
        return changeSet(plan, set, (before) => ({ ...before, hold: { kind: 'free', settings } }));
      }),

    addPractice() {
      if (!find(PRACTICE_PLAN_ID)) apply(practicePlan(), false);
      return PRACTICE_PLAN_ID;
    },
  };
}

/** The store knows no order but that of the ids, which are random. */
const ownFirst = (a: Plan, b: Plan): number =>
  Number(a.invented) - Number(b.invented) || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);

/**
 * What the first of some rigs starts from with nothing to match: the first step of a ready list,
 * else its own first marks. Null if it has no dials.
 */
function startOn(rigs: readonly Assembled[]): Settings | null {
  const ready = readyList('base-iso-latitude', rigs, () => 'start' as SetId);
  const settings = isRefusal(ready) ? undefined : ready.sets[0]?.settings;
  if (settings) return settings;
  const [first] = rigs;
  const positions = first && positionsOf(first.body, first.lens);
  if (!positions || isRefusal(positions)) return null;
  const [f] = positions.fNumbers;
  const time = positions.times.at(-1);
  const [speed] = positions.isos;
  return f && time && speed
    ? { fMark: f.mark, time: { kind: 'dial', mark: time.mark }, isoMark: speed.mark }
    : null;
}
