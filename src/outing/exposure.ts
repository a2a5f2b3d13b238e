import { type Seconds, seconds } from '../science/units.ts';
import type { MadeId } from './ids.ts';
import type { Instant } from './instant.ts';
import type { MadeFrame, RunState } from './state.ts';
import { elapsedBetween, later } from './timing.ts';

/** From here on a frame has a beginning and an end to see; below, one tap says 'taken'. */
const SHORT_BELOW = seconds(2);

/** Whether a frame of this length is one tap in all. */
export const isShort = (exposureS: Seconds): boolean => exposureS < SHORT_BELOW;

/** Where an exposure stands. Times left count down to the named event and may be past it. */
export type ExposurePhase =
  | { readonly phase: 'lead-in'; readonly leftS: number; readonly ofS: Seconds }
  /** Timed: the body ends it by itself. */
  | { readonly phase: 'running'; readonly leftS: number; readonly ofS: Seconds }
  /** Bulb: a hand must end it; `leftS` below zero is the overrun so far. */
  | { readonly phase: 'held-open'; readonly leftS: number; readonly ofS: Seconds }
  | { readonly phase: 'to-record'; readonly closedSinceS: number }
  /** The clock was set back: nobody knows. */
  | { readonly phase: 'unknown'; readonly ofS: Seconds }
  | { readonly phase: 'recorded' };

/** The phase of a made frame at `now`, from stored instants only: right after a kill or a sleep. */
export function exposurePhase(frame: MadeFrame, now: Instant): ExposurePhase {
  if (frame.recordedAt) return { phase: 'recorded' };
  if (frame.closedAt) {
    const since = elapsedBetween(frame.closedAt, now);
    return { phase: 'to-record', closedSinceS: since.certainty === 'unknown' ? 0 : since.s };
  }
  const ofS = frame.planned.exact.t;
  const since = elapsedBetween(frame.startedAt, now);
  if (since.certainty === 'unknown') return { phase: 'unknown', ofS };
  const opened = since.s - frame.leadInS;
  if (opened < 0) return { phase: 'lead-in', leftS: -opened, ofS: frame.leadInS };
  const leftS = ofS - opened;
  if (frame.planned.settings.time.kind === 'bulb') return { phase: 'held-open', leftS, ofS };
  return leftS > 0
    ? { phase: 'running', leftS, ofS }
    : { phase: 'to-record', closedSinceS: -leftS };
}

/** When the shutter opened. */
export const openedAt = ({
  startedAt,
  leadInS,
}: Pick<MadeFrame, 'startedAt' | 'leadInS'>): Instant => later(startedAt, leadInS);

/**
 * When the exposure ended, or will end by itself; null while a hand holds it
 * open. A closing tap beats the dial: the frame was bulb, or stopped early.
 */
export function endedAt(frame: MadeFrame, exactS: Seconds = frame.planned.exact.t): Instant | null {
  if (frame.closedAt) return frame.closedAt;
  const time = (frame.settings ?? frame.planned.settings).time;
  return time.kind === 'bulb' ? null : later(openedAt(frame), exactS);
}

/** A made frame by its id. */
export const madeFrame = (state: RunState, id: MadeId): MadeFrame | undefined =>
  state.made.find((frame) => frame.id === id);
