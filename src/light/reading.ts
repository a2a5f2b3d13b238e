import { ev100 } from '../science/exposure.ts';
import type { Ev, FNumber, Iso, Seconds, UtcMs } from '../science/units.ts';

/** A meter reading, or a test frame that serves as one. */
export type Reading =
  | { readonly kind: 'ev'; readonly ev100: Ev }
  | { readonly kind: 'settings'; readonly n: FNumber; readonly t: Seconds; readonly s: Iso }
  | {
      readonly kind: 'test-frame';
      readonly n: FNumber;
      readonly t: Seconds;
      readonly s: Iso;
      /** Thirds of a stop that the frame came out over (positive) or under. */
      readonly thirdsOver: number;
    };

/** The scene's EV at ISO 100 that a reading stands for: a frame that came out over saw more light. */
export function evOfReading(reading: Reading): Ev {
  switch (reading.kind) {
    case 'ev':
      return reading.ev100;
    case 'settings':
      return ev100(reading.n, reading.t, reading.s);
    case 'test-frame':
      return (ev100(reading.n, reading.t, reading.s) + reading.thirdsOver / 3) as Ev;
  }
}

/** A reading in its place in the evening. */
export interface MeterReading {
  readonly at: UtcMs;
  /** What it was taken with; each meter has an offset of its own. */
  readonly meter: string;
  readonly ev100: Ev;
}
