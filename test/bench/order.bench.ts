import { type CostWeights, USUAL_WEIGHTS } from '../../src/plan/costWeights.ts';
import type { SearchEffort } from '../../src/plan/fairOrder.ts';
import { namedOrders } from '../../src/plan/orderCost.ts';
import type { OrderRequest } from '../../src/plan/orderProblem.ts';
import { must } from '../../src/science/refusal.ts';
import { listsOf, type Searched, search } from './orders/lists.ts';
import type { Bench, Ratio } from './ratio.ts';

/*
 * Whether the search is worth its place: over generated lists, how often the best named order comes
 * within 5 % of the computed one, by three ways of weighing; and how near the search comes without its
 * proof.
 */

const WITHIN = 1.05;
const SHORT_CASES = 60;
const LONG_CASES = 8;

const WEIGHINGS: readonly { readonly name: string; readonly weights: CostWeights }[] = [
  { name: 'usual weights', weights: USUAL_WEIGHTS },
  {
    name: 'fairness alone',
    weights: { ...USUAL_WEIGHTS, perSwap: 0, wallPerMinute: 0 },
  },
  { name: 'swaps five times as dear', weights: { ...USUAL_WEIGHTS, perSwap: 0.1 } },
];

/** What a list of more than 16 turns gets, on one short enough to be proven. */
const AS_IF_LONG: SearchEffort = { walks: 12, tries: 600, steps: 0 };

interface Outcome extends Searched {
  readonly named: number;
}

function outcome(request: OrderRequest, weights: CostWeights): Outcome {
  const named = must(namedOrders(request, weights))
    .filter(({ name }) => name !== 'side-by-side')
    .map(({ cost }) => cost.total);
  return { named: Math.min(...named), ...search(request, weights) };
}

/** What a group of lists comes to under one way of weighing. */
function compared(
  lists: string,
  requests: readonly OrderRequest[],
  { name, weights }: (typeof WEIGHINGS)[number],
): readonly Ratio[] {
  const outcomes = requests.map((request) => outcome(request, weights));
  const near = outcomes.filter(({ named, found }) => named <= WITHIN * found.cost).length;
  const proven = outcomes.filter(({ found }) => found.proven).length;
  const all = [requests.length];
  const of = `${lists}, ${name}`;
  return [
    {
      name: `best named order within 5 % of the computed: ${of}`,
      measured: [near],
      against: all,
      unit: 'lists',
    },
    {
      name: `cost of the best named order against the computed: ${of}`,
      measured: outcomes.map(({ named, found }) => named / found.cost),
      against: [1],
      unit: 'cost',
    },
    { name: `proven cheapest: ${of}`, measured: [proven], against: all, unit: 'lists' },
    {
      name: `slowest search against the usual: ${of}`,
      measured: [Math.max(...outcomes.map(({ ms }) => ms))],
      against: outcomes.map(({ ms }) => ms),
      unit: 'ms',
    },
  ];
}

/** How near the search comes without its proof, as it must on long lists. */
const unproven = (requests: readonly OrderRequest[]): Ratio => ({
  name: 'cost found as on long lists, without proof, against the proven: 4 to 12 turns',
  measured: requests.map(
    (request) =>
      search(request, USUAL_WEIGHTS, { effort: AS_IF_LONG }).found.cost /
      search(request, USUAL_WEIGHTS).found.cost,
  ),
  against: [1],
  unit: 'cost',
});

export const bench: Bench = async (_, brief) => {
  const short = listsOf(brief ? 4 : SHORT_CASES, 4, 12);
  const long = listsOf(brief ? 1 : LONG_CASES, 13, 32);
  return [
    ...WEIGHINGS.flatMap((weighing) => compared('4 to 12 turns', short, weighing)),
    ...WEIGHINGS.slice(0, 1).flatMap((weighing) => compared('13 to 32 turns', long, weighing)),
    unproven(short),
  ];
};
