import { describe, expect, it } from 'vitest';
import { Evening, twoSets } from '../../test/evenings/evening.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { EventId, WriterId } from '../outing/ids.ts';
import type { StoreFault } from '../store/contract.ts';
import { openJournal } from './journal.ts';

/** A disk whose writes complete, or fail, only when the test says so. */
class SlowDisk {
  readonly written: OutingEvent[] = [];
  /** What lies here before, and what another window wrote. */
  readonly others: OutingEvent[] = [];
  readonly taps: (readonly OutingEvent[])[] = [];
  private readonly waiting: { complete: () => void; fail: (fault: StoreFault) => void }[] = [];

  append(events: readonly OutingEvent[]): Promise<void> {
    this.taps.push(events);
    return new Promise((resolve, reject) => {
      this.waiting.push({
        complete: () => {
          this.written.push(...events);
          resolve();
        },
        fail: reject,
      });
    });
  }

  async events(): Promise<readonly OutingEvent[]> {
    return [...this.others, ...this.written];
  }

  async complete(): Promise<void> {
    await settle();
    this.waiting.shift()?.complete();
    await settle();
  }

  async fail(kind: StoreFault['kind']): Promise<void> {
    await settle();
    this.waiting.shift()?.fail({ kind, detail: 'made by the test' });
    await settle();
  }
}

const settle = () => new Promise((done) => setTimeout(done, 0));

function open(evening = new Evening(twoSets()).setUp()) {
  const disk = new SlowDisk();
  disk.others.push(...evening.events);
  const may = { write: true };
  let ids = 0;
  const journal = openJournal(evening.outing, evening.events, {
    store: disk,
    writer: 'phone' as WriterId,
    now: () => evening.now(),
    newId: () => {
      ids += 1;
      return `new-${ids}` as EventId;
    },
    mayWrite: () => may.write,
  });
  return { disk, journal, evening, may };
}

const note = (text: string) => ({ tap: 'note', text, made: null }) as const;

describe('a tap', () => {
  it('does not move the state before its transaction is complete', async () => {
    const { disk, journal } = open();
    const served = journal.tap({
      tap: 'mounted',
      frame: journal.state.value.queue[0]?.key as never,
    });
    await settle();
    expect(journal.writing.value).toBe(true);
    expect(journal.state.value.mounted).toEqual([]);
    await disk.complete();
    expect(await served).toEqual({ how: 'recorded' });
    expect(journal.writing.value).toBe(false);
    expect(journal.state.value.mounted).toHaveLength(1);
  });

  it('waits for the one before it and is judged by the state that it leaves', async () => {
    const { disk, journal, evening } = open();
    const frame = evening.state().queue[0]?.key as never;
    const first = journal.tap({ tap: 'mounted', frame });
    const bounce = journal.tap({ tap: 'mounted', frame });
    const other = journal.tap(note('wind'));
    await disk.complete();
    expect(await first).toEqual({ how: 'recorded' });
    expect(await bounce).toEqual({ how: 'refused', rule: 'not-mounting' });
    await disk.complete();
    expect(await other).toEqual({ how: 'recorded' });
    expect(disk.written.map(({ kind }) => kind)).toEqual(['mounted', 'noted']);
  });

  it('writes nothing when it makes no sense now', async () => {
    const { disk, journal } = open();
    expect(
      await journal.tap({ tap: 'dialled', frame: journal.state.value.queue[0]?.key as never }),
    ).toEqual({ how: 'refused', rule: 'not-dialling' });
    expect(disk.taps).toEqual([]);
  });

  it('counts on without gaps, a tap of several events included', async () => {
    const { disk, journal, evening } = open();
    const before = evening.events.length;
    for (const text of ['one', 'two']) {
      const served = journal.tap(note(text));
      await disk.complete();
      await served;
    }
    expect(disk.written.map(({ seq }) => seq)).toEqual([before + 1, before + 2]);
  });
});

describe('a disk that refuses', () => {
  it('leaves the tap unacknowledged, keeps it in memory and lets the run go on', async () => {
    const { disk, journal } = open();
    const served = journal.tap({
      tap: 'mounted',
      frame: journal.state.value.queue[0]?.key as never,
    });
    await disk.fail('full');
    expect(await served).toMatchObject({ how: 'not-saved', fault: { kind: 'full' } });
    expect(journal.state.value.mounted).toHaveLength(1);
    expect(journal.unsaved.value).toHaveLength(1);
    expect(journal.fault.value?.kind).toBe('full');
  });

  it('gets what was held back first, in order, one transaction a tap', async () => {
    const { disk, journal } = open();
    const first = journal.tap(note('one'));
    await disk.fail('full');
    await first;
    const second = journal.tap(note('two'));
    await disk.complete();
    await disk.complete();
    expect(await second).toEqual({ how: 'recorded' });
    expect(disk.taps.map((tap) => tap.length)).toEqual([1, 1, 1]);
    expect(disk.written.map(({ data }) => (data as { text: string }).text)).toEqual(['one', 'two']);
    expect(journal.unsaved.value).toEqual([]);
    expect(journal.fault.value).toBeNull();
  });

  it('may be asked again, and a retry never writes a second event', async () => {
    const { disk, journal } = open();
    const first = journal.tap(note('one'));
    await disk.fail('closed');
    await first;
    const again = journal.retry();
    await disk.complete();
    expect(await again).toEqual({ how: 'recorded' });
    expect(disk.taps[0]).toEqual(disk.taps[1]);
    expect(journal.events.value.filter(({ kind }) => kind === 'noted')).toHaveLength(1);
  });

  it('does not swallow what is our own mistake', async () => {
    const { journal } = open();
    const broken = openJournal(journal.outing, journal.events.value, {
      store: { append: () => Promise.reject(new TypeError('ours')), events: async () => [] },
      writer: 'phone' as WriterId,
      now: () => new Evening(twoSets()).now(),
      newId: () => 'x' as EventId,
    });
    await expect(broken.tap(note('one'))).rejects.toThrow('ours');
  });
});

