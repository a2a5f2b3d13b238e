import { type CostWeights, USUAL_WEIGHTS } from '../../src/plan/costWeights.ts';
import { costedOrder } from '../../src/plan/orderCost.ts';
import { orderProblem } from '../../src/plan/orderProblem.ts';
import { must } from '../../src/science/refusal.ts';
import type { OrderCase } from '../arbitraries/orders.ts';
import { inSteps } from './orders/inSteps.ts';
import { listsOf, search } from './orders/lists.ts';
import { type SolvedOrder, solveOrder, type TurnNamed } from './orders/timedNetwork.ts';
import type { Bench } from './ratio.ts';
import { above, median, type Table } from './table.ts';

/*
 * The search against a general solver, on what a linear program can state: fade by the light table,
 * windows, swaps and wall time, with rests by the rule of thumb; all but the heat, whose weight is
 * 0 for both. Lists are those of orders.ts with their lengths in steps (see inSteps.ts).
 */

const NO_HEAT: CostWeights = { ...USUAL_WEIGHTS, heatPerStop: 0 };
const LIMIT_SECONDS = 20;

/** How many lists of each number of turns. */
const LISTS: readonly { readonly turns: number; readonly count: number }[] = [
  { turns: 4, count: 25 },
  { turns: 6, count: 30 },
  { turns: 8, count: 20 },
  { turns: 9, count: 8 },
  { turns: 10, count: 4 },
  { turns: 12, count: 4 },
];
const BRIEF = 2;

interface Compared {
  readonly ours: number;
  readonly oursMs: number;
  /** Null where its network is too large. */
  readonly solver: SolvedOrder | null;
  /** By how much the two differ about what the solver's own order costs. */
  readonly disagreement: number;
}

/** What our own reckoning makes of an order of the solver's. */
function costOf(request: OrderCase, order: readonly TurnNamed[]): number {
  const problem = must(orderProblem(request));
  const indices = order.map(({ set, rig }) =>
    problem.kinds.findIndex(
      ({ passes }) => passes[0]?.[0]?.set === set && passes[0]?.[0]?.rig === rig,
    ),
  );
  return costedOrder(problem, indices, NO_HEAT).cost.total;
}

async function compared(request: OrderCase): Promise<Compared> {
  const { found, ms } = search(request, NO_HEAT);
  const solver = await solveOrder(request, NO_HEAT, LIMIT_SECONDS);
  return {
    ours: found.cost,
    oursMs: ms,
    solver,
    disagreement: solver?.order ? Math.abs(solver.cost - costOf(request, solver.order)) : 0,
  };
}

function line(turns: number | string, all: readonly Compared[]): Table['lines'][number] {
  const tried = all.filter(({ solver }) => solver !== null);
  const proven = tried.filter(({ solver }) => solver?.proven);
  const gaps = proven.map(({ ours, solver }) => ours / (solver?.cost ?? Number.NaN));
  const seconds = (of: readonly number[]) =>
    of.length === 0 ? '' : `${median(of).toFixed(2)} / ${Math.max(...of).toFixed(2)}`;
  return [
    turns,
    all.length,
    all.length - tried.length,
    proven.length,
    proven.length === 0 ? '' : above(median(gaps), 1),
    proven.length === 0 ? '' : above(Math.max(...gaps), 1),
    proven.length === 0 ? '' : above(Math.min(...gaps), 1),
    Math.max(...all.map(({ disagreement }) => disagreement)).toExponential(0),
    seconds(proven.map(({ oursMs }) => oursMs / 1000)),
    seconds(proven.map(({ solver }) => solver?.seconds ?? Number.NaN)),
  ];
}

export const bench: Bench = async (_, brief) => {
  const lines: Table['lines'][number][] = [];
  const all: Compared[] = [];
  for (const { turns, count } of LISTS) {
    const swaps = listsOf(brief ? BRIEF : count, turns, turns);
    const ones = listsOf(brief ? 1 : Math.ceil(count / 5), turns, turns, 'one-rig-at-a-time');
    const outcomes: Compared[] = [];
    for (const request of [...swaps, ...ones]) outcomes.push(await compared(inSteps(request)));
    lines.push(line(turns, outcomes));
    all.push(...outcomes);
  }
  const proven = all.filter(({ solver }) => solver?.proven);
  return [
    {
      name: `our search against HiGHS, all but heat, ${LIMIT_SECONDS} s a list`,
      heads: [
        'turns',
        'lists',
        'too large',
        'proven',
        'our gap, median',
        'worst',
        'best',
        'unlike, stops',
        'ours, s',
        'solver, s',
      ],
      lines: [...lines, line('all', all)],
    },
    {
      name: 'cost found by our search against the optimum that the solver has proven',
      measured: proven.map(({ ours }) => ours),
      against: proven.map(({ solver }) => solver?.cost ?? Number.NaN),
      unit: 'stops',
    },
  ];
};
