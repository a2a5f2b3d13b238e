import { also, fault, id, object, within } from '../gear/read.ts';
import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { OutingId } from '../outing/ids.ts';
import { inOrder } from '../outing/sequence.ts';
import { readEvents } from './events.ts';
import { type FrameRecord, frameRecords } from './frameTable.ts';
import { jsonFile } from './json.ts';

/** One outing's journal, with its log for other programs. */
export interface Journal {
  readonly outing: OutingId;
  readonly events: readonly OutingEvent[];
  /** Worked out from the events; never read back, so that it cannot contradict them. */
  readonly frames: readonly FrameRecord[];
}

const readJournal = also(
  object<Journal>({ outing: id<OutingId>(), events: readEvents, frames: () => [] }),
  ({ outing, events }) => {
    const stray = events.findIndex((event) => event.outing !== outing);
    return stray < 0
      ? null
      : within('events', within(`[${stray}]`, within('outing', fault('event-of-other-outing'))));
  },
);

export const journalFile = jsonFile('evenfall-journal', 1, readJournal);

/** The journal of an outing from its events. */
export function journalOf(outing: OutingId, events: readonly OutingEvent[]): Journal {
  const run = fold(inOrder(events));
  return { outing, events, frames: run === null ? [] : frameRecords(run) };
}
