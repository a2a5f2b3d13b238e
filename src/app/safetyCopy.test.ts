import { computed, signal } from '@preact/signals';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { Evening, twoSets } from '../../test/evenings/evening.ts';
import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { OutingId } from '../outing/ids.ts';
import { createSafetyDesk, type SafetyDesk } from './safetyCopy.ts';

/** An outing that the test lets go on, and a disk for the copies. */
class World {
  readonly events = signal<readonly OutingEvent[] | null>(null);
  readonly ownership = signal<'owner' | 'elsewhere'>('owner');
  readonly written: string[] = [];
  readonly settings = new Map<string, unknown>();
  allowed = true;
  broken = false;
  aborted = 0;

  /** As a browser gives it out. */
  readonly handle = {
    name: 'copy.json',
    queryPermission: async () => (this.allowed ? 'granted' : 'prompt'),
    requestPermission: async () => {
      this.allowed = true;
      return 'granted';
    },
    createWritable: async () => {
      let written = '';
      return {
        write: async (text: string) => {
          if (this.broken) throw new DOMException('by the test', 'NotAllowedError');
          written = text;
        },
        close: async () => {
          this.written.push(written);
        },
        abort: async () => {
          this.aborted += 1;
        },
      };
    },
  };

  async desk(choose = true): Promise<SafetyDesk> {
    const desk = createSafetyDesk({
      pick: choose ? async () => this.handle : undefined,
      run: {
        state: computed(() => this.events.value && fold(this.events.value)),
        ownership: this.ownership,
      },
      files: { journalText: async () => `${this.events.peek()?.length} events` },
      store: {
        setting: async (key) => this.settings.get(key),
        putSetting: async (key, value) => {
          this.settings.set(key, value);
        },
      },
      saving: { save: (write) => void write() },
      clock: new FakeClock(),
    });
    await desk.load();
    return desk;
  }
}

let world: World;
let evening: Evening;

beforeEach(() => {
  world = new World();
  evening = new Evening(twoSets()).setUp();
  world.events.value = evening.events;
});

/** Walks to the end of the first set, then to that of the list. */
const walk = (until: 'first set' | 'list') => {
  const before = world.events.peek()?.length ?? 0;
  if (evening.state().queue.length > 0) evening.shootAll();
  const all = evening.events;
  const queue = (length: number) => fold(all.slice(0, length))?.queue ?? [];
  const firstSet = fold(all)?.plan.sets[0]?.id;
  for (let length = before + 1; length <= all.length; length += 1) {
    world.events.value = all.slice(0, length);
    const through = queue(length).every(({ set }) => set !== firstSet);
    if (until === 'first set' && through && fold(all.slice(0, length))?.open.length === 0) return;
  }
};

describe('a copy into a chosen file', () => {
  it('is written when it is chosen, then after each set, with all that there is', async () => {
    const desk = await world.desk();
    await desk.chooseFile();
    const before = evening.events.length;
    await vi.waitFor(() => expect(world.written).toEqual([`${before} events`]));
    walk('list');
    await vi.waitFor(() => expect(world.written.length).toBeGreaterThanOrEqual(3));
    expect(world.written.at(-1)).toBe(`${evening.events.length} events`);
    expect(desk.copy.value).toEqual({
      way: 'file',
      name: 'copy.json',
      state: { written: new FakeClock().now() },
    });
  });

  it('that fails says so, and the next set tries again', async () => {
    const desk = await world.desk();
    await desk.chooseFile();
    await vi.waitFor(() => expect(world.written).toHaveLength(1));
    world.broken = true;
    walk('first set');
    await vi.waitFor(() => expect(desk.copy.value).toMatchObject({ state: 'failed' }));
    expect(world.aborted).toBeGreaterThan(0);
    world.broken = false;
    walk('list');
    await vi.waitFor(() => expect(desk.copy.value).toMatchObject({ state: { written: {} } }));
  });

  it('goes on after a reload, by itself where that is allowed, else after one tap', async () => {
    await (await world.desk()).chooseFile();
    await vi.waitFor(() => expect(world.settings.size).toBe(1));
    expect((await world.desk()).copy.value).toMatchObject({ way: 'file', state: 'waits' });
    world.allowed = false;
    const desk = await world.desk();
    expect(desk.copy.value).toMatchObject({ state: 'asks' });
    await desk.goOn();
    await vi.waitFor(() => expect(desk.copy.value).toMatchObject({ state: { written: {} } }));
  });

  it('is that of its own outing: the next one does not replace it', async () => {
    const desk = await world.desk();
    await desk.chooseFile();
    await vi.waitFor(() => expect(world.written).toHaveLength(1));
    const next = evening.events.map((event) => ({ ...event, outing: 'next' as OutingId }));
    world.events.value = next;
    expect(desk.copy.value).toEqual({ way: 'off' });
    evening = new Evening(twoSets()).setUp().shootAll();
    world.events.value = evening.events.map((event) => ({ ...event, outing: 'next' as OutingId }));
    await new Promise((done) => setTimeout(done, 10));
    expect(world.written).toHaveLength(1);
  });

  it('is not written by a window that only watches', async () => {
    const desk = await world.desk();
    await desk.chooseFile();
    await vi.waitFor(() => expect(world.written).toHaveLength(1));
    world.ownership.value = 'elsewhere';
    walk('list');
    await new Promise((done) => setTimeout(done, 10));
    expect(world.written).toHaveLength(1);
  });
});

describe('a copy for the share sheet', () => {
  it('is offered after each set until it is handed on, also after a reload', async () => {
    const desk = await world.desk(false);
    expect(desk.choosesFiles).toBe(false);
    desk.offer(true);
    expect(desk.copy.value).toEqual({ way: 'offer', due: false });
    walk('first set');
    expect(desk.copy.value).toEqual({ way: 'offer', due: true });
    desk.settle();
    expect(desk.copy.value).toEqual({ way: 'offer', due: false });
    walk('list');
    expect(desk.copy.value).toEqual({ way: 'offer', due: true });
    expect((await world.desk(false)).copy.value).toEqual({ way: 'offer', due: false });
    desk.offer(false);
    expect(desk.copy.value).toEqual({ way: 'off' });
  });

  it('is not asked for before a set is through', async () => {
    const desk = await world.desk(false);
    desk.offer(true);
    world.events.value = [...evening.tap({ tap: 'note', text: 'wind', made: null }).events];
    expect(desk.copy.value).toEqual({ way: 'offer', due: false });
  });
});
