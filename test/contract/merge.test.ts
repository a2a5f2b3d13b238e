import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eventReader } from '../../src/app/eventReader.ts';
import { readAnyFile } from '../../src/exchange/anyFile.ts';
import { journalFile } from '../../src/exchange/journalFile.ts';
import { journalOf } from '../../src/exchange/journalOf.ts';
import { isFault } from '../../src/gear/read.ts';
import type { OutingEvent } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import { inOrder } from '../../src/outing/sequence.ts';
import { memoryStore } from '../../src/store/memory.ts';
import { EVERY_EVENT } from '../arbitraries/events.ts';
import { A, Evening, twoSets } from '../evenings/evening.ts';

/*
 * Two phones at one outing: each has a journal that the other has not, and what they restore from
 * one another is a union by event id. Held at the store that takes the events and at the file that
 * carries them.
 */

/** One outing in which a second phone wrote as well: its events lie between the first one's. */
function twoPhones(): readonly OutingEvent[] {
  const first = new Evening(twoSets()).setUp().shoot();
  const [started] = first.events;
  const made = first.state().made[0]?.id;
  if (!started || !made) throw new Error('an outing');
  const other = EVERY_EVENT.filter(({ kind }) =>
    ['clock-framed', 'files-matched', 'values-taken', 'evened-up', 'noted'].includes(kind),
  ).map(
    (event, place): OutingEvent =>
      ({
        ...event,
        id: `other-${place}`,
        outing: started.outing,
        writer: 'other-phone',
        seq: place + 1,
        wallMs: started.wallMs + 1_500 + 4_000 * place,
      }) as OutingEvent,
  );
  first.tap({ tap: 'note', text: 'fog', made: null }).tap({ tap: 'extra-shot', rig: A });
  return [...first.events, ...other];
}

const EVENTS = twoPhones();
const some = fc.subarray([...EVENTS]);

async function taken(...parts: readonly (readonly OutingEvent[])[]) {
  const store = memoryStore({ makeId: () => 'writer', reader: eventReader });
  for (const events of parts) {
    await store.restore({
      gear: [],
      plans: [],
      sites: [],
      events,
      tombstones: [],
    });
  }
  const [first] = EVENTS;
  return first ? inOrder(await store.events(first.outing)) : [];
}
const ids = (events: readonly OutingEvent[]) => events.map(({ id }) => id);

describe('restoring what another phone has', () => {
  it('really interleaves two writers in the fixture', () => {
    const writers = inOrder(EVENTS).map(({ writer }) => writer);
    const turns = writers.filter((writer, i) => i > 0 && writer !== writers[i - 1]).length;
    expect(turns).toBeGreaterThan(2);
  });

  it('comes to the same in any order', async () => {
    await fc.assert(
      fc.asyncProperty(some, some, async (one, two) => {
        expect(await taken(one, two)).toEqual(await taken(two, one));
      }),
      { numRuns: 60 },
    );
  });

  it('comes to the same however it is grouped', async () => {
    await fc.assert(
      fc.asyncProperty(some, some, some, async (one, two, three) => {
        const left = await taken(await taken(one, two), three);
        expect(left).toEqual(await taken(one, await taken(two, three)));
        expect(new Set(ids(left))).toEqual(new Set(ids([...one, ...two, ...three])));
      }),
      { numRuns: 60 },
    );
  });

  it('changes nothing the second time', async () => {
    await fc.assert(
      fc.asyncProperty(some, some, async (one, two) => {
        expect(await taken(one, two, one, two, one)).toEqual(await taken(one, two));
      }),
      { numRuns: 60 },
    );
  });

  it('folds to one state on both phones, through their files', async () => {
    const [first] = EVENTS;
    if (!first) throw new Error('an event');
    const through = (events: readonly OutingEvent[]): readonly OutingEvent[] => {
      const text = journalFile.write(journalOf(first.outing, events), {
        app: 'test',
        written: '2027-02-12T21:00:00.000Z',
      });
      const read = readAnyFile(text);
      if (isFault(read)) throw new Error(JSON.stringify(read));
      return read.content.events;
    };
    const mine = EVENTS.filter(({ writer }) => writer !== 'other-phone');
    const theirs = [first, ...EVENTS.filter(({ writer }) => writer === 'other-phone')];
    const here = await taken(mine, through(theirs));
    const there = await taken(theirs, through(mine));
    expect(here).toEqual(there);
    expect(fold(here)).toEqual(fold(there));
    expect(fold(here)?.evenedUp.length).toBeGreaterThan(0);
    expect(fold(here)?.made.length).toBe(1);
  });
});
