import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { assemble } from '../gear/rig.ts';
import { restOwed } from '../plan/rest.ts';
import { duration, type Seconds } from '../science/units.ts';
import { endedAt, madeFrame } from './exposure.ts';
import type { Instant } from './instant.ts';
import type { RunState } from './state.ts';
import { elapsedBetween } from './timing.ts';

/** A rig that should wait, and how long still. */
export interface Resting {
  readonly rig: RigId;
  readonly leftS: Seconds;
  readonly owedS: Seconds;
}

/**
 * The rest that a rig still owes at `now` after its last exposure, by the
 * plan's rule of thumb (common practice, no source). What passed since the
 * sensor last worked counts, whatever it was: a swap, another rig's frame, a
 * pause. Null when nothing is owed, or when the wait was skipped.
 */
export function restLeft(state: RunState, rig: RigId, now: Instant): Resting | null {
  const run = state.rigs.get(rig);
  const idle = idleSince(state, rig, now);
  const { rest } = state.plan;
  if (!run || !idle || run.restSkippedAfter === run.lastMade) return null;
  if (rest.kind !== 'thumb') return null;
  const leftS = restOwed(rest.rule, idle.exposedS, duration(Math.max(0, idle.s)));
  const owedS = restOwed(rest.rule, idle.exposedS, duration(0));
  return leftS > 0 ? { rig, leftS, owedS } : null;
}

/**
 * How long the body will still be at its own in-camera dark frame, which blocks
 * the release; null when it is free.
 */
export function busyFor(state: RunState, rig: RigId, now: Instant): Seconds | null {
  const idle = idleSince(state, rig, now);
  return idle && idle.s < 0 ? duration(-idle.s) : null;
}

/**
 * Seconds since the sensor stopped working (negative while the in-camera dark
 * frame, which works it as the exposure did, still runs). Null when it has not
 * worked yet, is open, or the clock was set back: that says nothing about a
 * rest and holds nobody up.
 */
function idleSince(
  state: RunState,
  rig: RigId,
  now: Instant,
): { readonly s: number; readonly exposedS: Seconds } | null {
  const made = state.rigs.get(rig)?.lastMade;
  const last = made ? madeFrame(state, made) : undefined;
  const parts = assemble(state.gear, rig);
  const end = last ? endedAt(last) : null;
  if (!last || !parts || !end) return null;
  const since = elapsedBetween(end, now);
  if (since.certainty === 'unknown') return null;
  const open = elapsedBetween(last.startedAt, end);
  const exposedS =
    open.certainty === 'unknown'
      ? last.planned.exact.t
      : duration(Math.max(0, open.s - last.leadInS));
  return { s: since.s - darkFrameS(parts.body.darkFrame, exposedS), exposedS };
}

/** Every rig that still owes a rest, for the reminder that runs while others work. */
export const allResting = (state: RunState, now: Instant): readonly Resting[] =>
  state.plan.rigs.flatMap((rig) => restLeft(state, rig, now) ?? []);
