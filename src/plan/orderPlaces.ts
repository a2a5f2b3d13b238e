import type { OrderProblem } from './orderProblem.ts';
import type { TurnKind, TurnPart } from './orderTurn.ts';

/*
 * What an order may look like: locked places keep their turns, and one rig at a time comes onto the
 * tripod once.
 */

/** The rig that a kind puts on the tripod; nothing where all stand side by side. */
export const rigOf = (kind: TurnKind): number => (kind.parts[0] as TurnPart).rig;

/** Whether an order keeps what is locked and what the mounting allows. */
export function allowed(
  { fixed, kinds, mounting }: OrderProblem,
  order: readonly number[],
): boolean {
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

export const freePlaces = ({ fixed }: OrderProblem): readonly number[] =>
  [...fixed.keys()].filter((place) => (fixed[place] as number) < 0);

/** The start nearest to an order that keeps what is locked and what the mounting allows. */
export function fitted(problem: OrderProblem, order: readonly number[]): readonly number[] {
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

/** An order with other turns in its free places. */
export function withTurns(
  order: readonly number[],
  places: readonly number[],
  turns: readonly number[],
): readonly number[] {
  const next = [...order];
  for (const [index, place] of places.entries()) next[place] = turns[index] as number;
  return next;
}
