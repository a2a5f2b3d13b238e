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
 * nine lists in ten, and one 20 % dearer at worst; on lists of 48 turns two seeds may end 10 % apart.
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

/** Differences of cost below this are rounding, in stops. */
const ROUNDING = 1e-9;
/** Steps between two looks outside. */
const STEPS_A_LOOK = 5000;
/** So many of the starts are improved, the cheapest. */
const STARTS_IMPROVED = 3;
/** Improvements are looked for among stretches of so many turns. */
const LONGEST_STRETCH = 4;
/**
 * How much dearer a change may make an order while wandering, at first (walk after walk) and at
 * last, against what changes do as a rule; found by trying on generated lists.
 */
const WARMEST = [1, 0.1, 0.3];
const COLDEST = 0.003;
/** So many changes tell what they do as a rule. */
const MEASURED = 300;

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

/** Where an order has got to before each of its turns, and at its end. */
type Course = readonly RunState[];

/** Brings the course of an order up to date from a place on. */
function followFrom(
  problem: OrderProblem,
  course: Course,
  order: readonly number[],
  from: number,
): void {
  for (let place = from; place < order.length; place += 1) {
    const next = course[place + 1] as RunState;
    copyState(course[place] as RunState, next);
    takeTurn(problem, next, problem.kinds[order[place] as number] as TurnKind);
  }
}

function courseOf(problem: OrderProblem, order: readonly number[]): Course {
  const course = Array.from({ length: problem.turns + 1 }, () => startState(problem));
  followFrom(problem, course, order, 0);
  return course;
}

/** An order with other turns in its free places. */
function withTurns(
  order: readonly number[],
  places: readonly number[],
  turns: readonly number[],
): readonly number[] {
  const next = [...order];
  for (const [index, place] of places.entries()) next[place] = turns[index] as number;
  return next;
}

function costOf(problem: OrderProblem, weights: CostWeights, order: readonly number[]): number {
  const state = startState(problem);
  runOrder(problem, order, state);
  return costOfRun(problem, state, weights).total;
}

