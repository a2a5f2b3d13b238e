import type { Seed } from '../science/mulberry32.ts';
import { isRefusal, type Refusal } from '../science/refusal.ts';
import type { Stops } from '../science/units.ts';
import type { CostWeights } from './costWeights.ts';
import { fairOrder, type SearchEffort, type SearchProgress } from './fairOrder.ts';
import { type CostedOrder, costedOrder } from './orderCost.ts';
import type { OrderProblem } from './orderProblem.ts';

/** What a swap is worth along the way from 'fairest' to 'fewest swaps', in stops. */
export const SWAP_WORTHS: readonly Stops[] = [0, 0.005, 0.02, 0.08, 0.3, 1] as Stops[];

/** The point on that way that lies nearest to a worth. */
export const nearestWorth = (worth: Stops): Stops =>
  SWAP_WORTHS.reduce((near, each) =>
    Math.abs(each - worth) < Math.abs(near - worth) ? each : near,
  );

/** A point between 'fairest' and 'fewest swaps': the cheapest order where a swap is worth so much. */
export interface TradePoint {
  readonly perSwap: Stops;
  readonly order: readonly number[];
  readonly costed: CostedOrder;
  /** Whether no order is cheaper. */
  readonly proven: boolean;
  /** No order costs less, in stops. */
  readonly least: number;
}

/** Where the search for a trade has got to. */
export interface TradeProgress extends SearchProgress {
  /** What is found by then, the cheapest swap first. */
  readonly points: readonly TradePoint[];
}

/** What is left unfair in an order, in stops: fade, heat and minutes outside, as weighed. */
export const unfairness = ({ cost }: CostedOrder): number => cost.fade + cost.heat + cost.outside;

/** After its first point a search starts from what it has found, and takes so much less. */
const LESS_WALKS = 4;

/**
 * The orders between 'fairest' and 'fewest swaps', one for each worth of a swap, the cheapest swap
 * first. Each search starts from the orders found before it, and where one is not proven, the
 * cheapest of all orders found is taken: dearer swaps never bring more of them. Costs of different
 * points are weighed differently: compare their swaps and their unfairness.
 *
 * @param first the worth that is looked at first: what is asked for most is known soonest.
 */
export function* orderTrade(
  problem: OrderProblem,
  weights: CostWeights,
  from: Seed,
  effort: SearchEffort,
  starts: readonly (readonly number[])[],
  first: Stops = 0 as Stops,
): Generator<TradeProgress, readonly TradePoint[] | Refusal> {
  const soonest = nearestWorth(first);
  const worths = [soonest, ...SWAP_WORTHS.filter((worth) => worth !== soonest)];
  let points: readonly TradePoint[] = [];
  for (const [index, perSwap] of worths.entries()) {
    const weighed = { ...weights, perSwap };
    const known = points.map(({ order }) => order);
    const own = index === 0 ? effort : { ...effort, walks: Math.ceil(effort.walks / LESS_WALKS) };
    const search = fairOrder(problem, weighed, from, own, [...starts, ...known]);
    let step = search.next();
    for (; !step.done; step = search.next()) {
      // Half for improving, half for proving, so that it never goes back.
      const { doing, share } = step.value;
      const done = (doing === 'improving' ? share : 1 + share) / 2;
      yield { ...step.value, share: (index + done) / worths.length, points };
    }
    if (isRefusal(step.value)) return step.value;
    const { order, proven, least } = step.value;
    const costed = costedOrder(problem, order, weighed);
    points = [...points, { perSwap, order, proven, least, costed }].sort(
      (a, b) => a.perSwap - b.perSwap,
    );
    points = points.map((point) => cheapestOf(problem, weights, point, points));
  }
  return points;
}

/** A point with the cheapest of all orders found for its worth of a swap. */
function cheapestOf(
  problem: OrderProblem,
  weights: CostWeights,
  point: TradePoint,
  points: readonly TradePoint[],
): TradePoint {
  if (point.proven) return point;
  const { perSwap } = point;
  const costAt = ({ costed: { cost, swaps } }: TradePoint): number =>
    cost.total - cost.swaps + perSwap * swaps;
  const cheapest = points.reduce(
    (best, each) => (costAt(each) < costAt(best) ? each : best),
    point,
  );
  return cheapest === point
    ? point
    : {
        ...point,
        order: cheapest.order,
        costed: costedOrder(problem, cheapest.order, { ...weights, perSwap }),
      };
}
