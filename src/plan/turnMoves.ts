import type { RigId } from '../gear/ids.ts';
import type { PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import { turnsOf } from './order.ts';
import type { Plan, TurnPlace } from './plan.ts';

/*
 * Turns put in order by hand.
 */

/**
 * Turns with one of them at another place. Turns of locked sets keep their places: the others pass
 * over them, and they themselves do not move.
 *
 * @param to the place in the list after the turn was taken out of `from`, 0 being first.
 */
export function moveTurn(
  turns: readonly TurnPlace[],
  locked: readonly SetId[],
  from: number,
  to: number,
): readonly TurnPlace[] {
  const free = turns.flatMap(({ set }, place) => (locked.includes(set) ? [] : [place]));
  const at = free.indexOf(from);
  if (at < 0) return turns;
  const target =
    to > from ? free.findIndex((place) => place >= to) : free.findLastIndex((place) => place <= to);
  const order = free.toSpliced(at, 1);
  order.splice(target >= 0 ? target : to > from ? free.length : 0, 0, from);
  const moved = [...turns];
  for (const [index, place] of free.entries()) {
    moved[place] = turns[order[index] as number] as TurnPlace;
  }
  return moved;
}

/** Whether a rig comes back to the tripod after it has left it. */
export function comesBack(turns: readonly TurnPlace[]): boolean {
  const seen = new Set<RigId | null>();
  let mounted: RigId | null = null;
  return turns.some(({ rig }) => {
    const returns = rig !== mounted && seen.has(rig);
    seen.add(rig);
    mounted = rig;
    return returns;
  });
}

export const sameTurns = (one: readonly TurnPlace[], other: readonly TurnPlace[]): boolean =>
  one.length === other.length &&
  one.every(({ set, rig }, place) => other[place]?.set === set && other[place]?.rig === rig);

/**
 * Whether a plan's own arrangement is of another list: turns in it are gone, or the list has turns
 * that it lacks. Never without an arrangement.
 */
export const isOfAnotherList = (plan: Plan, frames: readonly PlannedFrame[]): boolean =>
  plan.arranged !== null && !sameTurns(plan.arranged, turnsOf(plan, frames));
