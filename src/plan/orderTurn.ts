import type { RigId } from '../gear/ids.ts';
import type { ThermalModel } from '../science/heat.ts';
import type { PlannedFrame } from './frame.ts';

/*
 * Turns as a search sees them: one rig's frames of one set in one pass, with the capped darks that
 * follow them. Repeats of a turn stay together by what a repeat is; passes of one rig in one set are
 * alike, so that only how many are done matters. Side by side a turn holds the frames of all rigs.
 */

export interface OrderRig {
  readonly id: RigId;
  readonly timerS: number;
  readonly waits: 'off' | 'idle';
  readonly model: ThermalModel;
  /** What is left of the distance to the idle plateau after a dial change, settling and writing. */
  readonly leftDialled: number;
  readonly leftSettled: number;
  readonly leftWritten: number;
}

/** One frame of a turn as the search sees it; times in s, heat in doublings. */
export interface TurnFrame {
  readonly t: number;
  /** The body's own dark frame after it. */
  readonly darkS: number;
  readonly capped: boolean;
  /** Frames of a rig with the same number stand on the same marks. */
  readonly marks: number;
  /** A rest that its set asks for, counted from the rig's last exposure. */
  readonly askedS: number;
  /** A rested body's first such frame, at mid-exposure. */
  readonly rested: number;
  /** The highest heat at the end of a rest that the limit lets pass. */
  readonly highest: number;
  /** What is left of the distance to the exposing plateau at mid-exposure, and after the dark frame. */
  readonly leftAtMid: number;
  readonly leftAtEnd: number;
}

/** One rig's part of a turn. */
export interface TurnPart {
  readonly rig: number;
  readonly frames: readonly TurnFrame[];
}

/** A turn that occurs in as many passes as its set has. */
export interface TurnKind {
  readonly index: number;
  readonly set: number;
  readonly parts: readonly TurnPart[];
  readonly count: number;
  /** The most frames of a part: each place of a turn has one from every part that has as many. */
  readonly places: number;
  /** The frames of each pass in the order in which they are shot. */
  readonly passes: readonly (readonly PlannedFrame[])[];
  /** What a turn takes at least: no swap, no dial change, no rest. */
  readonly leastS: number;
  /** And at most: a swap, all dialled anew, the longest rests, but no waiting for its set. */
  readonly mostS: number;
}
