import { computed, signal } from '@preact/signals';
import { beforeEach, describe, expect, it } from 'vitest';
import { countingIds } from '../../test/contract/fakes/ids.ts';
import { A, dialled, Evening, frame, twoSets } from '../../test/evenings/evening.ts';
import type { Ownership } from '../device/locks.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { EventId, OutingId, WriterId } from '../outing/ids.ts';
import type { RunState } from '../outing/state.ts';
import { StoreFailure } from '../store/fault.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { type Journal, openJournal } from './journal.ts';
import { createLogDesk, type LogDesk, type OutingLog } from './log.ts';
import { besidesOf } from './logBesides.ts';
import { figuresOf } from './logFigures.ts';

const writer = 'phone' as WriterId;

/** A phone with a store, a run desk that is told what is in hand, and locks that are told who has them. */
class Phone {
  readonly store = memoryStore({ makeId: () => writer, reader: eventReader });
  readonly ids = countingIds('new');
  readonly read: OutingId[] = [];
  readonly opened: OutingId[] = [];
  owner: Ownership = 'owner';
  full = false;
  /** Whole journals are read only when this has resolved. */
  rest: Promise<void> = Promise.resolve();
  locked = new Set<string>();
  readonly journal = signal<Journal | null>(null);
  readonly desk: LogDesk;
  evening = new Evening([]);

  constructor(version = 'one') {
    const state = computed((): RunState | null => this.journal.value?.state.value ?? null);
    this.desk = createLogDesk({
      store: {
        ...this.store,
        events: async (outing, most) => {
          this.read.push(outing);
          if (most === undefined) await this.rest;
          return this.store.events(outing, most);
        },
        append: async (events) => {
          if (this.full) throw new StoreFailure('full', 'no space');
          await this.store.append(events);
        },
      },
      writer,
      clock: { now: () => this.evening.now() },
      newId: this.ids.make,
      locks: {
        claim: async (outing) => {
          this.locked.add(outing);
          return this.owner;
        },
        release: (outing) => this.locked.delete(outing),
      },
      run: {
        journal: this.journal,
        state,
        ownership: signal(this.owner),
        underWay: computed(() => state.value !== null && state.value.phase !== 'ended'),
        open: async (outing) => {
          this.opened.push(outing);
        },
        leave: () => {
          this.journal.value = null;
        },
      },
      version,
    });
  }

  async keep(evening: Evening): Promise<this> {
    this.evening = evening;
    await this.store.append(evening.events);
    return this;
  }

  async look(outing: OutingId): Promise<OutingLog> {
    this.desk.show(outing);
    await settle();
    return this.log();
  }

  log(): OutingLog {
    const opened = this.desk.opened.value;
    if (opened?.how !== 'open') throw new Error(`not open: ${opened?.how}`);
    return opened.log;
  }

  /** As the run desk would open it. */
  inHand(evening: Evening): Journal {
    this.journal.value = openJournal(evening.outing, evening.events, {
      store: this.store,
      writer,
      now: () => evening.now(),
      newId: () => this.ids.make() as EventId,
    });
    return this.journal.value;
  }
}

const settle = () => new Promise((done) => setTimeout(done, 0));

const walked = () => new Evening(twoSets()).setUp().shootAll();
const ended = () => walked().tap({ tap: 'end' });

/** The same evening under another name and hour. */
function another(evening: Evening, outing: string, hours: number): readonly OutingEvent[] {
  return evening.events.map((event) => ({
    ...event,
    id: `${outing}-${event.id}` as EventId,
    outing: outing as OutingId,
    wallMs: event.wallMs + hours * 3_600_000,
  }));
}

let phone: Phone;
beforeEach(() => {
  phone = new Phone();
});

