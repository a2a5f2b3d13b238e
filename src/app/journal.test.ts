import { describe, expect, it } from 'vitest';
import { Evening, twoSets } from '../../test/evenings/evening.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { EventId, WriterId } from '../outing/ids.ts';
import type { StoreFault } from '../store/contract.ts';
import { openJournal } from './journal.ts';

/** A disk whose writes complete, or fail, only when the test says so. */
class SlowDisk {
  readonly written: OutingEvent[] = [];
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
  let ids = 0;
  const journal = openJournal(evening.outing, evening.events, {
    store: disk,
    writer: 'phone' as WriterId,
    now: () => evening.now(),
    newId: () => {
      ids += 1;
      return `new-${ids}` as EventId;
    },
  });
  return { disk, journal, evening };
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
      store: { append: () => Promise.reject(new TypeError('ours')) },
      writer: 'phone' as WriterId,
      now: () => new Evening(twoSets()).now(),
      newId: () => 'x' as EventId,
    });
    await expect(broken.tap(note('one'))).rejects.toThrow('ours');
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
