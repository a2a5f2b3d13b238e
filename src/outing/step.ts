import type { RigId } from '../gear/ids.ts';
import { type Settings, sameTimeMark } from '../gear/settings.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { Seconds } from '../science/units.ts';
import { type ExposurePhase, exposurePhase, isShort, madeFrame } from './exposure.ts';
import type { Instant } from './instant.ts';
import { busyFor, type Resting, restLeft } from './rest.ts';
import type { MadeFrame, RigRun, RunState } from './state.ts';
import { kindOf, nextTogether } from './together.ts';

/** Which marks differ from what stands on the rig now. */
export interface Changed {
  readonly f: boolean;
  readonly time: boolean;
  readonly iso: boolean;
}

/** An exposure that is under way, or done and not yet recorded. */
export interface OpenFrame {
  readonly frame: MadeFrame;
  readonly phase: ExposurePhase;
}

/** What the hand has to do now. Derived from the state and the clock, never stored. */
export type Step =
  | { readonly kind: 'set-up' }
  | { readonly kind: 'paused' }
  | { readonly kind: 'ended' }
  /** Every frame of the list is made, skipped or dropped. */
  | { readonly kind: 'list-done' }
  | { readonly kind: 'open'; readonly frames: readonly OpenFrame[] }
  | { readonly kind: 'mount'; readonly rigs: readonly RigId[]; readonly next: PlannedFrame }
  | {
      readonly kind: 'focus';
      readonly rig: RigId;
      readonly why: NonNullable<RigRun['focusDoubt']>;
    }
  | { readonly kind: 'dial'; readonly frame: PlannedFrame; readonly changed: Changed }
  /** The body takes its own dark frame and does not answer the release. */
  | {
      readonly kind: 'busy';
      readonly rig: RigId;
      readonly leftS: Seconds;
      readonly next: PlannedFrame;
    }
  | { readonly kind: 'rest'; readonly resting: Resting; readonly next: PlannedFrame }
  | {
      readonly kind: 'expose';
      readonly frames: readonly PlannedFrame[];
      /** One tap says it was taken. */
      readonly short: boolean;
    };

/** The step at `now`. */
export function stepAt(state: RunState, now: Instant): Step {
  if (state.phase === 'ended') return { kind: 'ended' };
  // An exposure under way is shown through everything else: a pause never stops it.
  const open = state.open.flatMap((id) => {
    const frame = madeFrame(state, id);
    return frame ? [{ frame, phase: exposurePhase(frame, now) }] : [];
  });
  if (open.length > 0) return { kind: 'open', frames: open };
  if (state.phase === 'paused') return { kind: 'paused' };
  if (state.phase === 'setting-up') return { kind: 'set-up' };
  return waitingStep(state, now);
}

function waitingStep(state: RunState, now: Instant): Step {
  const together = nextTogether(state);
  const [next] = together;
  if (!next) return { kind: 'list-done' };
  const wanted = state.plan.order === 'side-by-side' ? state.plan.rigs : [next.rig];
  // A capped series needs no tripod and nothing in focus.
  if (kindOf(state, next.set) !== 'capped-series') {
    if (!wanted.every((rig) => state.mounted.includes(rig))) {
      return { kind: 'mount', rigs: wanted, next };
    }
    for (const { rig } of together) {
      const why = state.rigs.get(rig)?.focusDoubt;
      if (why) return { kind: 'focus', rig, why };
    }
  }
  for (const frame of together) {
    const changed = changedMarks(state.rigs.get(frame.rig)?.dialled ?? null, frame.settings);
    if (changed.f || changed.time || changed.iso) return { kind: 'dial', frame, changed };
  }
  for (const { rig } of together) {
    const leftS = busyFor(state, rig, now);
    if (leftS !== null) return { kind: 'busy', rig, leftS, next };
  }
  const rests = together.flatMap(({ rig }) => restLeft(state, rig, now) ?? []);
  // Rigs that start together wait for the one that needs it longest.
  const resting = longest(rests.filter(({ isProposed }) => isProposed));
  if (resting) return { kind: 'rest', resting, next };
  return {
    kind: 'expose',
    frames: together,
    short: together.every((frame) => isShort(frame.exact.t)),
  };
}

const longest = (rests: readonly Resting[]): Resting | null =>
  rests.reduce<Resting | null>(
    (most, rest) => (most && most.leftS >= rest.leftS ? most : rest),
    null,
  );

/** Which marks must be turned to get from what stands to what is wanted. */
export function changedMarks(stands: Settings | null, wanted: Settings): Changed {
  return {
    f: stands?.fMark !== wanted.fMark,
    time: !stands || !sameTimeMark(stands.time, wanted.time),
    iso: stands?.isoMark !== wanted.isoMark,
  };
}