describe('the list of outings', () => {
  it('is empty on a new phone', async () => {
    expect(phone.desk.outings.value).toBeNull();
    await phone.desk.refresh();
    expect(phone.desk.outings.value).toEqual([]);
  });

  it('tells name, day, frames and end, the newest first', async () => {
    await phone.keep(ended());
    await phone.store.append(another(walked(), 'later', 24));
    await phone.desk.refresh();
    const begun = { wallMs: Date.UTC(2027, 1, 12, 17, 30), offsetMin: 0 };
    expect(phone.desk.outings.value).toMatchObject([
      { outing: 'later', name: 'Evening for tests', frames: 4, ended: null, invented: true },
      { outing: 'outing-1', begun, frames: 4, ended: { offsetMin: 0 } },
    ]);
  });

  it('reads only the journals that have changed, and is the same without what it kept', async () => {
    await phone.keep(ended());
    await phone.store.append(another(ended(), 'other', 24));
    await phone.desk.refresh();
    const before = phone.desk.outings.value;
    expect(phone.read).toHaveLength(2);
    await phone.desk.refresh();
    expect(phone.read).toHaveLength(2);
    const evening = phone.evening.tap({ tap: 'note', text: 'fog', made: null });
    await phone.store.append(evening.events);
    await phone.desk.refresh();
    expect(phone.read.slice(2)).toEqual(['outing-1']);
    expect(phone.desk.outings.value).toEqual(before);
    await phone.store.putSetting('outing-lines', 'damaged');
    await phone.desk.refresh();
    expect(phone.read).toHaveLength(5);
    expect(phone.desk.outings.value).toEqual(before);
  });

  it('works the lines of another version of the app out again', async () => {
    await phone.keep(ended());
    const stale = { outing: 'outing-1', name: 'stale', invented: false, frames: 99 };
    const summary = (await phone.store.outings())[0];
    await phone.store.putSetting('outing-lines', {
      version: 'zero',
      lines: { 'outing-1': { ...summary, line: stale } },
    });
    await phone.desk.refresh();
    expect(phone.desk.outings.value).toMatchObject([{ name: 'Evening for tests', frames: 4 }]);
  });

  it('says why it cannot be read', async () => {
    phone.store.close();
    await phone.desk.refresh();
    expect(phone.desk.fault.value).toMatchObject({ kind: 'closed' });
  });

  it('counts the frames of the outing in hand as they are made', async () => {
    const evening = new Evening([
      ...twoSets(),
      frame('short', A, dialled('8', '0.5', '100'), { visit: 3 }),
    ]).setUp();
    await phone.keep(evening);
    await phone.desk.refresh();
    expect(phone.desk.outings.value).toMatchObject([{ frames: 0 }]);
    phone.inHand(evening.shoot());
    expect(phone.desk.outings.value).toMatchObject([{ frames: 1 }]);
  });
});

