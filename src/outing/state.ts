import type { RigId } from '../gear/ids.ts';
import type { Gear } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import type { Site } from '../light/site.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import type { Seconds } from '../science/units.ts';
import type { BodyClock, CameraFile, EvenedUp } from './cameraFile.ts';
import type { CorrectionValue, Reading, SetupItem, Verdict } from './events.ts';
import type { EventId, MadeId, OutingId } from './ids.ts';
import type { Instant } from './instant.ts';

/** A frame really made, as it was first logged; corrections are applied by the log. */
export interface MadeFrame {
  readonly id: MadeId;
  /** What was intended when it started. */
  readonly planned: PlannedFrame;
  /** 1 for the first try of a planned frame, 2 for its first retake. */
  readonly attempt: number;
  readonly leadInS: Seconds;
  /** The tap, a lead-in before the shutter opened. */
  readonly startedAt: Instant;
  /** When a hand closed it; null for a frame that ended by itself or is still open. */
  readonly closedAt: Instant | null;
  readonly recordedAt: Instant | null;
  /** What was really set; null until recorded. */
  readonly settings: Settings | null;
  readonly fileNumber: number | null;
  readonly verdict: Verdict | null;
  readonly discarded: boolean;
  /** By how much the end was missed; null if it was seen in time. */
  readonly lateS: Seconds | null;
}

/** What is known of a rig during the run. */
export interface RigRun {
  readonly ticked: ReadonlySet<SetupItem>;
  /** Why focus must be looked at again; null while it stands fixed. */
  readonly focusDoubt: 'not-fixed' | 'battery-changed' | 'lens-touched' | 'powered-off' | null;
  /** What stands on its dials as far as it was said; null = not yet dialled. */
  readonly dialled: Settings | null;
  /** The number its next file will get; null = not stated. */
  readonly nextFile: number | null;
  readonly lastMade: MadeId | null;
  /** The made frame after which its rest was skipped. */
  readonly restSkippedAfter: MadeId | null;
}

export interface Noted {
  readonly id: EventId;
  readonly at: Instant;
  readonly text: string;
  readonly made: MadeId | null;
}

export interface TakenReading {
  readonly id: EventId;
  readonly at: Instant;
  readonly meter: string;
  readonly reading: Reading;
}

export interface Correction {
  readonly id: EventId;
  readonly at: Instant;
  readonly made: MadeId;
  readonly change: CorrectionValue;
}

/** The clock on the screen, photographed with a rig. */
export interface ClockFrame {
  readonly id: EventId;
  readonly rig: RigId;
  readonly at: Instant;
}

export interface SkippedFrame {
  readonly frame: PlannedFrame;
  readonly at: Instant;
  readonly why: 'skipped' | 'set-dropped';
}

/** Other settings that were taken for what was left of a set, because the light had moved on. */
export interface Rematched {
  readonly set: SetId;
  readonly at: Instant;
  /** The next frame of each rig that was changed, as it is to be made from there on. */
  readonly frames: readonly PlannedFrame[];
}

export interface SkippedRest {
  readonly rig: RigId;
  readonly leftS: Seconds;
  readonly at: Instant;
}

/**
 * What happened to a rig and can warm its sensor, or makes its heat uncertain, at the instant of its
 * tap: what a hand did there lies before it, what an exposure does comes after it.
 */
export type RigAct = { readonly rig: RigId; readonly at: Instant } & (
  | { readonly what: 'ticked' | 'focused' | 'framed' | 'dialled' | 'switched-off' }
  | { readonly what: 'battery-changed' }
  | { readonly what: 'exposed'; readonly made: MadeId }
  /** Frames outside the list, taken to be as long as what stood on the dial; null = unknown. */
  | { readonly what: 'extra'; readonly count: number; readonly settings: Settings | null }
);

export type Phase = 'setting-up' | 'running' | 'paused' | 'ended';

/** An outing as its journal tells it. Derived, never stored. */
export interface RunState {
  readonly outing: OutingId;
  readonly startedAt: Instant;
  readonly endedAt: Instant | null;
  readonly phase: Phase;
  readonly plan: Plan;
  /** This outing's own copy, with its corrections. */
  readonly gear: Gear;
  /** Null = not stated. */
  readonly site: Site | null;
  /** Null = not known. */
  readonly sky: SkyTable | null;
  /** Frames not started, in order; a retake stands first. */
  readonly queue: readonly PlannedFrame[];
  readonly made: readonly MadeFrame[];
  /** Made frames that are started and not recorded. */
  readonly open: readonly MadeId[];
  readonly mounted: readonly RigId[];
  readonly rigs: ReadonlyMap<RigId, RigRun>;
  readonly skipped: readonly SkippedFrame[];
  readonly dropped: readonly SetId[];
  readonly rematched: readonly Rematched[];
  readonly restsSkipped: readonly SkippedRest[];
  readonly readings: readonly TakenReading[];
  readonly notes: readonly Noted[];
  readonly corrections: readonly Correction[];
  readonly clockFrames: readonly ClockFrame[];
  /** By frame: its file, or null where somebody said that it has none. */
  readonly files: ReadonlyMap<MadeId, CameraFile | null>;
  readonly clocks: ReadonlyMap<RigId, BodyClock>;
  /** The newest of each rig, set and pass, in the order in which they were first given. */
  readonly evenedUp: readonly EvenedUp[];
  /** Batteries changed, by rig: heat is uncertain from there on. */
  readonly batteries: readonly { readonly rig: RigId; readonly at: Instant }[];
  /** Everything that warmed a sensor, of all rigs, in order. */
  readonly acts: readonly RigAct[];
  /** Every planned frame that was ever in the list, by key. */
  readonly planned: ReadonlyMap<FrameKey, PlannedFrame>;
}
