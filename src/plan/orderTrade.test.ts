import { expect, it } from 'vitest';
import { orderCase } from '../../test/arbitraries/orders.ts';
import { mulberry32, seed } from '../science/mulberry32.ts';
import { must } from '../science/refusal.ts';
import { stops } from '../science/units.ts';
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

it('never has more swaps where they are dearer, though nothing is proven; the worth asked for comes first', () => {
  for (let from = 1; from <= 6; from += 1) {
    const size = { leastTurns: 18, mostTurns: 24, mostRepeats: 1, darks: false };
    const request = orderCase(mulberry32(seed(from)), size);
    const problem = must(orderProblem(request));
    const effort = { walks: 1, tries: 2, steps: 500 };
    const first = stops(0.08);
    const trade = orderTrade(problem, USUAL_WEIGHTS, seed(1), effort, [], first);
    let share = 0;
    let soonest: number | null = null;
    let step = trade.next();
    for (; !step.done; step = trade.next()) {
      expect(step.value.share).toBeGreaterThanOrEqual(share);
      share = step.value.share;
      soonest ??= step.value.points[0]?.perSwap ?? null;
    }
    expect(soonest).toBe(first);
    const points = must(step.value);
    expect(points.map(({ perSwap }) => perSwap)).toEqual(SWAP_WORTHS);
    for (const [index, { perSwap, costed, least }] of points.entries()) {
      expect(costed.swaps).toBeLessThanOrEqual(points[index - 1]?.costed.swaps ?? Infinity);
      expect(costed.cost.swaps).toBeCloseTo(perSwap * costed.swaps, 9);
      expect(least).toBeLessThanOrEqual(costed.cost.total + 1e-9);
    }
  }
}, 60_000);
