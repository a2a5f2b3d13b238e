import type { RigId } from '../gear/ids.ts';
import type { Letter } from '../gear/letter.ts';
import type { Seconds } from '../science/units.ts';
import type { SetId } from './ids.ts';
import type { Unreached } from './matching.ts';

/** Something about one rig in one set. */
interface InSet {
  readonly set: SetId;
  readonly rig: RigId;
}

/** What is wrong with a plan, or worth saying, with what the sentence on the screen needs. */
export type Problem =
  | { readonly code: 'no-rigs' }
  /** Nothing to compare; the list can be shot all the same. */
  | { readonly code: 'one-rig' }
  | { readonly code: 'too-many-rigs'; readonly most: number }
  | { readonly code: 'rig-gone'; readonly rig: RigId }
  | { readonly code: 'letter-twice'; readonly letter: Letter }
  | { readonly code: 'no-sets' }
  | { readonly code: 'dark-without-light'; readonly set: SetId }
  | ({ readonly code: 'reference-not-in-plan' } & InSet)
  /** A mark that is set by hand does not stand on the rig; `rule` says which dial. */
  | ({ readonly code: 'settings-not-on-dials'; readonly rule: string } & InSet)
  | ({ readonly code: 'bulb-not-on-body' } & InSet)
  | ({ readonly code: 'bulb-too-long'; readonly longestS: Seconds } & InSet)
  | ({ readonly code: 'free-settings-missing' } & InSet)
  /** The profile of the rig yields no positions. */
  | ({ readonly code: 'dials-refused'; readonly rule: string } & InSet)
  | ({ readonly code: 'out-of-reach'; readonly unreached: Unreached } & InSet)
  | ({ readonly code: 'extended-iso'; readonly isoMark: string } & InSet)
  /** Nobody has measured whether this time runs as marked: up to 0.09 stop. */
  | ({ readonly code: 'time-uncertain' } & InSet);

const SAID_ONLY: ReadonlySet<Problem['code']> = new Set([
  'one-rig',
  'out-of-reach',
  'extended-iso',
  'time-uncertain',
]);

/** Whether an outing must not start before this is put right. */
export const stopsStart = ({ code }: Problem): boolean => !SAID_ONLY.has(code);
