import { type Refusal, refuse } from './refusal.ts';
import type { Seconds, Stops } from './units.ts';

/**
 * How long a run of frames occupies the body, in seconds: frames x (settle + t, twice if a dark
 * frame of the same length follows, + write). Refuses a count of frames that is not a whole number
 * from 1 ('frame-count-not-whole').
 */
export function wallTime(run: {
  readonly t: Seconds;
  readonly frames: number;
  /** Between touching the rig and opening the shutter; zero allowed. */
  readonly settle: Seconds;
  /** Until the body is ready again; zero allowed. */
  readonly write: Seconds;
  readonly darkFrame: boolean;
}): Seconds | Refusal {
  if (!Number.isInteger(run.frames) || run.frames < 1) return refuse('frame-count-not-whole');
  const closed = run.darkFrame ? 2 : 1;
  return (run.frames * (run.settle + run.t * closed + run.write)) as Seconds;
}

/**
 * What an error of hand timing costs in stops, log2(1 + error/t): 0.2 s cost 0.138 stop at 2 s
 * and 0.010 at 30 s. Derived.
 */
export const handTimingStops = (t: Seconds, error: Seconds): Stops =>
  Math.log2(1 + error / t) as Stops;
