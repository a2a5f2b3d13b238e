import type { FNumber, Iso, Seconds } from '../science/units.ts';

/** A time as it is set: a position of the dial, or held open by hand. */
export type TimeChoice =
  | { readonly kind: 'dial'; readonly mark: string }
  | { readonly kind: 'bulb'; readonly seconds: Seconds };

/** What is dialled on a rig, in the body's and lens's own marks. */
export interface Settings {
  readonly fMark: string;
  readonly time: TimeChoice;
  readonly isoMark: string;
}

/** The values behind the marks, which every computation uses. */
export interface Exact {
  readonly n: FNumber;
  readonly t: Seconds;
  readonly s: Iso;
}

/** Whether two settings stand on the same marks; a bulb's planned length is no mark. */
export const sameSettings = (a: Settings, b: Settings): boolean =>
  a.fMark === b.fMark && a.isoMark === b.isoMark && sameTimeMark(a.time, b.time);

/** Whether the time dial stands alike; in bulb it stands on bulb, however long the hand holds. */
export const sameTimeMark = (a: TimeChoice, b: TimeChoice): boolean =>
  a.kind === 'bulb' || b.kind === 'bulb' ? a.kind === b.kind : a.mark === b.mark;
