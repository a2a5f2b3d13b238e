import type { RigId } from '../gear/ids.ts';
import { assemble } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { BodyClock, EvenedUp, MatchedFile } from './cameraFile.ts';
import type {
  CorrectionValue,
  Draft,
  EventData,
  EventKind,
  GearPart,
  Reading,
  SetupItem,
  Verdict,
} from './events.ts';
import { exposurePhase, madeFrame } from './exposure.ts';
import type { EventId, MadeId } from './ids.ts';
import type { Instant } from './instant.ts';
import { type Rematch, withRematch } from './rematch.ts';
import { restLeft } from './rest.ts';
import type { MadeFrame, RunState } from './state.ts';
import { stepAt } from './step.ts';
import { nextTogether } from './together.ts';

/**
 * A tap on the next step names the frame that was on the screen: a second tap
 * that arrives when the run has moved on is then refused, not misunderstood.
 */
interface OnFrame {
  readonly frame: FrameKey;
}

/** Everything a hand can say during an outing. */
export type Tap =
  | { readonly tap: 'tick'; readonly rig: RigId; readonly item: SetupItem; readonly done: boolean }
  | { readonly tap: 'set-counter'; readonly rig: RigId; readonly next: number }
  | { readonly tap: 'begin-frames' }
  | (OnFrame & { readonly tap: 'mounted' })
  | (OnFrame & { readonly tap: 'dialled' })
  /** The release was pressed together with this tap. */
  | (OnFrame & { readonly tap: 'start' })
  /** A frame too short to be timed was taken; `otherwise` = what was set comes separately. */
  | (OnFrame & { readonly tap: 'taken'; readonly otherwise?: boolean })
  /** Bulb is closed; all else was as planned. */
  | { readonly tap: 'closed'; readonly made: MadeId }
  /** Closed now (bulb, or a timed frame stopped early); what was set comes separately. */
  | { readonly tap: 'closed-otherwise'; readonly made: MadeId }
  | {
      readonly tap: 'record';
      readonly made: MadeId;
      /** What was really set where it was not as planned. */
      readonly settings?: Settings;
      readonly fileNumber?: number | null;
    }
  | { readonly tap: 'extra-shot'; readonly rig: RigId }
  | { readonly tap: 'judge'; readonly made: MadeId; readonly verdict: Verdict }
  | { readonly tap: 'retake'; readonly frame: FrameKey }
  | (OnFrame & { readonly tap: 'skip-frame' })
  | { readonly tap: 'drop-set'; readonly set: SetId }
  | (OnFrame & { readonly tap: 'swap-next-two' })
  /** The light has moved on: other settings for what is left of a set. */
  | { readonly tap: 'rematch'; readonly set: SetId; readonly rigs: Rematch['rigs'] }
  | { readonly tap: 'note'; readonly text: string; readonly made: MadeId | null }
  | { readonly tap: 'reading'; readonly meter: string; readonly reading: Reading }
  | { readonly tap: 'battery-changed'; readonly rig: RigId }
  | { readonly tap: 'lens-touched'; readonly rig: RigId }
  | { readonly tap: 'powered-off'; readonly rig: RigId }
  | { readonly tap: 'skip-rest'; readonly rig: RigId }
  | { readonly tap: 'cue-late'; readonly made: MadeId; readonly lateS: Seconds }
  | { readonly tap: 'pause' }
  | { readonly tap: 'resume' }
  | { readonly tap: 'end' }
  | { readonly tap: 'discard'; readonly made: MadeId }
  | { readonly tap: 'correct'; readonly made: MadeId; readonly change: CorrectionValue }
  | { readonly tap: 'correct-gear'; readonly change: GearPart }
  /** The clock on the screen was photographed with this rig just now. */
  | { readonly tap: 'clock-framed'; readonly rig: RigId }
  | {
      readonly tap: 'match-files';
      readonly files: readonly MatchedFile[];
      readonly clocks: readonly BodyClock[];
    }
  /** What the files say in place of what was logged. */
  | { readonly tap: 'take-values'; readonly changes: EventData['values-taken']['changes'] }
  /** The brightening that a pair really needed. */
  | { readonly tap: 'even-up'; readonly found: EvenedUp };

