import { expect, it } from 'vitest';
import { orderCase } from '../../test/arbitraries/orders.ts';
import { mulberry32, seed } from '../science/mulberry32.ts';
import { must } from '../science/refusal.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import { effortFor } from './fairOrder.ts';
import { namedStarts } from './orderCost.ts';
import { orderProblem } from './orderProblem.ts';
import { orderTrade, SWAP_WORTHS, unfairness } from './orderTrade.ts';

it('gives up fairness for fewer swaps, and nothing for nothing', () => {
  let steps = 0;
  for (let from = 1; from <= 12; from += 1) {
    const size = { leastTurns: 6, mostTurns: 8, mostRepeats: 1, darks: false };
    const request = orderCase(mulberry32(seed(from)), size);
    const problem = must(orderProblem(request));
    const starts = namedStarts(request, problem);
    const weights = { ...USUAL_WEIGHTS, wallPerMinute: 0 };
    const trade = orderTrade(problem, weights, seed(1), effortFor(problem), starts);
    let step = trade.next();
    while (!step.done) step = trade.next();
    const points = must(step.value);
    expect(points.map(({ perSwap }) => perSwap)).toEqual(SWAP_WORTHS);
    for (const [index, { costed, proven }] of points.entries()) {
      expect(proven).toBe(true);
      const before = points[index - 1]?.costed;
      if (!before) continue;
      // Of two cheapest orders the one for dearer swaps has no more of them, and is no fairer.
      expect(costed.swaps).toBeLessThanOrEqual(before.swaps);
      expect(unfairness(costed)).toBeGreaterThanOrEqual(unfairness(before) - 1e-6);
      if (costed.swaps < before.swaps) steps += 1;
    }
  }
  expect(steps).toBeGreaterThan(5);
}, 60_000);
