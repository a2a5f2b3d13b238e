import type { RigId } from '../gear/ids.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import type { FrameKey, SetId } from './ids.ts';

/** One frame of the shot list in its place in the order. */
export interface PlannedFrame {
  readonly key: FrameKey;
  readonly set: SetId;
  readonly rig: RigId;
  /** From 1. */
  readonly pass: number;
  /** From 1. */
  readonly repeat: number;
  /** Frames of one visit stand together; a new number means another rig on the tripod. */
  readonly visit: number;
  readonly settings: Settings;
  readonly exact: Exact;
}
