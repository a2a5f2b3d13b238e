import { afterEach, describe, expect, it, vi } from 'vitest';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { countingIds } from '../../test/contract/fakes/ids.ts';
import { FakeLockManager } from '../../test/contract/fakes/lockManager.ts';
import { tiedTalk } from '../../test/contract/fakes/windowTalk.ts';
import type { Cues } from '../device/cues.ts';
import { browserLocks, type WindowTalk } from '../device/locks.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { OutingEvent } from '../outing/events.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import type { Store } from '../store/contract.ts';
import { StoreFailure } from '../store/fault.ts';
import { memoryStore } from '../store/memory.ts';
import { spoken } from '../ui/words/spoken.en.ts';
import { eventReader } from './eventReader.ts';
import { createRunDesk, type RunDesk } from './run.ts';

/*
 * Two windows of one phone: one database, one lock manager, and a channel between them. The journal
 * is compared event by event: each number once, none left out.
 */

const PLAN = practicePlan();
const silentCues: Cues = {
  sound: 'ready',
  vibrates: false,
  voices: [],
  onVoices: () => () => undefined,
  onSound: () => () => undefined,
  choose: () => undefined,
  unlock: () => undefined,
  schedule: () => undefined,
  cancel: () => undefined,
  onLate: () => () => undefined,
  try: async () => 'done',
};

class Phone {
  readonly ids = countingIds('id');
  readonly database = memoryStore({ makeId: this.ids.make, reader: eventReader });
  readonly manager = new FakeLockManager();
  private readonly clock = new FakeClock();

  /** Opens a window; `faults` is what its own connection does. */
  async open(talk: WindowTalk | null, faults: Partial<Store> = {}): Promise<RunDesk> {
    const store: Store = { ...this.database, ...faults };
    const desk = createRunDesk({
      store,
      writer: await store.writer(),
      clock: this.clock,
      newId: this.ids.make,
      ticker: { start: () => () => undefined },
      wakeLock: {
        state: 'held',
        take: async () => undefined,
        release: async () => undefined,
        onChange: () => () => undefined,
      },
      locks: browserLocks(this.manager, talk),
      cues: silentCues,
      spoken: () => spoken,
      siteOf: () => null,
      skyOver: () => Promise.reject(new Error('no site, no sky')),
    });
    await desk.resume(await store.outings());
    return desk;
  }

  async journal(): Promise<readonly OutingEvent[]> {
    const [outing] = await this.database.outings();
    return outing === undefined ? [] : this.database.events(outing.outing);
  }
}

const note = (text: string) => ({ tap: 'note', text, made: null }) as const;
const notes = (events: readonly OutingEvent[] | undefined): string[] =>
  (events ?? []).flatMap((event) => (event.kind === 'noted' ? [event.data.text] : []));

async function neverForked(phone: Phone, ...texts: string[]): Promise<void> {
  const events = await phone.journal();
  expect(events.map(({ seq }) => seq)).toEqual(events.map((_, at) => at + 1));
  expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
  expect(notes(events)).toEqual(texts);
}

/** Later than an answer that waits for nothing. */
const settled = () => new Promise((done) => setTimeout(done, 5, 'waits'));

/** One window runs an outing, another has come to watch it. */
async function twoWindows(faultsOf: (phone: Phone) => Partial<Store> = () => ({})) {
  const phone = new Phone();
  const [here, there] = tiedTalk();
  const first = await phone.open(here, faultsOf(phone));
  expect(await first.start(PLAN, PRACTICE_GEAR)).toEqual({ how: 'started' });
  const second = await phone.open(there);
  expect(second.ownership.value).toBe('elsewhere');
  return { phone, first, second };
}

afterEach(() => {
  vi.useRealTimers();
});

