import type { PlannedFrame } from '../plan/frame.ts';
import type { SetId } from '../plan/ids.ts';
import type { SetKind } from '../plan/plan.ts';
import type { RunState } from './state.ts';

/**
 * The frames that start together: one, or with all rigs side by side, and in a capped series, every
 * rig's frame of the same set, pass and repeat.
 */
export function nextTogether(state: RunState): readonly PlannedFrame[] {
  const [first] = state.queue;
  if (!first) return [];
  if (!isTogether(state, first.set)) return [first];
  const together: PlannedFrame[] = [];
  for (const frame of state.queue) {
    if (!samePlace(frame, first) || together.some((other) => other.rig === frame.rig)) break;
    together.push(frame);
  }
  return together;
}

/** The kind of a set; null if the plan does not have it. */
export const kindOf = ({ plan }: RunState, set: SetId): SetKind | null =>
  plan.sets.find(({ id }) => id === set)?.kind ?? null;

const isTogether = (state: RunState, set: SetId): boolean =>
  state.plan.order === 'side-by-side' || kindOf(state, set) === 'capped-series';

const samePlace = (a: PlannedFrame, b: PlannedFrame): boolean =>
  a.set === b.set && a.pass === b.pass && a.repeat === b.repeat;
