import type { OutingEvent } from '../outing/events.ts';
import type { OutingId } from '../outing/ids.ts';
import type { EventReader, OutingSummary } from './contract.ts';
import { toFault } from './fault.ts';
import { onlyEvents, restoreAll } from './restore.ts';
import { type Database, ofOuting } from './schema.ts';
import { writeStrictly } from './transaction.ts';
import { trustedEvent } from './trusted.ts';

/**
 * Appends the events of one tap. Safe to repeat.
 *
 * @throws StoreFailure or the platform's own exception.
 */
export async function appendEvents(
  db: Database,
  events: readonly OutingEvent[],
  reader: EventReader,
): Promise<void> {
  try {
    await writeStrictly(db, ['events'], (transaction, requests) => {
      const store = transaction.objectStore('events');
      for (const event of events) requests.push(store.add(event));
    });
  } catch (cause) {
    if (toFault(cause).kind !== 'refused') throw cause;
    // A retry of what is there already, or a true conflict: only a comparison tells.
    await restoreAll(db, onlyEvents(events), reader);
  }
}

/** The events of one outing in their order; with `most` only so many, the first by key. */
export async function readEvents(
  db: Database,
  outing: OutingId,
  reader: EventReader,
  most?: number,
): Promise<readonly OutingEvent[]> {
  const stored = await db.getAll('events', ofOuting(outing), most);
  return reader.inOrder(stored.map((event) => trustedEvent(event, reader)));
}

/** Each outing with its size and its span, without reading its events. */
export async function readOutings(db: Database): Promise<readonly OutingSummary[]> {
  const index = db.transaction('events').store.index('by-time');
  const summaries: OutingSummary[] = [];
  let first = await index.openKeyCursor();
  while (first !== null) {
    const [outing, firstWallMs] = first.key;
    const range = ofOuting(outing);
    const [events, last] = await Promise.all([
      index.count(range),
      index.openKeyCursor(range, 'prev'),
    ]);
    summaries.push({
      outing: outing as OutingId,
      events,
      firstWallMs,
      lastWallMs: last?.key[1] ?? firstWallMs,
    });
    // On to the first key of the next outing.
    first = await index.openKeyCursor(IDBKeyRange.lowerBound([outing, []]));
  }
  return summaries;
}
