import type { RigId } from '../gear/ids.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import type { FrameKey, SetId } from './ids.ts';

/** What is dialled on a rig, and the values behind it. */
export interface Dialled {
  readonly settings: Settings;
  readonly exact: Exact;
}

/** One frame of the shot list in its place in the order. */
export interface PlannedFrame extends Dialled {
  readonly key: FrameKey;
  readonly set: SetId;
  readonly rig: RigId;
  /** From 1. */
  readonly pass: number;
  /** From 1. */
  readonly repeat: number;
  /** Frames of one visit stand together; a new number means another rig on the tripod. */
  readonly visit: number;
}

/** The name of a planned frame within its plan: set/rig/pass/repeat. */
export const frameKey = (set: SetId, rig: RigId, pass: number, repeat: number): FrameKey =>
  `${set}/${rig}/${pass}/${repeat}` as FrameKey;
