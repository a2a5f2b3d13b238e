import type { OutingEvent } from '../outing/events.ts';

/**
 * The events of one outing in their one order: within a writer by seq, across
 * writers by (wallMs, writer, seq).
 *
 * A clock that was set back must not move an event before the one its writer made
 * earlier, so each event counts with the latest wall time its writer had shown.
 */
export function inOrder(events: readonly OutingEvent[]): OutingEvent[] {
  const shown = new Map<string, number>();
  return [...events]
    .sort((a, b) => a.seq - b.seq)
    .map((event) => {
      const at = Math.max(event.wallMs, shown.get(event.writer) ?? Number.NEGATIVE_INFINITY);
      shown.set(event.writer, at);
      return { event, at };
    })
    .sort(
      (a, b) => a.at - b.at || compare(a.event.writer, b.event.writer) || a.event.seq - b.event.seq,
    )
    .map(({ event }) => event);
}

/** By code unit, as the database compares keys; never by the language of the phone. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