describe('an outing that is opened', () => {
  it('gives frames, lines and ledgers', async () => {
    await phone.keep(ended());
    const log = await phone.look(phone.evening.outing);
    expect(log.frames.value).toHaveLength(4);
    expect(log.entries.value).toHaveLength(4);
    const [base] = figuresOf(log).ledgers.value;
    // f/6.3 64 s against f/8 60 s: 0.67 + 0.09 stop.
    expect(base?.mean?.sum.stops).toBeCloseTo(-0.76, 2);
    expect(base && besidesOf(log, base)).toMatchObject({ pass: 1 });
  });

  it('is reading first, and missing if there is none', async () => {
    phone.desk.show('nowhere' as OutingId);
    expect(phone.desk.opened.value).toEqual({ how: 'reading' });
    await settle();
    expect(phone.desk.opened.value).toEqual({ how: 'missing' });
    phone.desk.show(null);
    expect(phone.desk.opened.value).toBeNull();
  });

  it('says why it could not be read, and reads again when asked', async () => {
    await phone.keep(ended());
    const { events } = phone.store;
    phone.store.events = async () => {
      throw new StoreFailure('timeout', 'no answer');
    };
    phone.desk.show(phone.evening.outing);
    await settle();
    expect(phone.desk.opened.value).toMatchObject({ how: 'failed', fault: { kind: 'timeout' } });
    phone.store.events = events;
    phone.desk.reread();
    await settle();
    expect(phone.log().frames.value).toHaveLength(4);
  });

  it('takes corrections as events, and keeps what was first logged', async () => {
    await phone.keep(ended());
    const log = await phone.look(phone.evening.outing);
    const made = log.frames.value[0]?.id as EventId;
    const change = { field: 'isoMark', value: '200' } as const;
    expect(await phone.desk.tap({ tap: 'correct', made, change })).toEqual({ how: 'recorded' });
    expect(log.frames.value[0]).toMatchObject({
      settings: { isoMark: '200' },
      firstSettings: { isoMark: '100' },
      asPlanned: false,
    });
    // One stop less between the pair: the reference rendered a stop brighter than planned.
    expect(figuresOf(log).ledgers.value[0]?.mean?.sum.stops).toBeCloseTo(-1.76, 2);
    const stored = await phone.store.events(phone.evening.outing);
    expect(stored.at(-1)).toMatchObject({ kind: 'corrected', writer });
  });

  it('takes back only what is said of the past', async () => {
    await phone.keep(ended());
    const log = await phone.look(phone.evening.outing);
    expect(phone.desk.undoable.value).toBeNull();
    expect(await phone.desk.undo()).toMatchObject({ how: 'refused' });
    const made = log.frames.value[2]?.id as EventId;
    await phone.desk.tap({ tap: 'discard', made });
    expect(log.frames.value[2]).toMatchObject({ discarded: true, counts: false });
    expect(phone.desk.undoable.value).toEqual({ kind: 'discarded', made });
    await phone.desk.undo();
    expect(log.frames.value[2]).toMatchObject({ discarded: false, counts: true });
    expect(phone.desk.undoable.value).toBeNull();
    expect(log.journal.state.value.phase).toBe('ended');
  });

  it('is the journal in hand where there is one, and what became of it when it is put aside', async () => {
    await phone.keep(walked());
    const mine = await phone.look(phone.evening.outing);
    const journal = phone.inHand(phone.evening);
    expect(phone.log().journal).toBe(journal);
    await phone.desk.tap({ tap: 'note', text: 'said in the log', made: null });
    await journal.tap({ tap: 'end' });
    expect(journal.state.value.notes).toHaveLength(1);
    phone.journal.value = null;
    await settle();
    expect(phone.log().journal).not.toBe(journal);
    expect(phone.log().journal).not.toBe(mine.journal);
    expect(phone.log().journal.state.value).toMatchObject({
      phase: 'ended',
      notes: [{ text: 'said in the log' }],
    });
  });

  it('can only be read while another window has it', async () => {
    phone.owner = 'elsewhere';
    await phone.keep(ended());
    const log = await phone.look(phone.evening.outing);
    expect(phone.desk.opened.value).toMatchObject({ access: 'elsewhere' });
    const answer = await phone.desk.tap({ tap: 'note', text: 'fog', made: null });
    expect(answer).toEqual({ how: 'refused', rule: 'read-only' });
    expect(log.journal.state.value.notes).toEqual([]);
  });

  it('that is long shows its beginning while the rest is read, and takes nothing until then', async () => {
    const frames = Array.from({ length: 64 }, (_, index) =>
      frame('base', A, dialled('8', '0.5', '100'), { repeat: index + 1 }),
    );
    const evening = new Evening(frames).setUp().shootAll();
    const made = evening.state().made[0]?.id as EventId;
    for (let again = 0; evening.events.length < 450; again += 1) {
      evening.tap({ tap: 'note', text: `note ${again}`, made });
    }
    await phone.keep(evening);
    let goOn = () => {};
    phone.rest = new Promise((done) => {
      goOn = done;
    });
    const beginning = await phone.look(evening.outing);
    expect(phone.desk.opened.value).toMatchObject({ access: 'beginning' });
    expect(beginning.frames.value[0]?.id).toBe(made);
    const note = { tap: 'note', text: 'too early', made } as const;
    expect(await phone.desk.tap(note)).toMatchObject({ how: 'refused' });
    expect(phone.desk.undoable.value).toBeNull();
    goOn();
    await settle();
    await settle();
    expect(phone.desk.opened.value).toMatchObject({ access: 'full' });
    const notes = evening.state().notes.length;
    expect(phone.log().frames.value[0]?.notes).toHaveLength(notes);
    expect(await phone.desk.tap(note)).toEqual({ how: 'recorded' });
    expect((await phone.store.events(evening.outing)).length).toBe(evening.events.length + 1);
  });

  it('is given up when it is closed', async () => {
    await phone.keep(ended());
    await phone.look(phone.evening.outing);
    expect([...phone.locked]).toEqual(['outing-1']);
    phone.desk.show(null);
    expect([...phone.locked]).toEqual([]);
  });

  it('keeps what the disk refused, also over closing it, and goes on only when it is saved', async () => {
    await phone.keep(walked());
    await phone.look(phone.evening.outing);
    phone.full = true;
    const answer = await phone.desk.tap({ tap: 'note', text: 'fog', made: null });
    expect(answer).toMatchObject({ how: 'not-saved', fault: { kind: 'full' } });
    phone.desk.show(null);
    const log = await phone.look(phone.evening.outing);
    expect(log.journal.state.value.notes).toMatchObject([{ text: 'fog' }]);
    expect(await phone.desk.resume(phone.evening.outing)).toBe('not-saved');
    expect((await phone.desk.events(phone.evening.outing)).at(-1)?.kind).toBe('noted');
    phone.full = false;
    await log.journal.retry();
    expect((await phone.store.events(phone.evening.outing)).at(-1)?.kind).toBe('noted');
    expect(await phone.desk.resume(phone.evening.outing)).toBe('resumed');
  });
});

describe('going on with an outing', () => {
  it('takes it in hand', async () => {
    await phone.keep(walked());
    expect(await phone.desk.resume(phone.evening.outing)).toBe('resumed');
    expect(phone.opened).toEqual(['outing-1']);
  });

  it('is refused while another one runs', async () => {
    await phone.keep(walked());
    phone.inHand(phone.evening);
    expect(await phone.desk.resume('other' as OutingId)).toBe('another-runs');
    expect(phone.opened).toEqual([]);
  });
});