/** What a tap may use of the world: the moment and fresh ids. */
export interface Moment {
  readonly now: Instant;
  readonly newId: () => EventId;
}

const RUNNING_ONLY = new Set<Tap['tap']>([
  'mounted',
  'dialled',
  'start',
  'taken',
  'skip-frame',
  'swap-next-two',
  'rematch',
  'skip-rest',
]);
/** Facts about the past may be set right after the end; the run itself may not go on. */
const AFTER_END = new Set<Tap['tap']>([
  'judge',
  'note',
  'discard',
  'correct',
  'correct-gear',
  'clock-framed',
  'match-files',
  'take-values',
  'even-up',
]);

/**
 * The events that a tap writes. The state does not change here: it is the fold
 * of the journal once these are on disk.
 *
 * @returns drafts in order, or a refusal whose rule says why the tap makes no
 * sense now (a second tap on a button that was already served, for instance).
 */
export function next(state: RunState, tap: Tap, moment: Moment): readonly Draft[] | Refusal {
  if (state.phase === 'ended' && !AFTER_END.has(tap.tap)) return refuse('outing-ended');
  if (RUNNING_ONLY.has(tap.tap) && state.phase !== 'running') return refuse('outing-not-running');
  const draft = <K extends EventKind>(kind: K, data: EventData[K]): Draft =>
    ({ id: moment.newId(), kind, data }) as Draft;
  switch (tap.tap) {
    case 'tick':
      return [draft('setup-ticked', { rig: tap.rig, item: tap.item, done: tap.done })];
    case 'set-counter':
      return Number.isInteger(tap.next) && tap.next >= 0
        ? [draft('counter-set', { rig: tap.rig, next: tap.next })]
        : refuse('file-number-not-whole');
    case 'begin-frames':
      return state.phase === 'setting-up' ? [draft('setup-finished', {})] : refuse('already-begun');
    case 'mounted': {
      const step = stepAt(state, moment.now);
      return step.kind === 'mount' && step.next.key === tap.frame
        ? [draft('mounted', { rigs: step.rigs })]
        : refuse('not-mounting');
    }
    case 'dialled': {
      const step = stepAt(state, moment.now);
      return step.kind === 'dial' && step.frame.key === tap.frame
        ? [draft('dialled', { rig: step.frame.rig, settings: step.frame.settings })]
        : refuse('not-dialling');
    }
    case 'start':
      return start(state, tap.frame, moment, draft);
    case 'taken':
      return taken(state, tap, moment, draft);
    case 'closed':
    case 'closed-otherwise':
      return close(state, tap, moment, draft);
    case 'record':
      return record(state, tap, moment, draft);
    case 'extra-shot':
      return [draft('extra-shot', { rig: tap.rig, count: 1 })];
    case 'judge':
      return madeFrame(state, tap.made)?.recordedAt
        ? [draft('judged', { made: tap.made, verdict: tap.verdict })]
        : refuse('frame-not-recorded');
    case 'retake':
      return retake(state, tap.frame, draft);
    case 'skip-frame': {
      const frames = nextTogether(state);
      if (state.open.length > 0) return refuse('frame-open');
      return frames[0]?.key === tap.frame
        ? frames.map((frame) => draft('frame-skipped', { frame: frame.key }))
        : refuse('list-moved-on');
    }
    case 'drop-set': {
      const remaining = state.queue.filter((frame) => frame.set !== tap.set);
      return remaining.length < state.queue.length
        ? [draft('replanned', { remaining, reason: 'set-dropped' })]
        : refuse('set-has-no-frames-left');
    }
    case 'swap-next-two':
      return state.queue[0]?.key === tap.frame
        ? swapNextTwo(state, draft)
        : refuse('list-moved-on');
    case 'rematch': {
      const set = state.plan.sets.find(({ id }) => id === tap.set);
      if (!set || !state.queue.some((frame) => frame.set === tap.set)) {
        return refuse('set-has-no-frames-left');
      }
      const remaining = withRematch(state, set, tap.rigs);
      return [draft('replanned', { remaining, reason: 'set-rematched' })];
    }
    case 'note':
      return tap.text.trim().length > 0
        ? [draft('noted', { text: tap.text.trim(), made: tap.made })]
        : refuse('note-empty');
    case 'reading':
      return tap.meter.trim().length > 0
        ? [draft('reading-taken', { meter: tap.meter.trim(), reading: tap.reading })]
        : refuse('meter-not-named');
    case 'battery-changed':
      return [draft('battery-changed', { rig: tap.rig })];
    case 'lens-touched':
      return [draft('lens-touched', { rig: tap.rig })];
    case 'powered-off':
      return [draft('powered-off', { rig: tap.rig })];
    case 'skip-rest': {
      const resting = restLeft(state, tap.rig, moment.now);
      return resting
        ? [draft('rest-skipped', { rig: tap.rig, leftS: resting.leftS })]
        : refuse('not-resting');
    }
    case 'cue-late':
      return [draft('cue-late', { made: tap.made, lateS: tap.lateS })];
    case 'pause':
      return state.phase === 'paused' ? refuse('already-paused') : [draft('paused', {})];
    case 'resume':
      return state.phase === 'paused' ? [draft('resumed', {})] : refuse('not-paused');
    case 'end':
      return state.open.length > 0 ? refuse('frame-open') : [draft('ended', {})];
    case 'discard':
      return madeFrame(state, tap.made)
        ? [draft('discarded', { made: tap.made })]
        : refuse('no-such-frame');
    case 'correct':
      return madeFrame(state, tap.made)
        ? [draft('corrected', { frame: tap.made, ...tap.change })]
        : refuse('no-such-frame');
    case 'correct-gear':
      return [draft('gear-corrected', tap.change)];
    case 'clock-framed':
      return state.rigs.has(tap.rig)
        ? [draft('clock-framed', { rig: tap.rig })]
        : refuse('no-such-rig');
    case 'match-files':
      return matchFiles(state, tap, draft);
    case 'take-values':
      if (tap.changes.length === 0) return refuse('nothing-to-take');
      return tap.changes.every(({ frame }) => madeFrame(state, frame))
        ? [draft('values-taken', { changes: tap.changes })]
        : refuse('no-such-frame');
    case 'even-up': {
      const set = state.plan.sets.find(({ id }) => id === tap.found.set);
      return set && set.reference !== tap.found.rig && state.rigs.has(tap.found.rig)
        ? [draft('evened-up', tap.found)]
        : refuse('no-such-pair');
    }
    default:
      return tap satisfies never;
  }
}

