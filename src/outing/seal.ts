import { type Draft, EVENT_VERSION, type OutingEvent } from './events.ts';
import type { OutingId, WriterId } from './ids.ts';
import type { Instant } from './instant.ts';

/** Where the next event of a writer belongs. */
export interface Place {
  readonly outing: OutingId;
  readonly writer: WriterId;
  /** From 1, without gaps. */
  readonly seq: number;
}

/** Gives the drafts of one tap their place in the journal and one common instant. */
export function seal(drafts: readonly Draft[], at: Instant, place: Place): readonly OutingEvent[] {
  return drafts.map(
    (draft, index) =>
      ({
        ...at,
        ...draft,
        outing: place.outing,
        writer: place.writer,
        seq: place.seq + index,
        v: EVENT_VERSION,
      }) as OutingEvent,
  );
}

/** The next free number of a writer in an outing. */
export function nextSeq(events: readonly OutingEvent[], writer: WriterId): number {
  let last = 0;
  for (const event of events) if (event.writer === writer) last = Math.max(last, event.seq);
  return last + 1;
}
