import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { OutingId } from '../outing/ids.ts';
import { inOrder } from '../outing/sequence.ts';
import { frameRecords } from './frameTable.ts';
import type { Journal } from './journalFile.ts';
import { pairRecords } from './pairTable.ts';

/** The journal of an outing from its events, with the log that they tell. */
export function journalOf(outing: OutingId, events: readonly OutingEvent[]): Journal {
  const run = fold(inOrder(events));
  return {
    outing,
    events,
    frames: run === null ? [] : frameRecords(run),
    pairs: run === null ? [] : pairRecords(run),
  };
}
