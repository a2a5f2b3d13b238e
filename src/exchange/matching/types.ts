import type { RigId } from '../../gear/ids.ts';
import type { BodyClock } from '../../outing/cameraFile.ts';
import type { CorrectionValue } from '../../outing/events.ts';
import type { MadeId } from '../../outing/ids.ts';
import type { Stops } from '../../science/units.ts';

/*
 * What the matching of frames with files answers. Files are named by their place in the list that
 * was handed in. Costs have no unit: a difference of two is twice the logarithm of how much
 * likelier one answer is than the other, as far as the model in evidence.ts goes.
 */

/** A file that a frame might also have; null = no file at all. */
export interface FileChoice {
  readonly file: number | null;
  /** What the cheapest whole answer with this choice costs above the cheapest of all. */
  readonly cost: number;
}

/** A made frame with the file that was found for it. */
export interface FrameMatch {
  readonly made: MadeId;
  /** Null = none of the files, or its file was accepted before and is not among these. */
  readonly file: number | null;
  /** Whether every other choice costs so much more that nobody need be asked. */
  readonly sure: boolean;
  /** Whether somebody said so: now (`Decided`), or in the journal (`RunState.files`). */
  readonly said: boolean;
  /** What else it might be, cheapest first; empty where it is sure. */
  readonly others: readonly FileChoice[];
}

/**
 * What a file without a frame probably is. `copy`: the same picture as another file (a raw and its
 * JPEG, a second card). `retake`: like the frame just before it, and not logged. `bracket`: beside a
 * frame, with only its exposure moved. `extra-shot`: another of this evening. `unknown`: it says no
 * time, or no rig can be told.
 */
export type LeftKind =
  | 'clock-frame'
  | 'copy'
  | 'retake'
  | 'bracket'
  | 'extra-shot'
  | 'other-evening'
  | 'unknown';

/** A file without a frame. */
export interface LeftFile {
  readonly file: number;
  readonly kind: LeftKind;
  /** Null where none can be told. */
  readonly rig: RigId | null;
  /** The frame that a retake or a bracket belongs to; null for the others. */
  readonly beside: MadeId | null;
  /** The file that a copy is the same picture as; null for the others. */
  readonly copyOf: number | null;
}

/** Files that one body wrote, as far as they say. */
export interface FileGroup {
  /** Names it in `Decided`; the same for the same body in every list of files. */
  readonly key: string;
  readonly make: string | null;
  readonly model: string | null;
  readonly serial: string | null;
  /** All of them, copies too, in the order of the list. */
  readonly files: readonly number[];
  /** Null = none of this outing. */
  readonly rig: RigId | null;
  readonly sure: boolean;
}

/** Something to be decided. Choices stand cheapest first; the first is what `Matching` holds. */
export type Ask =
  /** Which rig took these files; null = none of this outing. Decide it before all others. */
  | {
      readonly ask: 'which-rig';
      readonly group: string;
      readonly choices: readonly { readonly rig: RigId | null; readonly cost: number }[];
    }
  /** How a body's clock stood: several offsets fit the sequence. Settles many frames at once. */
  | {
      readonly ask: 'which-clock';
      readonly rig: RigId;
      readonly choices: readonly { readonly clock: BodyClock; readonly cost: number }[];
    }
  /** Which file a frame has. */
  | {
      readonly ask: 'which-file';
      readonly made: MadeId;
      readonly choices: readonly FileChoice[];
    };

/** What somebody has decided; it stands, and the rest is matched around it. */
export interface Decided {
  /** By group key. */
  readonly rigs: ReadonlyMap<string, RigId | null>;
  readonly clocks: ReadonlyMap<RigId, BodyClock>;
  /** By frame: the place of its file in the list, or null for none. */
  readonly files: ReadonlyMap<MadeId, number | null>;
}

export const NOTHING_DECIDED: Decided = {
  rigs: new Map(),
  clocks: new Map(),
  files: new Map(),
};

/** Frames and files, as they belong together. */
export interface Matching {
  /** One for each made frame, in the order of the log. */
  readonly frames: readonly FrameMatch[];
  /** Every file that no frame has, in the order of the list. */
  readonly left: readonly LeftFile[];
  readonly groups: readonly FileGroup[];
  /** One for each rig with matched files that say a time. */
  readonly clocks: readonly BodyClock[];
  /** In the order in which they are best decided. */
  readonly asks: readonly Ask[];
  /** Files that say no time and are not matched for it, by their place; among `left` as well. */
  readonly untimed: readonly number[];
}

/** A field in which the log and a file may differ. */
export type DifferingField = 'time' | 'fNumber' | 'iso' | 'fileNumber';

/** Where a file says something else than was logged, beyond what its figures' rounding explains. */
export interface Difference {
  readonly field: DifferingField;
  /** Seconds, f-number, ISO as marked, or number; null = not logged. */
  readonly logged: number | null;
  readonly written: number;
  /** Positive: by the file it is brighter; null for a file number, or where nothing was logged. */
  readonly stops: Stops | null;
  /** What taking the file's value would be, in marks of the dials; null = it cannot be taken. */
  readonly correction: CorrectionValue | null;
}

/** A difference of a frame, chosen to be taken. */
export interface TakenDifference {
  readonly made: MadeId;
  readonly difference: Difference;
}
