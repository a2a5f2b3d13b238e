import { mulberry32, type Random, type Seed } from '../science/mulberry32.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { type BoundTables, boundTables, leastCost } from './orderBound.ts';
import { type CostWeights, costOfRun } from './orderCost.ts';
import type { OrderProblem, TurnKind, TurnPart } from './orderProblem.ts';
import {
  copyState,
  type RunState,
  roomToSave,
  runOrder,
  type Saved,
  save,
  startState,
  takeBack,
  takeTurn,
} from './orderRun.ts';

/*
 * The order of frames that costs least.
 *
 * First by improving: from every start, exchanges of two turns, reversals of a stretch and moves of a
 * stretch of up to four turns are taken as long as one makes the order cheaper; then the best order
 * is disturbed by chance, from a seed, and improved again, for as many rounds as asked for.
 *
 * Then by proving: all orders are gone through, turn by turn, leaving out what cannot become
 * cheaper than the best known by the bound of orderBound.ts. If that comes to its end within its
 * steps the order is the cheapest there is, and said to be; else it is one that no exchange, move or
 * reversal makes cheaper and that no start beats, and the bound says how much cheaper any order could
 * be at most.
 *
 * Pure and repeatable: it takes its chance from the seed and its pauses by yielding.
 */

/** How much work is allowed. */
export interface SearchEffort {
  /** Rounds of disturbing and improving. */
  readonly rounds: number;
  /** Turns tried while proving. */
  readonly steps: number;
}

/** Enough to prove nearly every list of twelve turns, and seconds at most beyond. */
export const USUAL_EFFORT: SearchEffort = { rounds: 30, steps: 3_000_000 };

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

/** Differences of cost below this are rounding, in stops. */
const ROUNDING = 1e-9;
/** Steps between two looks outside. */
const STEPS_A_LOOK = 5000;
/** Improvements are looked for among stretches of so many turns. */
const LONGEST_STRETCH = 4;
/** Exchanges by which an order is disturbed. */
const DISTURBANCES = 3;

/** The rig that a kind puts on the tripod; nothing where all stand side by side. */
const rigOf = (kind: TurnKind): number => (kind.parts[0] as TurnPart).rig;

/** Whether an order keeps what is locked and what the mounting allows. */
function allowed({ fixed, kinds, mounting }: OrderProblem, order: readonly number[]): boolean {
  if (fixed.some((kind, place) => kind >= 0 && order[place] !== kind)) return false;
  if (mounting !== 'one-rig-at-a-time') return true;
  const left = new Set<number>();
  let mounted = -1;
  for (const index of order) {
    const rig = rigOf(kinds[index] as TurnKind);
    if (rig === mounted) continue;
    if (left.has(rig)) return false;
    left.add(mounted);
    mounted = rig;
  }
  return true;
}

const freePlaces = ({ fixed }: OrderProblem): readonly number[] =>
  [...fixed.keys()].filter((place) => (fixed[place] as number) < 0);

/** The start nearest to an order that keeps what is locked and what the mounting allows. */
function fitted(problem: OrderProblem, order: readonly number[]): readonly number[] {
  const { fixed, kinds, mounting } = problem;
  const byRig = [...new Set(order.map((index) => rigOf(kinds[index] as TurnKind)))];
  const sorted =
    mounting === 'one-rig-at-a-time'
      ? byRig.flatMap((rig) => order.filter((index) => rigOf(kinds[index] as TurnKind) === rig))
      : [...order];
  const free = [...sorted];
  for (const kind of fixed) if (kind >= 0) free.splice(free.indexOf(kind), 1);
  return fixed.map((kind) => (kind >= 0 ? kind : (free.shift() as number)));
}

/** What both parts of the search work with. */
interface Search {
  readonly problem: OrderProblem;
  readonly weights: CostWeights;
  best: readonly number[];
  cost: number;
}

/** Free turns with the stretches [from, middle) and [middle, end) changing places. */
const exchanged = (
  turns: readonly number[],
  from: number,
  middle: number,
  end: number,
): number[] => [
  ...turns.slice(0, from),
  ...turns.slice(middle, end),
  ...turns.slice(from, middle),
  ...turns.slice(end),
];

/** The changes that begin at one of the free turns and put another kind there. */
function* changesAt(turns: readonly number[], from: number): Generator<readonly number[], void> {
  const here = turns[from] as number;
  for (let end = from + 2; end <= turns.length; end += 1) {
    const last = turns[end - 1] as number;
    if (last !== here) {
      const swapped = [...turns];
      swapped[from] = last;
      swapped[end - 1] = here;
      yield swapped;
      if (end - from > 3) {
        yield [...turns.slice(0, from), ...turns.slice(from, end).reverse(), ...turns.slice(end)];
      }
    }
    // A stretch of a few turns goes to the other end of what lies between.
    for (let length = 1; length <= LONGEST_STRETCH && length < end - from; length += 1) {
      const later = end - length;
      if (turns[later] !== here) yield exchanged(turns, from, later, end);
      if (length < later - from && turns[from + length] !== here) {
        yield exchanged(turns, from, from + length, end);
      }
    }
  }
}