/** An event that another window of this phone wrote at the next place. */
function foreign({ events }: Evening, text: string, further = 1): OutingEvent {
  const last = events.at(-1);
  if (!last) throw new Error('the evening is empty');
  return {
    ...last,
    id: `other-${text}` as EventId,
    seq: last.seq + further,
    kind: 'noted',
    data: { text, made: null },
  };
}

const texts = (events: readonly OutingEvent[]): string[] =>
  events.flatMap((event) => (event.kind === 'noted' ? [event.data.text] : []));

describe('two windows', () => {
  it('a tap whose place is taken by another window stands after it; the journal never forks', async () => {
    const { disk, journal, evening } = open();
    disk.others.push(foreign(evening, 'theirs'));
    const served = journal.tap(note('ours'));
    await disk.fail('refused');
    await disk.complete();
    expect(await served).toEqual({ how: 'recorded' });
    expect(texts(journal.events.value)).toEqual(['theirs', 'ours']);
    const seqs = journal.events.value.map(({ seq }) => seq);
    expect(seqs).toEqual(seqs.map((_, at) => at + 1));
    expect(disk.written.map(({ seq }) => seq)).toEqual([evening.events.length + 2]);
    expect(journal.unsaved.value).toEqual([]);
  });

  it('so do taps that were held in memory, in their order', async () => {
    const { disk, journal, evening } = open();
    const first = journal.tap(note('one'));
    await disk.fail('full');
    await first;
    disk.others.push(foreign(evening, 'theirs'), foreign(evening, 'theirs too', 2));
    const second = journal.tap(note('two'));
    await disk.fail('refused');
    await disk.complete();
    await disk.complete();
    expect(await second).toEqual({ how: 'recorded' });
    expect(texts(journal.events.value)).toEqual(['theirs', 'theirs too', 'one', 'two']);
    expect(journal.unsaved.value).toEqual([]);
  });

  it('a refusal that no other window explains stays one, and nothing is tried without end', async () => {
    const { disk, journal } = open();
    const served = journal.tap(note('ours'));
    await disk.fail('refused');
    expect(await served).toMatchObject({ how: 'not-saved', fault: { kind: 'refused' } });
    expect(disk.taps).toHaveLength(1);
    expect(texts(journal.unsaved.value)).toEqual(['ours']);
  });

  it('a window that has lost the outing writes nothing more, not even what it still holds', async () => {
    const { disk, journal, may } = open();
    const first = journal.tap(note('one'));
    await disk.fail('full');
    await first;
    may.write = false;
    expect(await journal.retry()).toMatchObject({ how: 'not-saved', fault: { kind: 'refused' } });
    expect(await journal.tap(note('two'))).toMatchObject({ how: 'not-saved' });
    expect(disk.taps).toHaveLength(1);
    expect(texts(journal.unsaved.value)).toEqual(['one', 'two']);
  });

  it('a window that watches takes in what was written, and nothing twice', async () => {
    const { disk, journal, evening } = open();
    disk.others.push(foreign(evening, 'theirs'));
    await journal.refresh();
    await journal.refresh();
    expect(texts(journal.events.value)).toEqual(['theirs']);
    expect(journal.events.value).toHaveLength(evening.events.length + 1);
  });

  it('no screen ever sees a tap twice while it goes from memory to disk', async () => {
    const { disk, journal } = open();
    const seen: number[] = [];
    const stop = journal.events.subscribe((events) => {
      seen.push(events.length - new Set(events.map(({ id }) => id)).size);
    });
    const first = journal.tap(note('one'));
    await disk.fail('full');
    await first;
    const again = journal.retry();
    await disk.complete();
    await again;
    stop();
    expect(seen.length).toBeGreaterThan(2);
    expect(new Set(seen)).toEqual(new Set([0]));
  });
});

describe('undo', () => {
  it('is an event of its own; nothing is taken out of the journal', async () => {
    const { disk, journal, evening } = open();
    const served = journal.undo();
    await disk.complete();
    await served;
    expect(journal.events.value).toHaveLength(evening.events.length + 1);
    expect(disk.written[0]?.kind).toBe('undone');
    expect(journal.state.value.phase).toBe('setting-up');
  });
});
