import type { Body } from '../gear/body.ts';
import type { RigId } from '../gear/ids.ts';
import type { Lens } from '../gear/lens.ts';
import type { Gear, Rig } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import type { Reading } from '../light/reading.ts';
import type { Site } from '../light/site.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { FrameKey } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import type { Seconds } from '../science/units.ts';
import type { BodyClock, EvenedUp, MatchedFile } from './cameraFile.ts';
import type { EventId, MadeId, OutingId, WriterId } from './ids.ts';
import type { Instant } from './instant.ts';

export type { Reading };

/** Lines of the set-up sheet, ticked once a rig before the first frame. */
export const SETUP_ITEMS = [
  'raw-and-depth',
  'mechanical-shutter',
  'dark-frame',
  'noise-reduction-off',
  'lens-corrections-off',
  'stabiliser-off',
  'auto-iso-and-highlight-modes-off',
  'no-crop-mode',
  'fixed-white-balance',
  'manual-focus',
  'eyepiece-covered',
  'hood-on',
  'image-review-short',
  'clock-set',
  'card-space',
  'battery-charged',
  'focus-fixed',
] as const;
export type SetupItem = (typeof SETUP_ITEMS)[number];

/** What is seen of a frame while its rig still stands. */
export const VERDICTS = ['good', 'soft', 'moved', 'clipped', 'passer-by-light'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** A field of a frame that was logged wrong; the last correction of a field holds. */
export type CorrectionValue =
  | { readonly field: 'isoMark'; readonly value: string }
  | { readonly field: 'fMark'; readonly value: string }
  | { readonly field: 'time'; readonly value: Settings['time'] }
  | { readonly field: 'elapsedS'; readonly value: Seconds }
  | { readonly field: 'fileNumber'; readonly value: number | null }
  | { readonly field: 'verdict'; readonly value: Verdict | null }
  | { readonly field: 'counts'; readonly value: boolean }
  | { readonly field: 'note'; readonly value: string };

export type GearPart =
  | { readonly part: 'body'; readonly value: Body }
  | { readonly part: 'lens'; readonly value: Lens }
  | { readonly part: 'rig'; readonly value: Rig };

/** What each kind of event says. Shipped shapes only ever grow. */
export interface EventData {
  /** Holds plan and gear whole: later edits elsewhere change no outing. */
  'outing-started': {
    readonly plan: Plan;
    readonly gear: Gear;
    readonly frames: readonly PlannedFrame[];
    /** Where it is walked; null = not stated. */
    readonly site: Site | null;
    /** What the sky will do there, so that no ephemeris is needed again; null = not known. */
    readonly sky: SkyTable | null;
  };
  'setup-ticked': { readonly rig: RigId; readonly item: SetupItem; readonly done: boolean };
  'setup-finished': Record<string, never>;
  /** The number the body will give its next file. */
  'counter-set': { readonly rig: RigId; readonly next: number };
  /** All rigs that now stand on a tripod. */
  mounted: { readonly rigs: readonly RigId[] };
  /** These settings now stand on the rig. */
  dialled: { readonly rig: RigId; readonly settings: Settings };
  /** The release was pressed; the shutter opens `leadInS` later. The event's id names the frame made. */
  'exposure-started': {
    readonly frame: FrameKey;
    readonly rig: RigId;
    readonly leadInS: Seconds;
  };
  /** The shutter closed at this instant: bulb, or a timed frame stopped early. */
  'exposure-closed': { readonly made: MadeId };
  /** What was really set. */
  recorded: {
    readonly made: MadeId;
    readonly settings: Settings;
    readonly fileNumber: number | null;
  };
  /** Frames outside the list, which still move the file counter. */
  'extra-shot': { readonly rig: RigId; readonly count: number };
  judged: { readonly made: MadeId; readonly verdict: Verdict };
  'retake-asked': { readonly frame: FrameKey };
  'frame-skipped': { readonly frame: FrameKey };
  /** Replaces the frames not started yet, and only those. */
  replanned: {
    readonly remaining: readonly PlannedFrame[];
    readonly reason: 'next-two-swapped' | 'set-dropped' | 'set-rematched';
  };
  noted: { readonly text: string; readonly made: MadeId | null };
  'reading-taken': { readonly meter: string; readonly reading: Reading };
  'battery-changed': { readonly rig: RigId };
  'lens-touched': { readonly rig: RigId };
  'powered-off': { readonly rig: RigId };
  'rest-skipped': { readonly rig: RigId; readonly leftS: Seconds };
  /** The end of an exposure was seen or heard too late. */
  'cue-late': { readonly made: MadeId; readonly lateS: Seconds };
  paused: Record<string, never>;
  resumed: Record<string, never>;
  ended: Record<string, never>;
  /** The target never happened: no heat, no file number. */
  undone: { readonly target: EventId };
  /** The frame happened and does not count. */
  discarded: { readonly made: MadeId };
  corrected: { readonly frame: MadeId } & CorrectionValue;
  /** A profile proved wrong; changes this outing's copy of the gear. */
  'gear-corrected': GearPart;
  /** The clock on the screen was photographed with this rig, at this instant. */
  'clock-framed': { readonly rig: RigId };
  /** Which files belong to which frames, and how the bodies' clocks stood; the newest for a frame or a rig holds. */
  'files-matched': {
    readonly files: readonly MatchedFile[];
    readonly clocks: readonly BodyClock[];
  };
  /** What the files say was taken in place of what was logged: corrections, all in one. */
  'values-taken': { readonly changes: readonly ({ readonly frame: MadeId } & CorrectionValue)[] };
  /** The brightening that a pair really needed; the newest for a rig, set and pass holds. */
  'evened-up': EvenedUp;
}

export type EventKind = keyof EventData;

/** The version of each kind's shape as this code writes it. */
export const EVENT_VERSION = 3;

/** One line of an outing's journal. Key: outing, writer, seq. */
export type OutingEvent = {
  readonly [K in EventKind]: Instant & {
    readonly id: EventId;
    readonly outing: OutingId;
    readonly writer: WriterId;
    /** From 1 within a writer and outing, without gaps. */
    readonly seq: number;
    readonly v: number;
    readonly kind: K;
    readonly data: EventData[K];
  };
}[EventKind];

export type EventOf<K extends EventKind> = Extract<OutingEvent, { kind: K }>;

/** An event before it has its place in the journal. */
export type Draft = {
  readonly [K in EventKind]: {
    readonly id: EventId;
    readonly kind: K;
    readonly data: EventData[K];
  };
}[EventKind];