describe('a second window', () => {
  it('watches what the first one records, and can write nothing', async () => {
    const { phone, first, second } = await twoWindows();
    await first.tap(note('one'));
    await vi.waitFor(() => expect(notes(second.journal.value?.events.value)).toEqual(['one']));
    expect(await second.tap(note('beside'))).toMatchObject({ rule: 'runs-elsewhere' });
    expect(await second.undo()).toMatchObject({ rule: 'runs-elsewhere' });
    expect(await second.saveAgain()).toMatchObject({ rule: 'runs-elsewhere' });
    await neverForked(phone, 'one');
  });

  it('that was open before learns of an outing that begins elsewhere, and begins none beside it', async () => {
    const phone = new Phone();
    const [here, there] = tiedTalk();
    const first = await phone.open(here);
    const second = await phone.open(there);
    await first.start(PLAN, PRACTICE_GEAR);
    await vi.waitFor(() => expect(second.underWay.value).toBe(true));
    expect(second.ownership.value).toBe('elsewhere');
    const deaf = await phone.open(null);
    deaf.leave();
    expect(await deaf.start(PLAN, PRACTICE_GEAR)).toEqual({ how: 'another-runs' });
    expect(deaf.ownership.value).toBe('elsewhere');
    expect(await phone.database.outings()).toHaveLength(1);
  });
});