/** Takes changes that make an order cheaper until none does. Yields now and then. */
function* improve({ problem, weights }: Search, start: readonly number[]): Generator<void, Costed> {
  const places = freePlaces(problem);
  const state = startState(problem);
  const course = courseOf(problem, start);
  let order = start;
  let cost = costOfRun(problem, course[order.length] as RunState, weights).total;
  let turnsTaken = 0;
  for (let better = true; better; ) {
    better = false;
    // From the end, where a change costs least to work out.
    for (let from = places.length - 1; from >= 0; from -= 1) {
      const place = places[from] as number;
      const turns = places.map((each) => order[each] as number);
      for (const changed of changesAt(turns, from)) {
        const next = withTurns(order, places, changed);
        if (!allowed(problem, next)) continue;
        copyState(course[place] as RunState, state);
        runOrder(problem, next, state);
        turnsTaken += order.length - place;
        if (turnsTaken > STEPS_A_LOOK) {
          turnsTaken = 0;
          yield;
        }
        const its = costOfRun(problem, state, weights).total;
        if (its >= cost - ROUNDING) continue;
        order = next;
        cost = its;
        followFrom(problem, course, order, place);
        better = true;
        break;
      }
    }
  }
  return { order, cost };
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

/** Where the stays of rigs on the tripod begin among some turns, and their end. */
function staysOf({ kinds }: OrderProblem, turns: readonly number[]): readonly number[] {
  const rigAt = (place: number): number => rigOf(kinds[turns[place] as number] as TurnKind);
  const begins = [...turns.keys()].filter(
    (place) => place === 0 || rigAt(place) !== rigAt(place - 1),
  );
  return [...begins, turns.length];
}

/**
 * A change of the free turns by chance. Most keep the stays of rigs on the tripod together, as good
 * orders do: turns of one rig change places, a turn moves to another stay of its rig, stays change
 * places or are turned round.
 */
function changedByChance(
  problem: OrderProblem,
  turns: readonly number[],
  random: Random,
): readonly number[] {
  const { kinds } = problem;
  const pick = (most: number): number => Math.floor(random() * most);
  const swapped = (one: number, two: number): number[] => {
    const next = [...turns];
    [next[one], next[two]] = [turns[two] as number, turns[one] as number];
    return next;
  };
  const reversed = (from: number, end: number): number[] => [
    ...turns.slice(0, from),
    ...turns.slice(from, end).reverse(),
    ...turns.slice(end),
  ];
  const choice = pick(8);
  if (choice < 3) {
    const one = pick(turns.length);
    const rig = rigOf(kinds[turns[one] as number] as TurnKind);
    const own = [...turns.keys()].filter(
      (place) => place !== one && rigOf(kinds[turns[place] as number] as TurnKind) === rig,
    );
    if (own.length === 0) return turns;
    const two = own[pick(own.length)] as number;
    if (choice === 0) return swapped(one, two);
    const moved = turns[one] as number;
    const others = turns.toSpliced(one, 1);
    const beside = two > one ? two - 1 : two;
    return others.toSpliced(beside + pick(2), 0, moved);
  }
  if (choice < 6) {
    const stays = staysOf(problem, turns);
    if (stays.length < 3) return turns;
    const first = pick(stays.length - 2);
    const last = first + 2 + pick(stays.length - first - 2);
    const [from, end] = [stays[first] as number, stays[last] as number];
    if (choice === 3) return reversed(from, end);
    if (choice === 4) {
      const middle = first + 1 + pick(last - first - 1);
      return exchanged(turns, from, stays[middle] as number, end);
    }
    const [head, tail] = [stays[first + 1] as number, stays[last - 1] as number];
    return [
      ...turns.slice(0, from),
      ...turns.slice(tail, end),
      ...turns.slice(head, tail),
      ...turns.slice(from, head),
      ...turns.slice(end),
    ];
  }
  const from = pick(turns.length - 1);
  const end = from + 2 + pick(turns.length - from - 1);
  if (choice === 6) return swapped(from, end - 1);
  return exchanged(turns, from, from + 1 + pick(end - from - 1), end);
}

/** An order with its cost in stops. */
interface Costed {
  readonly order: readonly number[];
  readonly cost: number;
}

/**
 * Wanders from the best order by changes of chance that may make it dearer, less and less so, and
 * gives the cheapest order that it met. Yields the part that is done.
 *
 * @param warmest by how much a change may make an order dearer at first, against what changes do as
 * a rule.
 */
function* wander(
  { problem, weights, best: start, cost: startCost }: Search,
  tries: number,
  warmest: number,
  random: Random,
): Generator<number, Costed> {
  const places = freePlaces(problem);
  const state = startState(problem);
  const course = courseOf(problem, start);
  let now: Costed = { order: start, cost: startCost };
  let best = now;
  // The mean logarithm of what the first changes cost: their usual size, whatever a few cost.
  let usual = 0;
  let measured = 0;
  let turnsTaken = 0;
  for (let tried = 0; tried < tries && places.length > 1; tried += 1) {
    const turns = places.map((place) => now.order[place] as number);
    const changed = changedByChance(problem, turns, random);
    const first = changed.findIndex((kind, index) => kind !== turns[index]);
    const order = withTurns(now.order, places, changed);
    if (first < 0 || !allowed(problem, order)) continue;
    const place = places[first] as number;
    copyState(course[place] as RunState, state);
    runOrder(problem, order, state);
    turnsTaken += order.length - place;
    const cost = costOfRun(problem, state, weights).total;
    const dearer = cost - now.cost;
    if (dearer > ROUNDING && measured < MEASURED) {
      measured += 1;
      usual += (Math.log(dearer) - usual) / measured;
    }
    const warmth = Math.exp(usual) * warmest * (COLDEST / warmest) ** (tried / tries);
    if (dearer <= 0 || random() < Math.exp(-dearer / warmth)) {
      now = { order, cost };
      followFrom(problem, course, order, place);
      turnsTaken += order.length - place;
      if (cost < best.cost - ROUNDING) best = now;
    }
    if (turnsTaken > STEPS_A_LOOK) {
      turnsTaken = 0;
      yield tried / tries;
    }
  }
  return best;
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
  return {
    order: search.best,
    cost: search.cost,
    proven: step.value,
    least: step.value ? search.cost : Math.min(least, search.cost),
  };
}
