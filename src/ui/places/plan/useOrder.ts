import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import { type OrderDesk, type OrderState, orderDesk } from '../../../app/order.ts';
import type { PlanId } from '../../../plan/ids.ts';
import { turnsOf } from '../../../plan/order.ts';
import { costedAsItStands, costedNamed } from '../../../plan/orderChoices.ts';
import type { CostedOrder } from '../../../plan/orderCost.ts';
import { type OrderLight, type OrderQuestion, orderLight } from '../../../plan/orderRequest.ts';
import { nearestWorth, type TradePoint, unfairness } from '../../../plan/orderTrade.ts';
import { ORDERS, type OrderName } from '../../../plan/plan.ts';
import { dialledIn } from '../../../plan/prepare.ts';
import { sameTurns } from '../../../plan/turnMoves.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { useApp } from '../../shell/useApp.ts';
import type { PlanView } from './usePlanView.ts';

/** The acts on the order of frames. */
export const useOrderDesk = (): OrderDesk => orderDesk(useApp().desks);

/** What a named order comes to; null where it cannot be worked out. */
type Named = ReadonlyMap<OrderName, CostedOrder | null>;

/** The order of a plan, and those that it could have, all in one light. */
export interface OrderView {
  readonly view: PlanView;
  readonly question: OrderQuestion;
  readonly lightIs: 'known' | 'unknown' | 'computing';
  readonly state: OrderState;
  /** What stands; null where there is nothing to put in order. */
  readonly current: CostedOrder | null;
  /** As far as they are worked out. */
  readonly named: Named;
  /** What was found between fewest swaps and fairest, each order once, the fewest swaps first. */
  readonly points: readonly TradePoint[];
  /** The point that is looked at; null before anything is found. */
  readonly point: TradePoint | null;
  readonly lookAt: (point: TradePoint) => void;
  /** Whether the plan's own order is the one of the point. */
  readonly isTaken: boolean;
}

/** The light of a view as a search takes it; undefined while it is worked out. */
function lightOf({ inLight, prepared }: PlanView): OrderLight | null | undefined {
  if (inLight.how === 'computing') return undefined;
  return inLight.how === 'ready'
    ? orderLight(inLight.evening.scene, inLight.light, prepared.frames)
    : null;
}

/**
 * The light in which orders are compared. What was found stays comparable: as long as it stands, all
 * orders are reckoned from its start. A change of the plan is laid on its light a moment later;
 * until then the light before it holds.
 */
function useOrderLight(view: PlanView, state: OrderState): OrderLight | null | undefined {
  const { inLight } = view;
  const now = useMemo(() => lightOf(view), [inLight]);
  const last = useRef<{ readonly plan: PlanId; readonly light: OrderLight | null } | null>(null);
  if (now !== undefined) last.current = { plan: view.plan.id, light: now };
  if (state.kind === 'looking' || state.kind === 'found') return state.light;
  if (now !== undefined) return now;
  return last.current?.plan === view.plan.id ? last.current.light : undefined;
}

/** The named orders, worked out one after the other so that the hand does not wait for them. */
function useNamed(question: OrderQuestion, view: PlanView): Named {
  const [named, setNamed] = useState<Named>(new Map());
  const { table } = view.prepared;
  useEffect(() => {
    const tables = new Map(table.map((one) => [one.set, one]));
    const worked = new Map<OrderName, CostedOrder | null>();
    let timer: ReturnType<typeof setTimeout>;
    const next = (): void => {
      const name = ORDERS[worked.size];
      if (name === undefined) {
        setNamed(worked);
        return;
      }
      const costed = costedNamed(question, name, (set, rig) => dialledIn(tables.get(set), rig));
      worked.set(name, isRefusal(costed) ? null : costed);
      timer = setTimeout(next);
    };
    timer = setTimeout(next);
    return () => clearTimeout(timer);
  }, [question, table]);
  return named;
}

/** Each order once, the fewest swaps first, each by the worth of a swap that stands for it best. */
function distinct(points: readonly TradePoint[], worth: number): readonly TradePoint[] {
  const groups: TradePoint[][] = [];
  for (const point of points) {
    const last = groups.at(-1)?.[0];
    const isSame =
      last?.costed.swaps === point.costed.swaps &&
      Math.abs(unfairness(last.costed) - unfairness(point.costed)) < 1e-6;
    if (isSame) groups.at(-1)?.push(point);
    else groups.push([point]);
  }
  return groups
    .flatMap((group, index) => {
      // At the far end a swap is to be worth as much as it can be.
      const usual = index > 0 && index === groups.length - 1 ? group.at(-1) : group[0];
      return group.find(({ perSwap }) => perSwap === worth) ?? usual ?? [];
    })
    .reverse();
}

export function useOrder(view: PlanView): OrderView {
  const { plan, prepared } = view;
  const gear = useApp().gear.gear.value;
  const state = useOrderDesk().state(plan.id);
  const light = useOrderLight(view, state);
  const question = useMemo(
    (): OrderQuestion => ({ plan, gear, frames: prepared.frames, light: light ?? null }),
    [plan, gear, prepared.frames, light],
  );
  const current = useMemo(() => {
    const costed = costedAsItStands(question);
    return isRefusal(costed) ? null : costed;
  }, [question]);
  const named = useNamed(question, view);
  const found = state.kind === 'looking' || state.kind === 'found' ? state.points : null;
  const worth = nearestWorth(plan.swapWorth);
  const points = useMemo(() => distinct(found ?? [], worth), [found, worth]);
  const [lookedAt, lookAt] = useState<number | null>(null);
  const point =
    points.find(({ perSwap }) => perSwap === (lookedAt ?? worth)) ??
    points.find(({ perSwap }) => perSwap === worth) ??
    points[0] ??
    null;
  return {
    view,
    question,
    lightIs: light === undefined ? 'computing' : light === null ? 'unknown' : 'known',
    state,
    current,
    named,
    points,
    point,
    lookAt: ({ perSwap }) => lookAt(perSwap),
    isTaken:
      point !== null &&
      plan.arranged !== null &&
      sameTurns(plan.arranged, turnsOf(plan, point.costed.frames)),
  };
}