type Drafter = <K extends EventKind>(kind: K, data: EventData[K]) => Draft;

function start(
  state: RunState,
  key: FrameKey,
  { now }: Moment,
  draft: Drafter,
): readonly Draft[] | Refusal {
  const step = stepAt(state, now);
  if (step.kind !== 'expose' || step.frames[0]?.key !== key) return refuse('not-exposing');
  return step.frames.map((frame) =>
    draft('exposure-started', {
      frame: frame.key,
      rig: frame.rig,
      leadInS: leadIn(state, frame.rig),
    }),
  );
}

function taken(
  state: RunState,
  tap: Extract<Tap, { tap: 'taken' }>,
  { now }: Moment,
  draft: Drafter,
): readonly Draft[] | Refusal {
  const step = stepAt(state, now);
  if (step.kind !== 'expose' || !step.short || step.frames[0]?.key !== tap.frame) {
    return refuse('not-exposing');
  }
  return step.frames.flatMap((frame) => {
    // Said after the fact: the shutter has closed already, so there is no lead-in to wait for.
    const started = draft('exposure-started', {
      frame: frame.key,
      rig: frame.rig,
      leadInS: duration(0),
    });
    if (tap.otherwise) return [started];
    return [
      started,
      draft('recorded', {
        made: started.id,
        settings: frame.settings,
        fileNumber: state.rigs.get(frame.rig)?.nextFile ?? null,
      }),
    ];
  });
}

