import { effect, type ReadonlySignal } from '@preact/signals';
import type { Cue, Cues } from '../device/cues.ts';
import { assemble } from '../gear/rig.ts';
import { exposurePhase, madeFrame } from '../outing/exposure.ts';
import type { MadeId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import type { MadeFrame, RunState } from '../outing/state.ts';
import type { Seconds } from '../science/units.ts';

/** What the voice says, in one language. It is heard in the dark: few words, and short ones. */
export interface SpokenWords {
  readonly open: string;
  /** An exposure that the body ends by itself has ended. */
  readonly end: string;
  /** A hand has to close the shutter now. */
  readonly close: string;
  /** A hand has to close the shutter so many seconds from now. */
  readonly closeIn: (seconds: number) => string;
  /** Where several rigs may expose at once, whose moment it is. */
  readonly ofRig: (letter: string, what: string) => string;
}

/** The end of an exposure is announced this long before, if it is long enough (our choice). */
const NEAR_END_S = 10;
/** The voice counts these seconds before the end, each if the exposure is twice as long (our choice). */
const SPOKEN_S = [5, 3, 2, 1];
/** Beeps counted down to the opening of the shutter, s before it (our choice). */
const LEAD_IN_BEEPS_S = [3, 2, 1, 0];

/** What is told, in how many seconds, with what words. */
type Told = readonly [Cue['kind'], number, (string | null)?];

/**
 * The moments of an exposure that are still ahead, on the steady clock of this
 * page. Counted from the stored start, so that a page that comes back in the
 * middle tells the rest on time. An end that passed while the page was gone is
 * among them, once: it has to be said that it was missed.
 *
 * @param letter of the rig, where it has to be said; else null.
 */
export function cuesAhead(
  frame: MadeFrame,
  now: Instant,
  words: SpokenWords,
  letter: string | null = null,
): readonly Cue[] {
  const phase = exposurePhase(frame, now);
  const exposureS = frame.planned.exact.t;
  const byHand = frame.planned.settings.time.kind === 'bulb';
  const ends = (leftS: number) => endOf(exposureS, leftS, byHand, words);
  const moments: Told[] = [];
  switch (phase.phase) {
    case 'lead-in':
      for (const before of LEAD_IN_BEEPS_S)
        moments.push(['lead-in', phase.leftS - before, before === 0 ? words.open : null]);
      moments.push(...ends(phase.leftS + exposureS));
      break;
    case 'running':
    case 'held-open':
      moments.push(...ends(phase.leftS));
      break;
    case 'to-record':
      moments.push(['end', -phase.closedSinceS, words.end]);
      break;
    case 'unknown':
    case 'recorded':
      break;
    default:
      phase satisfies never;
  }
  return moments
    .filter(([kind, inS]) => inS > 0 || (kind === 'end' && frame.lateS === null))
    .map(([kind, inS, said = null]) => ({
      kind,
      dueMs: now.monoMs + inS * 1000,
      spoken: said !== null && letter !== null ? words.ofRig(letter, said) : said,
    }));
}

function endOf(exposureS: Seconds, leftS: number, byHand: boolean, words: SpokenWords): Told[] {
  const near: Told = [
    'near-end',
    leftS - NEAR_END_S,
    byHand ? words.closeIn(NEAR_END_S) : String(NEAR_END_S),
  ];
  return [
    ...(exposureS >= 2 * NEAR_END_S ? [near] : []),
    ...SPOKEN_S.filter((before) => exposureS >= 2 * before).map(
      (before): Told => [null, leftS - before, String(before)],
    ),
    ['end', leftS, byHand ? words.close : words.end],
  ];
}

/** What telling the exposures needs. */
interface TellingWorld {
  readonly cues: Cues;
  readonly state: ReadonlySignal<RunState | null>;
  /** The clock, looked at anew. */
  readonly look: () => Instant;
  readonly words: () => SpokenWords;
  /** An end that reached nobody in time. */
  readonly onLateEnd: (made: MadeId, lateS: Seconds) => void;
}

/** Lets every open exposure be heard and felt for as long as it is open. */
export function tellExposures({ cues, state, look, words, onLateEnd }: TellingWorld): void {
  let told = new Map<MadeId, MadeFrame>();
  effect(() => {
    const run = state.value;
    const open = new Map<MadeId, MadeFrame>();
    for (const id of run?.open ?? []) {
      const frame = run && madeFrame(run, id);
      if (frame && !frame.closedAt) open.set(id, frame);
    }
    for (const id of told.keys()) if (!open.has(id)) cues.cancel(id);
    const several = open.size > 1 || (run?.mounted.length ?? 0) > 1;
    for (const [id, frame] of open) {
      if (!run || told.has(id)) continue;
      const letter = several ? assemble(run.gear, frame.planned.rig)?.rig.letter : null;
      cues.schedule(id, cuesAhead(frame, look(), words(), letter ?? null));
    }
    told = open;
  });
  cues.onLate(({ exposure, lateS }) => onLateEnd(exposure as MadeId, lateS));
}
