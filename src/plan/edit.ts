import type { RigId } from '../gear/ids.ts';
import type { SetId } from './ids.ts';
import { DEFAULT_PASSES } from './passes.ts';
import {
  type Mounting,
  mountingOf,
  type OrderName,
  type Plan,
  type PlanSet,
  type TurnPlace,
} from './plan.ts';

/*
 * Every edit gives a new plan and leaves the old one as it was: undo is keeping the old one.
 */

/** The plan with a set added at a place, 0 being first; at the end unless a place is given. */
export const addSet = (plan: Plan, set: PlanSet, at: number = plan.sets.length): Plan => ({
  ...plan,
  sets: plan.sets.toSpliced(at, 0, set),
});

/** The plan with a copy of a set straight after it; the same plan if there is no such set. */
export function copySet(plan: Plan, id: SetId, copyId: SetId): Plan {
  const at = plan.sets.findIndex((set) => set.id === id);
  const original = plan.sets[at];
  return original ? addSet(plan, { ...original, id: copyId }, at + 1) : plan;
}

/** The plan without a set. */
export const deleteSet = (plan: Plan, id: SetId): Plan => ({
  ...plan,
  sets: plan.sets.filter((set) => set.id !== id),
  locked: plan.locked.filter((each) => each !== id),
});

/**
 * The plan with a set at another place, 0 being first; a place beyond either end means that end.
 * The same plan if there is no such set.
 */
export function moveSet(plan: Plan, id: SetId, to: number): Plan {
  const moved = plan.sets.find((set) => set.id === id);
  return moved ? addSet(deleteSet(plan, id), moved, Math.max(0, to)) : plan;
}

/** The plan with one set changed. */
export const changeSet = (plan: Plan, id: SetId, change: (set: PlanSet) => PlanSet): Plan => ({
  ...plan,
  sets: plan.sets.map((set) => (set.id === id ? change(set) : set)),
});

/**
 * The plan in another order. A set that had the passes usual in the old order gets those usual in
 * the new one; a number that its owner chose stays.
 */
export const changeOrder = (plan: Plan, order: OrderName): Plan => ({
  ...plan,
  order,
  oneRigAtATime: plan.oneRigAtATime && order === 'rig-by-rig',
  arranged: null,
  sets: plan.sets.map((set) =>
    set.kind !== 'capped-series' && set.passes === DEFAULT_PASSES[plan.order]
      ? { ...set, passes: DEFAULT_PASSES[order] }
      : set,
  ),
});

/** What a tripod for all rigs in turn is used for unless its owner says otherwise. */
const USUAL_SWAPPING: OrderName = 'mirror';

/** The plan with its rigs standing another way, in an order that can be shot so. */
export function changeMounting(plan: Plan, mounting: Mounting): Plan {
  if (mounting === mountingOf(plan)) return plan;
  const order: OrderName =
    mounting === 'side-by-side'
      ? 'side-by-side'
      : mounting === 'one-rig-at-a-time'
        ? 'rig-by-rig'
        : USUAL_SWAPPING;
  return { ...changeOrder(plan, order), oneRigAtATime: mounting === 'one-rig-at-a-time' };
}

/** The plan with its turns in an order of their own. */
export const arrange = (plan: Plan, turns: readonly TurnPlace[]): Plan => ({
  ...plan,
  arranged: turns,
});

/** The plan with a set's turns held in their places, or free again. */
export const lockSet = (plan: Plan, id: SetId, on: boolean): Plan => ({
  ...plan,
  locked: on
    ? [...plan.locked.filter((each) => each !== id), id]
    : plan.locked.filter((each) => each !== id),
});

/** The plan for other rigs; a set whose reference is no longer among them takes the first. */
export const changeRigs = (plan: Plan, rigs: readonly RigId[]): Plan => ({
  ...plan,
  rigs,
  sets: plan.sets.map((set) => {
    const [first] = rigs;
    return first === undefined || rigs.includes(set.reference) ? set : { ...set, reference: first };
  }),
});