/** Takes changes that make an order cheaper until none does. Yields now and then. */
function* improve(
  { problem, weights }: Search,
  start: readonly number[],
): Generator<void, { readonly order: readonly number[]; readonly cost: number }> {
  const places = freePlaces(problem);
  const state = startState(problem);
  /** Where the order has got to before each of its turns. */
  const before = Array.from({ length: problem.turns + 1 }, () => startState(problem));
  let order = [...start];
  const run = (from: number): number => {
    for (let place = from; place < order.length; place += 1) {
      copyState(before[place] as RunState, before[place + 1] as RunState);
      takeTurn(
        problem,
        before[place + 1] as RunState,
        problem.kinds[order[place] as number] as TurnKind,
      );
    }
    return costOfRun(problem, before[order.length] as RunState, weights).total;
  };
  let cost = run(0);
  let turnsTaken = 0;
  for (let better = true; better; ) {
    better = false;
    // From the end, where a change costs least to work out.
    for (let from = places.length - 1; from >= 0; from -= 1) {
      const place = places[from] as number;
      const turns = places.map((each) => order[each] as number);
      for (const changed of changesAt(turns, from)) {
        const next = [...order];
        for (const [index, each] of places.entries()) next[each] = changed[index] as number;
        if (!allowed(problem, next)) continue;
        copyState(before[place] as RunState, state);
        runOrder(problem, next, state);
        turnsTaken += order.length - place;
        if (turnsTaken > STEPS_A_LOOK) {
          turnsTaken = 0;
          yield;
        }
        if (costOfRun(problem, state, weights).total >= cost - ROUNDING) continue;
        order = next;
        cost = run(place);
        better = true;
        break;
      }
    }
  }
  return { order, cost };
}

/** An order disturbed by a few exchanges of free turns. */
function disturbed({ problem, best }: Search, random: Random): readonly number[] {
  const places = freePlaces(problem);
  const order = [...best];
  const pick = (): number => places[Math.floor(random() * places.length)] as number;
  for (let exchange = 0; exchange < DISTURBANCES && places.length > 1; exchange += 1) {
    const [one, two] = [pick(), pick()];
    [order[one], order[two]] = [order[two] as number, order[one] as number];
  }
  return fitted(problem, order);
}

/** The kinds that may come next. */
function nextKinds(problem: OrderProblem, state: RunState): readonly TurnKind[] {
  const { kinds, fixed, mounting } = problem;
  const left = (kind: TurnKind): number => kind.count - (state.done[kind.index] as number);
  const must = fixed[state.placed] as number;
  if (must >= 0) return kinds.filter(({ index }) => index === must);
  const mounted = kinds.filter((kind) => left(kind) > 0 && rigOf(kind) === state.mounted);
  const stays = mounting === 'one-rig-at-a-time' && mounted.length > 0;
  return (stays ? mounted : kinds).filter((kind) => {
    const lockedLater = fixed.filter(
      (each, place) => each === kind.index && place > state.placed,
    ).length;
    return left(kind) > lockedLater;
  });
}

/** A turn that may come next, with what any order costs at least that goes on with it. */
interface Choice {
  readonly kind: TurnKind;
  readonly least: number;
}

/**
 * Goes through all orders that could be cheaper than the best. Yields the part of its steps that is
 * used up; returns false if they ran out.
 */
function* prove(search: Search, tables: BoundTables, steps: number): Generator<number, boolean> {
  const { problem, weights } = search;
  const state = startState(problem);
  const room = roomToSave(problem);
  const rigCount = problem.rigs.length;
  const order: TurnKind[] = [];
  let taken = 0;

  const choices = (): Choice[] => {
    const saved = room[problem.turns] as Saved;
    const found: Choice[] = [];
    for (const kind of nextKinds(problem, state)) {
      save(state, kind, rigCount, saved);
      takeTurn(problem, state, kind);
      const least = leastCost(problem, tables, weights, state);
      takeBack(state, kind, rigCount, saved);
      if (least < search.cost - ROUNDING) found.push({ kind, least });
      taken += 1;
    }
    // The most promising last, where it is taken from.
    return found.sort((a, b) => b.least - a.least);
  };

  const open: Choice[][] = [choices()];
  let look = STEPS_A_LOOK;
  while (open.length > 0) {
    const choice = open.at(-1)?.pop();
    if (choice && choice.least < search.cost - ROUNDING) {
      save(state, choice.kind, rigCount, room[state.placed] as Saved);
      takeTurn(problem, state, choice.kind);
      order.push(choice.kind);
      if (state.placed === problem.turns) {
        search.cost = costOfRun(problem, state, weights).total;
        search.best = order.map(({ index }) => index);
        open.push([]);
      } else {
        open.push(choices());
      }
    } else {
      open.pop();
      const last = order.pop();
      if (last) takeBack(state, last, rigCount, room[state.placed - 1] as Saved);
    }
    if (taken > steps) return false;
    if (taken > look) {
      look = taken + STEPS_A_LOOK;
      yield taken / steps;
    }
  }
  return true;
}

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
  effort: SearchEffort = USUAL_EFFORT,
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
  const rounds = possible.length + effort.rounds;
  for (let round = 0; round < rounds; round += 1) {
    const start = possible[round] ?? disturbed(search, random);
    if (!allowed(problem, start)) continue;
    const improving = improve(search, start);
    let step = improving.next();
    for (; !step.done; step = improving.next()) yield progress('improving', round / rounds);
    if (step.value.cost < search.cost - ROUNDING) {
      search.cost = step.value.cost;
      search.best = step.value.order;
    }
  }
  const tables = boundTables(problem);
  const least = leastCost(problem, tables, weights, startState(problem));
  const proving = prove(search, tables, effort.steps);
  let step = proving.next();
  for (; !step.done; step = proving.next()) yield progress('proving', step.value);
  return {
    order: search.best,
    cost: search.cost,
    proven: step.value,
    least: step.value ? search.cost : Math.min(least, search.cost),
  };
}
