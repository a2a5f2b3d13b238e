import { effect, type ReadonlySignal } from '@preact/signals';
import type { Cue, Cues } from '../device/cues.ts';
import { exposurePhase, madeFrame } from '../outing/exposure.ts';
import type { MadeId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import type { MadeFrame, RunState } from '../outing/state.ts';
import type { Seconds } from '../science/units.ts';

/** The end of an exposure is announced this long before, if it is long enough (our choice). */
const NEAR_END_S = 10;
/** Beeps counted down to the opening of the shutter, s before it (our choice). */
const LEAD_IN_BEEPS_S = [3, 2, 1, 0];

/**
 * The moments of an exposure that are still ahead, on the steady clock of this
 * page. Counted from the stored start, so that a page that comes back in the
 * middle tells the rest on time. An end that passed while the page was gone is
 * among them, once: it has to be said that it was missed.
 */
export function cuesAhead(frame: MadeFrame, now: Instant): readonly Cue[] {
  const phase = exposurePhase(frame, now);
  const exposureS = frame.planned.exact.t;
  const moments: (readonly [Cue['kind'], number])[] = [];
  switch (phase.phase) {
    case 'lead-in':
      for (const before of LEAD_IN_BEEPS_S) moments.push(['lead-in', phase.leftS - before]);
      moments.push(...endOf(exposureS, phase.leftS + exposureS));
      break;
    case 'running':
    case 'held-open':
      moments.push(...endOf(exposureS, phase.leftS));
      break;
    case 'to-record':
      moments.push(['end', -phase.closedSinceS]);
      break;
    case 'unknown':
    case 'recorded':
      break;
    default:
      phase satisfies never;
  }
  return moments
    .filter(([kind, inS]) => inS > 0 || (kind === 'end' && frame.lateS === null))
    .map(([kind, inS]) => ({ kind, dueMs: now.monoMs + inS * 1000, spoken: null }));
}

const endOf = (exposureS: Seconds, leftS: number): (readonly [Cue['kind'], number])[] =>
  exposureS >= 2 * NEAR_END_S
    ? [
        ['near-end', leftS - NEAR_END_S],
        ['end', leftS],
      ]
    : [['end', leftS]];

/**
 * Lets every open exposure be heard and felt for as long as it is open.
 *
 * @param look the clock, looked at anew.
 * @param onLateEnd an end that reached nobody in time.
 */
export function tellExposures(
  cues: Cues,
  state: ReadonlySignal<RunState | null>,
  look: () => Instant,
  onLateEnd: (made: MadeId, lateS: Seconds) => void,
): void {
  let told = new Map<MadeId, MadeFrame>();
  effect(() => {
    const run = state.value;
    const open = new Map<MadeId, MadeFrame>();
    for (const id of run?.open ?? []) {
      const frame = run && madeFrame(run, id);
      if (frame && !frame.closedAt) open.set(id, frame);
    }
    for (const id of told.keys()) if (!open.has(id)) cues.cancel(id);
    for (const [id, frame] of open) {
      if (!told.has(id)) cues.schedule(id, cuesAhead(frame, look()));
    }
    told = open;
  });
  cues.onLate(({ exposure, lateS }) => onLateEnd(exposure as MadeId, lateS));
}
