import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { OutingId } from '../outing/ids.ts';
import { inOrder } from '../outing/sequence.ts';
import { type FrameRecord, frameRecords } from './frameTable.ts';
import { jsonFile } from './json.ts';

/** One outing's journal, with its log for other programs. */
export interface Journal {
  readonly outing: OutingId;
  readonly events: readonly OutingEvent[];
  /** Worked out from the events; never read back, so that it cannot contradict them. */
  readonly frames: readonly FrameRecord[];
}

export const journalFile = jsonFile<Journal>('evenfall-journal', 3);

/** The journal of an outing from its events. */
export function journalOf(outing: OutingId, events: readonly OutingEvent[]): Journal {
  const run = fold(inOrder(events));
  return { outing, events, frames: run === null ? [] : frameRecords(run) };
}