function close(
  state: RunState,
  tap: { readonly tap: 'closed' | 'closed-otherwise'; readonly made: MadeId },
  { now }: Moment,
  draft: Drafter,
): readonly Draft[] | Refusal {
  const frame = openFrame(state, tap.made);
  if (!frame) return refuse('frame-not-open');
  const { phase } = exposurePhase(frame, now);
  if (phase === 'lead-in') return refuse('shutter-not-open');
  if (phase === 'to-record') return refuse('already-closed');
  const closed = draft('exposure-closed', { made: tap.made });
  return tap.tap === 'closed-otherwise' ? [closed] : [closed, recordAs(state, frame, {}, draft)];
}

function record(
  state: RunState,
  tap: Extract<Tap, { tap: 'record' }>,
  { now }: Moment,
  draft: Drafter,
): readonly Draft[] | Refusal {
  const frame = openFrame(state, tap.made);
  if (!frame) return refuse('frame-not-open');
  const { phase } = exposurePhase(frame, now);
  if (phase === 'lead-in' || phase === 'running') return refuse('shutter-still-open');
  if (phase === 'held-open') return refuse('bulb-not-closed');
  return [recordAs(state, frame, tap, draft)];
}

function matchFiles(
  state: RunState,
  { files, clocks }: Extract<Tap, { tap: 'match-files' }>,
  draft: Drafter,
): readonly Draft[] | Refusal {
  if (files.length + clocks.length === 0) return refuse('nothing-to-match');
  if (!files.every(({ made }) => madeFrame(state, made))) return refuse('no-such-frame');
  if (!clocks.every(({ rig }) => state.rigs.has(rig))) return refuse('no-such-rig');
  return [draft('files-matched', { files, clocks })];
}

const openFrame = (state: RunState, id: MadeId): MadeFrame | undefined =>
  state.open.includes(id) ? madeFrame(state, id) : undefined;

function recordAs(
  state: RunState,
  frame: MadeFrame,
  really: { readonly settings?: Settings; readonly fileNumber?: number | null },
  draft: Drafter,
): Draft {
  const { rig, settings } = frame.planned;
  return draft('recorded', {
    made: frame.id,
    settings: really.settings ?? settings,
    fileNumber:
      really.fileNumber === undefined ? (state.rigs.get(rig)?.nextFile ?? null) : really.fileNumber,
  });
}

function retake(state: RunState, key: FrameKey, draft: Drafter): readonly Draft[] | Refusal {
  if (!state.made.some((frame) => frame.planned.key === key)) return refuse('no-such-frame');
  if (state.queue.some((frame) => frame.key === key)) return refuse('retake-already-waiting');
  return [draft('retake-asked', { frame: key })];
}

function swapNextTwo(state: RunState, draft: Drafter): readonly Draft[] | Refusal {
  const first = nextTogether(state).length;
  const rest = state.queue.slice(first);
  const second = nextTogether({ ...state, queue: rest }).length;
  if (first === 0 || second === 0) return refuse('no-two-frames-left');
  const remaining = [
    ...rest.slice(0, second),
    ...state.queue.slice(0, first),
    ...rest.slice(second),
  ];
  return [draft('replanned', { remaining, reason: 'next-two-swapped' })];
}

/** The body's own self-timer; none when it is released by cable. */
function leadIn(state: RunState, rig: RigId): Seconds {
  return assemble(state.gear, rig)?.body.selfTimer.usedS ?? duration(0);
}
