import type { CostWeights } from '../../../src/plan/costWeights.ts';
import {
  effortFor,
  type FoundOrder,
  fairOrder,
  type SearchEffort,
} from '../../../src/plan/fairOrder.ts';
import { namedStarts } from '../../../src/plan/orderCost.ts';
import { type OrderRequest, orderProblem } from '../../../src/plan/orderProblem.ts';
import type { Mounting } from '../../../src/plan/plan.ts';
import { mulberry32, seed } from '../../../src/science/mulberry32.ts';
import { must } from '../../../src/science/refusal.ts';
import { type OrderCase, orderCase } from '../../arbitraries/orders.ts';

/** Lists of so many turns, by chance, the same each time. */
export const listsOf = (
  count: number,
  leastTurns: number,
  mostTurns: number,
  mounting: Mounting = 'swaps',
): readonly OrderCase[] =>
  Array.from({ length: count }, (_, index) =>
    orderCase(
      mulberry32(seed(1000 + index)),
      { leastTurns, mostTurns, mostRepeats: 2, darks: true },
      mounting,
    ),
  );

/** What a search came to, and how long it took. */
export interface Searched {
  readonly found: FoundOrder;
  readonly ms: number;
}

/** Looks for the order of a list as the app does. */
export function search(
  request: OrderRequest,
  weights: CostWeights,
  { effort, from = 1 }: { readonly effort?: SearchEffort; readonly from?: number } = {},
): Searched {
  const problem = must(orderProblem(request));
  const starts = namedStarts(request, problem);
  const began = performance.now();
  const looking = fairOrder(problem, weights, seed(from), effort ?? effortFor(problem), starts);
  let step = looking.next();
  while (!step.done) step = looking.next();
  return { found: must(step.value), ms: performance.now() - began };
}
