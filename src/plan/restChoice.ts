import type { Ratio, Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { RestRule } from './plan.ts';

/** How long a rig rests before a frame. */
export type RestChoice =
  | { readonly kind: 'none' }
  | { readonly kind: 'thumb'; readonly rule: RestRule }
  /** Until a frame's dark current is within its ratio of a rested body's first such frame. */
  | {
      readonly kind: 'limit';
      readonly ratioOf: (frame: PlannedFrame) => Ratio;
      readonly longestS: Seconds;
    };
