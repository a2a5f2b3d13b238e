import { mulberry32, type Seed } from '../science/mulberry32.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import type { CostWeights } from './costWeights.ts';
import { boundTables, leastCost } from './orderBound.ts';
import { type Costed, costOf, improve, wander } from './orderImprovement.ts';
import { allowed, fitted } from './orderPlaces.ts';
import type { OrderProblem } from './orderProblem.ts';
import { prove } from './orderProof.ts';
import { startState } from './orderRun.ts';
import { ROUNDING, type Search } from './orderSearch.ts';

/*
 * The order of frames that costs least.
 *
 * First by improving: from the cheapest starts, exchanges of two turns, reversals of a stretch and
 * moves of a stretch of up to four turns are taken as long as one makes the order cheaper. Then by
 * wandering: from the best order changes of chance are let pass though they make it dearer, less and
 * less so (simulated annealing), and what that finds is improved again.
 *
 * Then by proving: all orders are gone through, turn by turn, leaving out what cannot become
 * cheaper than the best known by the bound of orderBound.ts. If that comes to its end within its
 * steps the order is the cheapest there is, and said to be. Else it is one that no such exchange,
 * reversal or move makes cheaper and that beats or equals every start; how much cheaper any order
 * could be at most is said by the bound, which is a wide one for long lists. Measured on 60 lists of
 * 4 to 12 turns (test/bench/order.bench.ts): without its proof the search found the cheapest order of
 * nine lists in ten, and one 20 % dearer at worst; on lists of 48 turns two seeds may end a fifth apart.
 *
 * Pure and repeatable: it takes its chance from the seed and its pauses by yielding.
 */

/** How much work is allowed. */
export interface SearchEffort {
  /** Walks from the best order, and changes tried on each for every turn. */
  readonly walks: number;
  readonly tries: number;
  /** Turns tried while proving. */
  readonly steps: number;
}

/** Up to so many turns a search goes on until it has proven its order the cheapest. */
const PROVEN_UP_TO = 12;
/** Up to so many it is worth trying. */
const OFTEN_PROVEN_UP_TO = 16;

/**
 * What a search may take: up to 12 turns as much as it needs (all of some hundred generated lists
 * were proven, most in less than a second); beyond, what seconds allow.
 */
export function effortFor({ turns }: OrderProblem): SearchEffort {
  if (turns <= PROVEN_UP_TO) return { walks: 1, tries: 100, steps: 100_000_000 };
  return { walks: 12, tries: 600, steps: turns <= OFTEN_PROVEN_UP_TO ? 1_000_000 : 50_000 };
}

/** Where a search has got to; what it has by then may be used. */
export interface SearchProgress {
  readonly doing: 'improving' | 'proving';
  /** The part of that work that is done, of the most it may take; from 0 to 1. */
  readonly share: number;
  /** The best order so far, as indices of kinds, and its cost in stops. */
  readonly order: readonly number[];
  readonly cost: number;
}

/** What a search ends with. */
export interface FoundOrder {
  readonly order: readonly number[];
  readonly cost: number;
  /** Whether no order is cheaper. */
  readonly proven: boolean;
  /** No order is cheaper than this. */
  readonly least: number;
}
/** So many of the starts are improved, the cheapest. */
const STARTS_IMPROVED = 3;
/**
 * How much dearer a change may make an order when a walk begins, against what changes do as a rule,
 * walk after walk; found by trying on generated lists.
 */
const WARMEST = [1, 0.1, 0.3];

/**
 * Looks for the cheapest order of the turns of a problem.
 *
 * @param starts further orders to start from, for example the named ones; the one that stands is
 * always tried.
 * @returns a refusal ('locked-against-mounting') if no order keeps both what is locked and one rig at
 * a time.
 */
export function* fairOrder(
  problem: OrderProblem,
  weights: CostWeights,
  from: Seed,
  effort: SearchEffort = effortFor(problem),
  starts: readonly (readonly number[])[] = [],
): Generator<SearchProgress, FoundOrder | Refusal> {
  const possible = [problem.standing, ...starts]
    .map((order) => fitted(problem, order))
    .filter((order) => allowed(problem, order));
  const [first] = possible;
  if (!first) return refuse('locked-against-mounting');
  const search: Search = {
    problem,
    weights,
    best: first,
    cost: Number.POSITIVE_INFINITY,
  };
  const progress = (doing: SearchProgress['doing'], share: number): SearchProgress => ({
    doing,
    share,
    order: search.best,
    cost: search.cost,
  });
  const random = mulberry32(from);
  const tables = boundTables(problem);
  const keep = ({ order, cost }: Costed): void => {
    if (cost >= search.cost - ROUNDING) return;
    search.best = order;
    search.cost = cost;
  };
  function* improved(start: readonly number[], share: number): Generator<SearchProgress, void> {
    const improving = improve(search, start);
    let step = improving.next();
    for (; !step.done; step = improving.next()) yield progress('improving', share);
    keep(step.value);
  }
  const costed = possible.map(
    (order): Costed => ({ order, cost: costOf(problem, weights, order) }),
  );
  costed.sort((a, b) => a.cost - b.cost);
  for (const start of costed.slice(0, STARTS_IMPROVED)) {
    keep(start);
    yield* improved(start.order, 0);
  }
  for (let walk = 0; walk < effort.walks; walk += 1) {
    const warmest = WARMEST[walk % WARMEST.length] as number;
    const wandering = wander(search, effort.tries * problem.turns, warmest, random);
    let step = wandering.next();
    for (; !step.done; step = wandering.next()) {
      yield progress('improving', (walk + step.value) / effort.walks);
    }
    keep(step.value);
    yield* improved(search.best, (walk + 1) / effort.walks);
  }
  const least = leastCost(problem, tables, weights, startState(problem));
  const proving = prove(search, tables, effort.steps);
  let step = proving.next();
  for (; !step.done; step = proving.next()) yield progress('proving', step.value);
  // What the proof met on its way may have cheaper neighbours.
  if (!step.value) yield* improved(search.best, 1);
  return {
    order: search.best,
    cost: search.cost,
    proven: step.value,
    least: step.value ? search.cost : Math.min(least, search.cost),
  };
}
