import type { Seed } from '../science/mulberry32.ts';
import { isRefusal, type Refusal } from '../science/refusal.ts';
import type { CostWeights } from './costWeights.ts';
import { fairOrder, type SearchEffort, type SearchProgress } from './fairOrder.ts';
import { type CostedOrder, costedOrder } from './orderCost.ts';
import type { OrderProblem } from './orderProblem.ts';

/** What a swap is worth along the way from 'fairest' to 'fewest swaps', in stops. */
export const SWAP_WORTHS: readonly number[] = [0, 0.005, 0.02, 0.08, 0.3, 1];

/** A point between 'fairest' and 'fewest swaps': the cheapest order where a swap is worth so much. */
export interface TradePoint {
  readonly perSwap: number;
  readonly order: readonly number[];
  readonly costed: CostedOrder;
  readonly proven: boolean;
  /** No order costs less, in stops. */
  readonly least: number;
}

/** What is left unfair in an order, in stops: fade, heat and minutes outside, as weighed. */
export const unfairness = ({ cost }: CostedOrder): number => cost.fade + cost.heat + cost.outside;

/**
 * The orders between 'fairest' and 'fewest swaps', one for each worth of a swap, the cheapest swap
 * first. Each search starts from the orders found before it. Costs of different points are weighed
 * differently: compare their swaps and their unfairness.
 */
export function* orderTrade(
  problem: OrderProblem,
  weights: CostWeights,
  from: Seed,
  effort: SearchEffort,
  starts: readonly (readonly number[])[],
): Generator<SearchProgress, readonly TradePoint[] | Refusal> {
  const points: TradePoint[] = [];
  for (const [index, perSwap] of SWAP_WORTHS.entries()) {
    const weighed = { ...weights, perSwap };
    const search = fairOrder(problem, weighed, from, effort, [
      ...starts,
      ...points.map(({ order }) => order),
    ]);
    let step = search.next();
    for (; !step.done; step = search.next()) {
      // Half for improving, half for proving, so that it never goes back.
      const { doing, share } = step.value;
      const done = (doing === 'improving' ? share : 1 + share) / 2;
      yield { ...step.value, share: (index + done) / SWAP_WORTHS.length };
    }
    if (isRefusal(step.value)) return step.value;
    const { order, proven, least } = step.value;
    points.push({ perSwap, order, proven, least, costed: costedOrder(problem, order, weighed) });
  }
  return points;
}
