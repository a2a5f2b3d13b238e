import fc, { type Arbitrary } from 'fast-check';
import { bodyFrom1, planFrom1 } from '../../src/exchange/older.ts';
import { upcast } from '../../src/exchange/upcast.ts';
import { EVENT_VERSION, type EventOf, type OutingEvent } from '../../src/outing/events.ts';
import type { EventId, OutingId, SessionId, WriterId } from '../../src/outing/ids.ts';
import { inOrder } from '../../src/outing/sequence.ts';
import type { EventReader, StoreOptions } from '../../src/store/contract.ts';

/** How the app reads events. */
export const reader: EventReader = {
  version: EVENT_VERSION,
  upcast: (older) => upcast(older) as OutingEvent,
  inOrder,
};

/** Options with ids that count, so that a second id made by mistake shows. */
export function storeOptions(): StoreOptions {
  let made = 0;
  return {
    makeId: () => {
      made += 1;
      return `installation-${made}`;
    },
    reader,
    older: { bodyFrom1, planFrom1 },
  };
}

/** A note by one writer: the plainest event. */
export function note(place: {
  readonly seq: number;
  readonly outing?: string;
  readonly writer?: string;
  readonly wallMs?: number;
  readonly id?: string;
  readonly text?: string;
}): EventOf<'noted'> {
  const { seq, outing = 'outing-1', writer = 'phone' } = place;
  return {
    id: (place.id ?? `${outing}/${writer}/${seq}`) as EventId,
    outing: outing as OutingId,
    writer: writer as WriterId,
    seq,
    v: EVENT_VERSION,
    kind: 'noted',
    wallMs: place.wallMs ?? 1_000_000 + seq,
    offsetMin: 0,
    zone: 'Etc/UTC',
    monoMs: seq,
    session: 'session-1' as SessionId,
    data: { text: place.text ?? `note ${seq}`, made: null },
  };
}

/** Journals of some writers in some outings, with clocks that jump both ways. */
export const anyJournals: Arbitrary<readonly OutingEvent[]> = fc
  .array(
    fc.record({
      outing: fc.constantFrom('outing-1', 'outing-2', 'outing-10'),
      writer: fc.constantFrom('a', 'b', 'C'),
      clock: fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 1, maxLength: 6 }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((lanes) => {
    const known = new Map<string, OutingEvent[]>();
    for (const { outing, writer, clock } of lanes) {
      const lane = known.get(`${outing}/${writer}`) ?? [];
      known.set(`${outing}/${writer}`, lane);
      for (const wallMs of clock)
        lane.push(note({ outing, writer, seq: lane.length + 1, wallMs: 1_000_000 + wallMs }));
    }
    return [...known.values()].flat();
  });

/** Journals, and parts of them in any order, as files from several phones would bring. */
export const anyParts = (count: number): Arbitrary<readonly (readonly OutingEvent[])[]> =>
  anyJournals.chain((events) =>
    fc.array(fc.shuffledSubarray([...events]), { minLength: count, maxLength: count }),
  );
