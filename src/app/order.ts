import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import { assemble, type Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import { arrange, changeMounting, changeOrder } from '../plan/edit.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { PlanId } from '../plan/ids.ts';
import { turnsOf } from '../plan/order.ts';
import type { OrderLight, OrderQuestion } from '../plan/orderRequest.ts';
import type { TradePoint } from '../plan/orderTrade.ts';
import type { Mounting, OrderName, Plan } from '../plan/plan.ts';
import { sameTurns } from '../plan/turnMoves.ts';
import { madeOnce } from './desks.ts';
import type { KeptGear } from './keptGear.ts';
import type { KeptPlans } from './keptPlans.ts';
import { type OrderAnswer, type StartSearch, searchInWorker } from './orderSearch.ts';
import type { SiteDesk } from './sites.ts';
import type { Undo } from './undo.ts';

/** How the search for the order of a plan stands. */
export type OrderState =
  | {
      readonly kind: 'idle';
      /** Something was found, and what it was worked out from has changed since. */
      readonly isOutdated: boolean;
    }
  | {
      readonly kind: 'looking';
      readonly share: number;
      readonly points: readonly TradePoint[];
      readonly light: OrderLight | null;
    }
  | {
      readonly kind: 'found';
      readonly points: readonly TradePoint[];
      /** The light in which the orders were compared. */
      readonly light: OrderLight | null;
      /** False if it was ended before it had gone all the way from 'fairest' to 'fewest swaps'. */
      readonly isWhole: boolean;
    }
  | { readonly kind: 'refused'; readonly rule: string }
  | { readonly kind: 'failed' };

/**
 * Looks for the order of frames of one plan at a time. What was found is kept until the plan, its
 * gear or its site changes in anything that the search had to do with: the order that stands is no
 * such thing, but the places of locked sets are.
 */
export interface OrderDesk {
  state(id: PlanId): OrderState;
  /** Ends a search that is under way, of whatever plan, and begins this one. */
  look(question: OrderQuestion): void;
  /** Ends the search; what it has found by then stays. */
  cancel(): void;

  /* An arrangement that one of these replaces can be had back. */
  /** The plan takes a found order, with what a swap is worth there. */
  take(id: PlanId, point: TradePoint): void;
  choose(id: PlanId, order: OrderName): void;
  mount(id: PlanId, mounting: Mounting): void;
}

/** What the desk needs of the app. */
export interface OrderWorld {
  readonly plans: Pick<KeptPlans, 'plans' | 'put' | 'prepared'>;
  readonly gear: Pick<KeptGear, 'gear'>;
  readonly sites: Pick<SiteDesk, 'sites'>;
  readonly undo: Pick<Undo, 'offer'>;
}

/** A search with all that it hangs on, as text. */
interface Search {
  readonly plan: PlanId;
  readonly hangsOn: string;
  readonly light: OrderLight | null;
  readonly state: OrderState;
}

const IDLE: OrderState = { kind: 'idle', isOutdated: false };
const OUTDATED: OrderState = { kind: 'idle', isOutdated: true };

/** Where the turns of locked sets stand. */
const lockedPlaces = (plan: Plan, frames: readonly PlannedFrame[]) =>
  turnsOf(plan, frames).map(({ set, rig }) => (plan.locked.includes(set) ? [set, rig] : null));

/** A plan as it now is, in the order that it had before. */
const withOrderOf = (
  { order, oneRigAtATime, arranged, swapWorth, sets }: Plan,
  now: Plan,
): Plan => ({
  ...now,
  order,
  oneRigAtATime,
  arranged,
  swapWorth,
  sets: now.sets.map((set) => ({
    ...set,
    passes: sets.find(({ id }) => id === set.id)?.passes ?? set.passes,
  })),
});

/** All that an answer hangs on; of the order that stands only what is locked in it. */
function hangsOn(
  plan: Plan,
  frames: readonly PlannedFrame[],
  gear: Gear,
  sites: readonly Site[],
): string {
  const { name: _, note: __, arranged: ___, swapWorth: ____, ...rest } = plan;
  return JSON.stringify([
    rest,
    plan.locked.length > 0 ? lockedPlaces(plan, frames) : null,
    plan.rigs.map((rig) => assemble(gear, rig)),
    sites.find(({ id }) => id === plan.evening?.site) ?? null,
  ]);
}

export function createOrderDesk(
  { plans, gear, sites, undo }: OrderWorld,
  start: StartSearch,
): OrderDesk {
  const search = signal<Search | null>(null);
  let end = () => {};

  const find = (id: PlanId): Plan | undefined =>
    plans.plans.value.find((candidate) => candidate.id === id);
  const nowHangsOn = (id: PlanId): string | null => {
    const plan = find(id);
    const frames = plans.prepared(id).value?.frames;
    return plan && frames ? hangsOn(plan, frames, gear.gear.value, sites.sites.value) : null;
  };
  const current: ReadonlySignal<string | null> = computed(() =>
    search.value ? nowHangsOn(search.value.plan) : null,
  );
  effect(() => {
    const last = search.value;
    if (!last || last.state.kind === 'idle' || last.hangsOn === current.value) return;
    end();
    const { kind } = last.state;
    search.value = { ...last, state: kind === 'looking' || kind === 'found' ? OUTDATED : IDLE };
  });

  const found = (state: OrderState): readonly TradePoint[] =>
    state.kind === 'looking' || state.kind === 'found' ? state.points : [];

  const hear = (answer: OrderAnswer): void => {
    const last = search.peek();
    if (!last) return;
    const { light } = last;
    const state: OrderState =
      answer.kind === 'looking'
        ? { ...answer, light, points: answer.points ?? found(last.state) }
        : answer.kind === 'found'
          ? { ...answer, light, isWhole: true }
          : answer;
    if (answer.kind !== 'looking') end();
    search.value = { ...last, state };
  };

  const change = (id: PlanId, edit: (plan: Plan) => Plan): void => {
    const before = plans.plans.peek().find((candidate) => candidate.id === id);
    if (!before) return;
    const after = edit(before);
    plans.put(after, false);
    const { arranged } = before;
    if (arranged === null || (after.arranged && sameTurns(arranged, after.arranged))) return;
    undo.offer({ act: 'order-replaced' }, () => {
      const now = plans.plans.peek().find((candidate) => candidate.id === id);
      if (now) plans.put(withOrderOf(before, now), false);
    });
  };

  return {
    state(id) {
      const last = search.value;
      return last?.plan === id ? last.state : IDLE;
    },
    look(question) {
      end();
      const { plan, frames, light } = question;
      search.value = {
        plan: plan.id,
        hangsOn: hangsOn(plan, frames, gear.gear.peek(), sites.sites.peek()),
        light,
        state: { kind: 'looking', share: 0, points: [], light },
      };
      let wanted = true;
      const stop = start(question, (answer) => {
        if (wanted) hear(answer);
      });
      end = () => {
        wanted = false;
        stop();
      };
    },
    cancel() {
      const last = search.peek();
      if (last?.state.kind !== 'looking') return;
      end();
      const { points, light } = last.state;
      search.value = {
        ...last,
        state: points.length > 0 ? { kind: 'found', points, light, isWhole: false } : IDLE,
      };
    },
    take: (id, { perSwap, costed }) =>
      change(id, (plan) => ({
        ...arrange(plan, turnsOf(plan, costed.frames)),
        swapWorth: perSwap,
      })),
    choose: (id, order) => change(id, (plan) => changeOrder(plan, order)),
    mount: (id, mounting) => change(id, (plan) => changeMounting(plan, mounting)),
  };
}

/** The one desk of an app. */
export const orderDesk = madeOnce((world: OrderWorld) => createOrderDesk(world, searchInWorker));
