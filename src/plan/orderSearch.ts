import type { CostWeights } from './costWeights.ts';
import type { OrderProblem } from './orderProblem.ts';

/** What the parts of a search work with: the problem, and the best order so far with its cost. */
export interface Search {
  readonly problem: OrderProblem;
  readonly weights: CostWeights;
  best: readonly number[];
  cost: number;
}

/** Differences of cost below this are rounding, in stops. */
export const ROUNDING = 1e-9;
/** Steps between two looks outside. */
export const STEPS_A_LOOK = 5000;
