import type { Random } from '../science/mulberry32.ts';
import type { CostWeights } from './costWeights.ts';
import { changedByChance, changesAt } from './orderChanges.ts';
import { costOfRun } from './orderCost.ts';
import { allowed, freePlaces, withTurns } from './orderPlaces.ts';
import type { OrderProblem } from './orderProblem.ts';
import { copyState, type RunState, runOrder, startState, takeTurn } from './orderRun.ts';
import { ROUNDING, type Search, STEPS_A_LOOK } from './orderSearch.ts';
import type { TurnKind } from './orderTurn.ts';

/*
 * Two ways to a cheaper order: taking what makes it cheaper as long as something does, and wandering.
 */

/**
 * How much dearer a change may make an order at the end of a walk, against what changes do as a rule;
 * found by trying on generated lists.
 */
const COLDEST = 0.003;
/** So many changes tell what they do as a rule. */
const MEASURED = 300;

/** An order with its cost in stops. */
export interface Costed {
  readonly order: readonly number[];
  readonly cost: number;
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

export function costOf(
  problem: OrderProblem,
  weights: CostWeights,
  order: readonly number[],
): number {
  const state = startState(problem);
  runOrder(problem, order, state);
  return costOfRun(problem, state, weights).total;
}

/** Takes changes that make an order cheaper until none does. Yields now and then. */
export function* improve(
  { problem, weights }: Search,
  start: readonly number[],
): Generator<void, Costed> {
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

/**
 * Wanders from the best order by changes of chance that may make it dearer, less and less so, and
 * gives the cheapest order that it met. Yields the part that is done.
 *
 * @param warmest by how much a change may make an order dearer at first, against what changes do as
 * a rule.
 */
export function* wander(
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
