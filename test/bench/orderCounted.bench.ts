import { USUAL_WEIGHTS } from '../../src/plan/costWeights.ts';
import type { SetId } from '../../src/plan/ids.ts';
import { costedOrder } from '../../src/plan/orderCost.ts';
import { type OrderProblem, orderProblem } from '../../src/plan/orderProblem.ts';
import { MOUNTINGS, type Mounting } from '../../src/plan/plan.ts';
import { must } from '../../src/science/refusal.ts';
import type { OrderCase } from '../arbitraries/orders.ts';
import { listsOf, search } from './orders/lists.ts';
import type { Bench } from './ratio.ts';
import type { Table } from './table.ts';

/*
 * The search against all orders there are, counted out one by one: the whole cost, heat and every
 * kind of rest included, each way of mounting, with and without locks. What an order costs is taken
 * from its frames as the app shows them; which orders there are is decided here.
 */

const LEAST_TURNS = 2;
const MOST_TURNS = 8;
const LISTS = 40;
const BRIEF = 4;

/** Whether an order is one that may be shot: locked turns in their places, no rig brought back. */
function mayBeShot(
  { kinds, sets, standing }: OrderProblem,
  { mounting, locked }: OrderCase,
  order: readonly number[],
): boolean {
  const isLocked = (kind: number): boolean => locked.has(sets[kinds[kind]?.set ?? -1]?.id as SetId);
  if (standing.some((kind, place) => isLocked(kind) && order[place] !== kind)) return false;
  if (mounting !== 'one-rig-at-a-time') return true;
  const rigs = order.map((kind) => kinds[kind]?.parts[0]?.rig);
  const comings = rigs.filter((rig, place) => rig !== rigs[place - 1]);
  return new Set(comings).size === comings.length;
}

/** All distinct orders of the turns of a problem. */
function* distinctOrders({ kinds, turns }: OrderProblem): Generator<readonly number[]> {
  function* longer(begun: readonly number[]): Generator<readonly number[]> {
    if (begun.length === turns) yield begun;
    for (const { index, count } of kinds) {
      if (begun.filter((kind) => kind === index).length < count) yield* longer([...begun, index]);
    }
  }
  yield* longer([]);
}

interface Counted {
  readonly orders: number;
  readonly proven: boolean;
  readonly cheapest: number;
  readonly found: number;
}

function counted(request: OrderCase): Counted {
  const problem = must(orderProblem(request));
  let orders = 0;
  let cheapest = Number.POSITIVE_INFINITY;
  for (const order of distinctOrders(problem)) {
    if (!mayBeShot(problem, request, order)) continue;
    orders += 1;
    cheapest = Math.min(cheapest, costedOrder(problem, order, USUAL_WEIGHTS).cost.total);
  }
  const { found } = search(request, USUAL_WEIGHTS);
  return { orders, proven: found.proven, cheapest, found: found.cost };
}

function line(name: string, all: readonly Counted[]): Table['lines'][number] {
  return [
    name,
    all.length,
    Math.max(...all.map(({ orders }) => orders)),
    all.filter(({ proven }) => proven).length,
    Math.max(...all.map(({ found, cheapest }) => Math.abs(found - cheapest))).toExponential(1),
  ];
}

export const bench: Bench = async (_, brief) => {
  const lists = (mounting: Mounting) =>
    listsOf(brief ? BRIEF : LISTS, LEAST_TURNS, MOST_TURNS, mounting);
  const groups = [
    ...MOUNTINGS.map((mounting) => ({ name: mounting as string, requests: lists(mounting) })),
    {
      name: 'swaps, the first set locked',
      requests: lists('swaps').map(
        (request): OrderCase => ({ ...request, locked: new Set(['set-1' as SetId]) }),
      ),
    },
  ].map(({ name, requests }) => ({ name, all: requests.map(counted) }));
  const all = groups.flatMap((group) => group.all);
  const proven = all.filter((each) => each.proven);
  return [
    {
      name: `our search against all orders, the whole cost, up to ${MOST_TURNS} turns`,
      heads: ['mounting', 'lists', 'most orders', 'proven', 'largest gap, stops'],
      lines: [...groups.map((group) => line(group.name, group.all)), line('all', all)],
    },
    {
      name: `dearest proven order against the cheapest of all, up to ${MOST_TURNS} turns`,
      measured: Math.max(...proven.map(({ found, cheapest }) => found / cheapest)),
      against: 1,
      unit: 'cost',
      aim: 1 + 1e-9,
    },
  ];
};
