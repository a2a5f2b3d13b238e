import type { SetId } from '../../src/plan/ids.ts';
import type { Stops, UtcMs } from '../../src/science/units.ts';
import type { Exposed, Weights } from './world/truth.ts';

/** What a way of working says of a pair over a set: other minus reference, rendered. */
export interface Stated {
  readonly set: SetId;
  readonly reference: string;
  readonly other: string;
  readonly stops: Stops;
  /** Of which frames, and how they are weighed. */
  readonly weights: Weights;
  /** Half of what is to hold the truth 95 times in a hundred. */
  readonly half: Stops;
}

/** An evening as one way of working went through it. */
export interface Walked {
  readonly exposures: readonly Exposed[];
  readonly switchedOn: UtcMs;
  readonly stated: readonly Stated[];
}
