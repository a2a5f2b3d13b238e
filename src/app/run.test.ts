import { describe, expect, it, vi } from 'vitest';
import { onlyWindow } from '../../test/contract/fakes/locks.ts';
import type { Cue } from '../device/cues.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import { assumedScene } from '../light/scene.ts';
import { civilDusk, skyEnd, skyEv } from '../light/skyTable.ts';
import { missAt } from '../light/windows.ts';
import type { EventId, SessionId, WriterId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import { ev, type UtcMs } from '../science/units.ts';
import type { Store, StoreFault } from '../store/contract.ts';
import { memoryStore } from '../store/memory.ts';
import { spoken } from '../ui/words/spoken.en.ts';
import { outingSky } from './eveningSky.ts';
import { eventReader } from './eventReader.ts';
import { createRunDesk, type RunWorld } from './run.ts';

const PRACTICE_PLAN = practicePlan();

/** A phone whose clock moves by hand and whose services do nothing but count. */
class Phone {
  wallMs = Date.UTC(2027, 1, 12, 17, 30);
  monoMs = 1000;
  sessions = 0;
  kept: 'on' | 'off' = 'off';
  scheduled = new Map<string, readonly Cue[]>();
  /** What a ticker that goes would call; null while none does. */
  paint: (() => void) | null = null;
  private ids = 0;
  skyOver: RunWorld['skyOver'] = async (...asked) => outingSky(...asked);
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
      ticker: {
        start: (paint) => {
          this.paint = paint;
          return () => {
            this.paint = null;
          };
        },
      },
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
      locks: onlyWindow,
      cues: {
        sound: 'ready',
        vibrates: true,
        voices: [],
        onVoices: () => () => undefined,
        onSound: () => () => undefined,
        choose: () => undefined,
        unlock: () => undefined,
        schedule: (exposure, cues) => this.scheduled.set(exposure, cues),
        cancel: (exposure) => this.scheduled.delete(exposure),
        onLate: () => () => undefined,
        try: async () => 'done',
      },
      spoken: () => spoken,
      siteOf: ({ evening }) => (evening?.site === PRACTICE_SITE.id ? PRACTICE_SITE : null),
      skyOver: async (...asked) => this.skyOver(...asked),
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
    // Refused or lost without a word: the next tap asks again.
    phone.kept = 'off';
    await desk.tap({ tap: 'pause' });
    expect(phone.kept).toBe('on');
    await desk.tap({ tap: 'end' });
    expect(phone.kept).toBe('off');
  });

  /** Mutations: `showClock` that counts nothing; its end left out. */
  it('has a clock that goes on after the end with the screen kept on, while it is shown', async () => {
    const { phone, desk } = await begin();
    const hide = desk.showClock();
    await desk.tap({ tap: 'end' });
    expect(phone.kept).toBe('on');
    const before = desk.now.value.wallMs;
    phone.pass(1);
    phone.paint?.();
    expect(desk.now.value.wallMs).toBe(before + 1000);
    hide();
    expect(phone.kept).toBe('off');
    expect(phone.paint).toBeNull();
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

describe('the sky of an outing', () => {
  it('is that of its invented evening, brought to the clock as it is', async () => {
    const { phone, desk } = await begin();
    const state = desk.state.value;
    expect(state?.site).toEqual(PRACTICE_SITE);
    const { sky } = state ?? {};
    if (!sky) throw new Error('no sky');
    expect(sky.startMs).toBe(phone.wallMs);
    // Through the night until noon.
    expect(skyEnd(sky) - sky.startMs).toBeGreaterThan(17 * 3600_000);
    // The list begins past civil dusk, in its first set's light.
    expect(civilDusk(sky)).toBeNull();
    const [set] = PRACTICE_PLAN.sets;
    const first = state?.queue[0];
    if (!set || !first) throw new Error('a set');
    const aim = { exact: first.exact, targetOffset: set.targetOffset };
    expect(Math.abs(missAt(assumedScene(sky), aim, sky.startMs) ?? 9)).toBeLessThan(1);
  });

  it('is that of the clock at a site of one’s own', async () => {
    const phone = new Phone();
    const desk = await phone.load();
    const own = { ...PRACTICE_SITE, invented: false };
    phone.skyOver = async (plan, gear, _, now) => outingSky(plan, gear, own, now);
    await desk.start(PRACTICE_PLAN, PRACTICE_GEAR);
    const sky = desk.state.value?.sky;
    if (!sky) throw new Error('no sky');
    // 17:30 on that very evening: the sun went down at 17:22, civil dusk comes at 17:57.
    expect(new Date(civilDusk(sky) ?? 0).toISOString()).toMatch(/^2027-02-12T17:5/);
    expect(skyEv(sky, (phone.wallMs + 3600_000) as UtcMs)).toBeLessThan(-2);
  });

  it('is left out, and the outing starts, where its part is missing or does not come', async () => {
    for (const skyOver of [
      () => Promise.reject(new TypeError('not on this device')),
      () => new Promise<never>(() => undefined),
    ]) {
      vi.useFakeTimers();
      try {
        const phone = new Phone();
        const desk = await phone.load();
        phone.skyOver = skyOver;
        const started = desk.start(PRACTICE_PLAN, PRACTICE_GEAR);
        await vi.advanceTimersByTimeAsync(6000);
        expect(await started).toEqual({ how: 'started' });
        expect(desk.state.value).toMatchObject({ site: PRACTICE_SITE, sky: null });
        expect(desk.light.scene.value).toBeNull();
        expect(desk.light.wanted.value).toBeNull();
      } finally {
        vi.useRealTimers();
      }
    }
  });

  it('is not asked for where the plan states no evening', async () => {
    const phone = new Phone();
    const desk = await phone.load();
    phone.skyOver = () => Promise.reject(new Error('asked'));
    await desk.start({ ...PRACTICE_PLAN, evening: null }, PRACTICE_GEAR);
    expect(desk.state.value).toMatchObject({ site: null, sky: null });
  });

  it('starts one outing for two taps while it is worked out', async () => {
    const phone = new Phone();
    const desk = await phone.load();
    const both = await Promise.all([
      desk.start(PRACTICE_PLAN, PRACTICE_GEAR),
      desk.start(PRACTICE_PLAN, PRACTICE_GEAR),
    ]);
    expect(both).toEqual([{ how: 'started' }, { how: 'another-runs' }]);
    expect(await phone.store.outings()).toHaveLength(1);
  });

  it('bends with readings, and offers settings when a set is no longer right', async () => {
    const { phone, desk } = await begin();
    expect(desk.light.wanted.value).toBe('reading');
    expect(desk.light.scene.value?.from).toBe('model');
    const { sky } = desk.state.value ?? {};
    if (!sky) throw new Error('no sky');
    const now = skyEv(sky, phone.wallMs as UtcMs) ?? Number.NaN;
    const reading = { kind: 'ev', ev100: ev(now - 3) } as const;
    for (let time = 0; time < 3; time += 1) {
      await desk.tap({ tap: 'reading', meter: 'spot', reading });
    }
    expect(desk.light.wanted.value).toBeNull();
    expect(desk.light.scene.value?.offsets[0]?.stops).toBeCloseTo(-3, 0);
    expect(desk.light.inLight.value).toMatchObject({ how: 'off' });
    const [offer] = desk.light.rematches();
    const set = desk.light.inHand.value?.set.id;
    if (!offer || !set) throw new Error('nothing offered');
    await desk.tap({ tap: 'begin-frames' });
    phone.pass(1);
    await desk.tap({ tap: 'rematch', set, rigs: offer.rigs });
    expect(desk.light.inLight.value?.how).not.toBe('off');
    await desk.undo();
    expect(desk.light.inLight.value).toMatchObject({ how: 'off' });
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
    expect(cues?.map(({ kind, dueMs, spoken }) => [kind, dueMs - start, spoken])).toEqual([
      ['lead-in', 1000, null],
      ['lead-in', 2000, 'open'],
      ['near-end', 56_000, '10'],
      [null, 61_000, '5'],
      [null, 63_000, '3'],
      [null, 64_000, '2'],
      [null, 65_000, '1'],
      ['end', 66_000, 'end'],
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
    const tones = cues?.filter(({ kind }) => kind !== null);
    expect(tones?.map(({ kind, dueMs }) => [kind, dueMs - phone.monoMs])).toEqual([
      ['near-end', 24_000],
      ['end', 34_000],
    ]);
    await back.undo();
    expect(phone.scheduled.size).toBe(0);
  });
});
