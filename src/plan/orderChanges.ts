import type { Random } from '../science/mulberry32.ts';
import { rigOf } from './orderPlaces.ts';
import type { OrderProblem } from './orderProblem.ts';
import type { TurnKind } from './orderTurn.ts';

/*
 * The changes by which an order is made cheaper, of its free turns as a list of kinds.
 */

/** Improvements are looked for among stretches of so many turns. */
const LONGEST_STRETCH = 4;

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
export function* changesAt(
  turns: readonly number[],
  from: number,
): Generator<readonly number[], void> {
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
export function changedByChance(
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
