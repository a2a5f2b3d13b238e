import type { OutingEvent } from './events.ts';
import type { EventId, WriterId } from './ids.ts';

/**
 * Events of one outing in their one true order: each writer's by its own count,
 * writers merged by wall time. A clock that was set back never moves an event
 * of its own writer; the result depends only on the set of events.
 */
export function inOrder(events: readonly OutingEvent[]): readonly OutingEvent[] {
  const lanes = new Map<WriterId, OutingEvent[]>();
  for (const event of events) {
    const lane = lanes.get(event.writer);
    if (lane) lane.push(event);
    else lanes.set(event.writer, [event]);
  }
  for (const lane of lanes.values()) lane.sort((a, b) => a.seq - b.seq);
  const [only] = lanes.values();
  if (only && lanes.size === 1) return only;
  return merged([...lanes.entries()].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, lane]) => lane));
}

function merged(lanes: readonly (readonly OutingEvent[])[]): readonly OutingEvent[] {
  const heads = lanes.map(() => 0);
  const out: OutingEvent[] = [];
  for (;;) {
    let best: { lane: number; event: OutingEvent } | null = null;
    lanes.forEach((lane, index) => {
      const event = lane[heads[index] ?? 0];
      // Lanes come sorted by writer, so the first of two equal times wins.
      if (event && (!best || event.wallMs < best.event.wallMs)) best = { lane: index, event };
    });
    if (!best) return out;
    const { lane, event } = best as { lane: number; event: OutingEvent };
    heads[lane] = (heads[lane] ?? 0) + 1;
    out.push(event);
  }
}

/** The events that stand: what was undone never happened, nor did the undoing. */
export function standing(events: readonly OutingEvent[]): readonly OutingEvent[] {
  const gone = new Set<EventId>();
  for (const event of events) if (event.kind === 'undone') gone.add(event.data.target);
  return gone.size === 0
    ? events
    : events.filter((event) => event.kind !== 'undone' && !gone.has(event.id));
}

/**
 * The newest tap that can be taken back, newest event first; empty if there is
 * none. One tap may have written several events: they carry the same instant.
 * A cue that came late is the app's own remark, not a tap.
 */
export function lastTap(events: readonly OutingEvent[]): readonly OutingEvent[] {
  const taps = standing(events).filter((event) => event.kind !== 'cue-late');
  const newest = taps.at(-1);
  if (!newest || newest.kind === 'outing-started') return [];
  const tap: OutingEvent[] = [];
  for (let index = taps.length - 1; index >= 0; index -= 1) {
    const event = taps[index];
    if (!event || !sameTap(event, newest)) break;
    tap.push(event);
  }
  return tap;
}

const sameTap = (a: OutingEvent, b: OutingEvent): boolean =>
  a.writer === b.writer &&
  a.session === b.session &&
  a.monoMs === b.monoMs &&
  a.wallMs === b.wallMs &&
  a.kind !== 'outing-started';
