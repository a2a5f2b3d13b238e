import type { OutingEvent } from '../outing/events.ts';
import type { OutingId } from '../outing/ids.ts';
import type { FrameRecord } from './frameTable.ts';
import { jsonFile } from './json.ts';
import type { PairRecord } from './pairTable.ts';

/** One outing's journal, with its log for other programs. */
export interface Journal {
  readonly outing: OutingId;
  readonly events: readonly OutingEvent[];
  /**
   * Worked out from the events; never read back, so that it cannot contradict them; empty
   * where the part that works them out is missing: the events leave all the same.
   */
  readonly frames: readonly FrameRecord[];
  /** The same of each pair, and of each of its passes. */
  readonly pairs: readonly PairRecord[];
}

export const journalFile = jsonFile<Journal>('evenfall-journal', 3);
