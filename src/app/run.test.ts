import { describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { EventId, SessionId, WriterId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import type { Store, StoreFault } from '../store/contract.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createRunDesk, type RunWorld } from './run.ts';

const PRACTICE_PLAN = practicePlan();

/** A phone whose clock moves by hand and whose services do nothing but count. */
class Phone {
  wallMs = Date.UTC(2027, 1, 12, 17, 30);
  monoMs = 1000;
  sessions = 0;
  kept: 'on' | 'off' = 'off';
  scheduled = new Map<string, readonly { kind: string; dueMs: number }[]>();
  private ids = 0;
  readonly closed = new Set<(fault: StoreFault) => void>();
  /** What `merge` finds missing; a memory store loses nothing by itself. */
  lost = 0;
  readonly store: Store = {
    ...memoryStore({ makeId: () => this.id(), reader: eventReader }),
    merge: async () => this.lost,
    onClosed: (listener) => {
      this.closed.add(listener);
      return () => this.closed.delete(listener);
    },
  };

  private id(): string {
    this.ids += 1;
    return `id-${this.ids}`;
  }

  pass(s: number): void {
    this.wallMs += s * 1000;
    this.monoMs += s * 1000;
  }

  /** The page is loaded anew after `s` seconds. */
  async load(s = 0) {
    this.wallMs += s * 1000;
    this.monoMs = 300;
    this.sessions += 1;
    this.scheduled.clear();
    const session = `session-${this.sessions}` as SessionId;
    const world: RunWorld = {
      store: this.store,
      writer: (await this.store.writer()) as WriterId,
      clock: {
        now: (): Instant => ({
          wallMs: this.wallMs,
          offsetMin: 0,
          zone: 'Etc/UTC',
          monoMs: this.monoMs,
          session,
        }),
      },
      newId: () => this.id() as EventId,
      ticker: { start: () => () => undefined },
      wakeLock: {
        state: 'not-held',
        take: async () => {
          this.kept = 'on';
        },
        release: async () => {
          this.kept = 'off';
        },
        onChange: () => () => undefined,
      },
      locks: {
        claim: async () => 'owner',
        release: () => undefined,
        takeOver: async () => 'owner',
      },
      cues: {
        sound: 'ready',
        onSound: () => () => undefined,
        choose: () => undefined,
        unlock: () => undefined,
        schedule: (exposure, cues) => this.scheduled.set(exposure, cues),
        cancel: (exposure) => this.scheduled.delete(exposure),
        onLate: () => () => undefined,
        try: async () => 'done',
      },
    };
    const desk = createRunDesk(world);
    await desk.resume(await this.store.outings());
    return desk;
  }
}

const begin = async () => {
  const phone = new Phone();
  const desk = await phone.load();
  expect(await desk.start(PRACTICE_PLAN, PRACTICE_GEAR)).toEqual({ how: 'started' });
  return { phone, desk };
};

type Desk = Awaited<ReturnType<Phone['load']>>;

const nextKey = (desk: Desk) => desk.state.value?.queue[0]?.key as never;

async function untilOpen(phone: Phone, desk: Desk) {
  for (const rig of PRACTICE_PLAN.rigs) {
    await desk.tap({ tap: 'tick', rig, item: 'focus-fixed', done: true });
  }
  await desk.tap({ tap: 'begin-frames' });
  for (let guard = 0; guard < 9 && desk.step.value?.kind !== 'expose'; guard += 1) {
    phone.pass(5);
    await desk.tap({
      tap: desk.step.value?.kind === 'mount' ? 'mounted' : 'dialled',
      frame: nextKey(desk),
    });
  }
  phone.pass(5);
  await desk.tap({ tap: 'start', frame: nextKey(desk) });
  expect(desk.step.value?.kind).toBe('open');
}

describe('an outing in hand', () => {
  it('freezes plan and the gear it uses, and keeps the screen on until it ends', async () => {
    const { phone, desk } = await begin();
    expect(phone.kept).toBe('on');
    expect(desk.state.value?.plan).toEqual(PRACTICE_PLAN);
    expect(desk.state.value?.gear.bodies.map(({ name }) => name)).toEqual(['Alder 44', 'Birch 36']);
    await desk.tap({ tap: 'end' });
    expect(phone.kept).toBe('off');
  });

  it('is the only one', async () => {
    const { desk } = await begin();
    expect(await desk.start(PRACTICE_PLAN, PRACTICE_GEAR)).toEqual({ how: 'another-runs' });
  });

  it('is there again after a reload in mid-exposure, at the right second', async () => {
    const { phone, desk } = await begin();
    await untilOpen(phone, desk);
    phone.pass(22);
    const back = await phone.load(10);
    expect(back.cameBack.value).toBe(true);
    const step = back.step.value;
    if (step?.kind !== 'open') throw new Error(`expected an open frame, found ${step?.kind}`);
    // 2 s of lead-in and 30 s of the 64.
    expect(step.frames[0]?.phase).toMatchObject({ phase: 'running', leftS: 34, ofS: 64 });
  });

  it('is not taken up again once it has ended, however much was corrected since', async () => {
    const { phone, desk } = await begin();
    await desk.tap({ tap: 'end' });
    await desk.tap({ tap: 'note', text: 'after the end', made: null });
    const back = await phone.load(60);
    expect(back.journal.value).toBeNull();
    expect(back.underWay.value).toBe(false);
  });
});

describe('a browser that throws the journal away', () => {
  it('gets it back from memory, and the screen is told how much was lost', async () => {
    const { phone, desk } = await begin();
    await untilOpen(phone, desk);
    expect(desk.savedAgain.value).toBeNull();
    phone.lost = 7;
    for (const tell of phone.closed) tell({ kind: 'closed', detail: 'made by the test' });
    await new Promise((done) => setTimeout(done, 0));
    expect(desk.savedAgain.value).toBe(7);
  });
});

describe('cues', () => {
  it('are laid ahead for lead-in, near the end and the end', async () => {
    const { phone, desk } = await begin();
    await untilOpen(phone, desk);
    const [cues] = phone.scheduled.values();
    const start = phone.monoMs;
    // The practice body's self-timer is 2 s: the beeps of 3 s before opening are past.
    expect(cues?.map(({ kind, dueMs }) => [kind, dueMs - start])).toEqual([
      ['lead-in', 1000],
      ['lead-in', 2000],
      ['near-end', 56_000],
      ['end', 66_000],
    ]);
  });

  it('tell once that an end passed while the page was gone', async () => {
    const { phone, desk } = await begin();
    await untilOpen(phone, desk);
    await phone.load(2 + 64 + 5);
    const [cues] = phone.scheduled.values();
    expect(cues?.map(({ kind, dueMs }) => [kind, dueMs - phone.monoMs])).toEqual([['end', -5000]]);
  });

  it('are laid anew after a reload, and taken away when the frame is undone', async () => {
    const { phone, desk } = await begin();
    await untilOpen(phone, desk);
    phone.pass(32);
    const back = await phone.load(0);
    const [cues] = phone.scheduled.values();
    expect(cues?.map(({ kind, dueMs }) => [kind, dueMs - phone.monoMs])).toEqual([
      ['near-end', 24_000],
      ['end', 34_000],
    ]);
    await back.undo();
    expect(phone.scheduled.size).toBe(0);
  });
});