describe('taking over', () => {
  it('the first finishes every tap it took, gives up, turns read-only and says so', async () => {
    const { phone, first, second } = await twoWindows();
    const last = [first.tap(note('one')), first.tap(note('two'))];
    await second.takeOver();
    expect(await Promise.all(last)).toEqual([{ how: 'recorded' }, { how: 'recorded' }]);
    expect([first.ownership.value, first.handOver.value]).toEqual(['elsewhere', 'given']);
    expect([second.ownership.value, second.handOver.value]).toEqual(['owner', 'taken']);
    expect(notes(second.journal.value?.events.value)).toEqual(['one', 'two']);
    expect(await first.tap(note('beside'))).toMatchObject({ rule: 'runs-elsewhere' });
    expect(await second.tap(note('three'))).toEqual({ how: 'recorded' });
    await neverForked(phone, 'one', 'two', 'three');
    await vi.waitFor(() => expect(notes(first.journal.value?.events.value)).toContain('three'));
  });

  it('takes no further tap while the last one is still being written', async () => {
    let complete: () => void = () => undefined;
    let slow = false;
    const { phone, first, second } = await twoWindows(({ database }) => ({
      append: async (events) => {
        if (slow) await new Promise<void>((done) => (complete = done));
        await database.append(events);
      },
    }));
    slow = true;
    const last = first.tap(note('last'));
    const taking = second.takeOver();
    // The question reaches the first window.
    await settled();
    expect(await Promise.race([first.tap(note('too late')), settled()])).toMatchObject({
      rule: 'runs-elsewhere',
    });
    expect(second.ownership.value).toBe('elsewhere');
    complete();
    expect(await last).toEqual({ how: 'recorded' });
    await taking;
    expect(second.ownership.value).toBe('owner');
    await neverForked(phone, 'last');
  });

  it('goes back and forth', async () => {
    const { phone, first, second } = await twoWindows();
    const texts: string[] = [];
    for (const [turn, desk] of [second, first, second, first].entries()) {
      await desk.takeOver();
      expect(await desk.tap(note(`turn ${turn}`))).toEqual({ how: 'recorded' });
      texts.push(`turn ${turn}`);
    }
    await neverForked(phone, ...texts);
  });

  it('a window that holds what is not saved keeps the outing until it is', async () => {
    let full = false;
    const { phone, first, second } = await twoWindows(({ database }) => ({
      append: async (events) => {
        if (full) throw new StoreFailure('full', 'by the test');
        await database.append(events);
      },
    }));
    full = true;
    expect(await first.tap(note('held'))).toMatchObject({ how: 'not-saved' });
    await second.takeOver();
    expect([second.ownership.value, second.handOver.value]).toEqual(['elsewhere', 'kept']);
    expect([first.ownership.value, first.handOver.value]).toEqual(['owner', 'none']);
    full = false;
    // Asking again makes it try again.
    await second.takeOver();
    expect(second.handOver.value).toBe('taken');
    await neverForked(phone, 'held');
  });

  it('from a frozen window it is stolen; what that one wrote late stands, and nobody writes over it', async () => {
    vi.useFakeTimers();
    const phone = new Phone();
    let frozen: (() => void) | null = null;
    let freezes = false;
    const first = await phone.open(null, {
      append: async (events) => {
        if (freezes) await new Promise<void>((thaw) => (frozen = thaw));
        await phone.database.append(events);
      },
    });
    await first.start(PLAN, PRACTICE_GEAR);
    const second = await phone.open(null);
    freezes = true;
    const late = first.tap(note('late'));
    await vi.advanceTimersByTimeAsync(1);
    const taking = second.takeOver();
    expect(second.handOver.value).toBe('asking');
    await vi.advanceTimersByTimeAsync(3000);
    await taking;
    expect([second.ownership.value, second.handOver.value]).toEqual(['owner', 'stolen']);
    expect([first.ownership.value, first.handOver.value]).toEqual(['elsewhere', 'given']);
    // Its write had begun before it lost the outing, and ends now.
    (frozen as (() => void) | null)?.();
    expect(await late).toEqual({ how: 'recorded' });
    expect(await second.tap(note('after'))).toEqual({ how: 'recorded' });
    await neverForked(phone, 'late', 'after');
    expect(await first.tap(note('beside'))).toMatchObject({ rule: 'runs-elsewhere' });
  });

  it('a thief that writes first keeps its place, and the late one stays in memory, said to be', async () => {
    vi.useFakeTimers();
    const phone = new Phone();
    let thaw: (() => void) | null = null;
    let freezes = false;
    const first = await phone.open(null, {
      append: async (events) => {
        if (freezes) await new Promise<void>((done) => (thaw = done));
        await phone.database.append(events);
      },
    });
    await first.start(PLAN, PRACTICE_GEAR);
    const second = await phone.open(null);
    freezes = true;
    const late = first.tap(note('late'));
    await vi.advanceTimersByTimeAsync(1);
    const taking = second.takeOver();
    await vi.advanceTimersByTimeAsync(3000);
    await taking;
    expect(await second.tap(note('thief'))).toEqual({ how: 'recorded' });
    (thaw as (() => void) | null)?.();
    expect(await late).toMatchObject({ how: 'not-saved', fault: { kind: 'refused' } });
    expect(notes(first.journal.value?.unsaved.value)).toEqual(['late']);
    await neverForked(phone, 'thief');
    // Whoever takes it back brings what was held along, behind what came in between.
    freezes = false;
    const back = first.takeOver();
    await vi.advanceTimersByTimeAsync(3000);
    await back;
    expect(await first.saveAgain()).toEqual({ how: 'recorded' });
    await neverForked(phone, 'thief', 'late');
  });

  it('from a window that is gone needs no theft', async () => {
    const { phone, first, second } = await twoWindows();
    await first.tap(note('one'));
    // A closed window lets its locks go.
    first.leave();
    await second.takeOver();
    expect(second.handOver.value).toBe('taken');
    await neverForked(phone, 'one');
  });

  it('is given back where the journal cannot be read', async () => {
    const phone = new Phone();
    const [here, there] = tiedTalk();
    const first = await phone.open(here);
    await first.start(PLAN, PRACTICE_GEAR);
    let broken = false;
    const second = await phone.open(there, {
      events: async (outing) => {
        if (broken) throw new StoreFailure('closed', 'by the test');
        return phone.database.events(outing);
      },
    });
    broken = true;
    await second.takeOver();
    expect([second.ownership.value, second.handOver.value]).toEqual(['elsewhere', 'unread']);
    await first.takeOver();
    expect([first.ownership.value, first.handOver.value]).toEqual(['owner', 'taken']);
  });
});
