import { type BoundTables, leastCost } from './orderBound.ts';
import { costOfRun } from './orderCost.ts';
import { rigOf } from './orderPlaces.ts';
import type { OrderProblem } from './orderProblem.ts';
import {
  type RunState,
  roomToSave,
  type Saved,
  save,
  startState,
  takeBack,
  takeTurn,
} from './orderRun.ts';
import { ROUNDING, type Search, STEPS_A_LOOK } from './orderSearch.ts';
import type { TurnKind } from './orderTurn.ts';

/*
 * The proof that an order is the cheapest: all others are gone through that could be cheaper.
 */

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
export function* prove(
  search: Search,
  tables: BoundTables,
  steps: number,
): Generator<number, boolean> {
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
