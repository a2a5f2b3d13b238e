import { batch, computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Draft, OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { EventId, OutingId, WriterId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import { next, type Tap } from '../outing/next.ts';
import { nextSeq, seal } from '../outing/seal.ts';
import { inOrder, lastTap } from '../outing/sequence.ts';
import type { RunState } from '../outing/state.ts';
import { isRefusal } from '../science/refusal.ts';
import type { Store, StoreFault } from '../store/contract.ts';

/** What became of a tap. */
export type Served =
  /** On disk: the transaction is complete. */
  | { readonly how: 'recorded' }
  /** Held in memory only: the disk refused. The run goes on, the screen says so. */
  | { readonly how: 'not-saved'; readonly fault: StoreFault }
  /** It made no sense now; nothing was written. */
  | { readonly how: 'refused'; readonly rule: string };

/** What a journal needs of the world. */
export interface JournalWorld {
  readonly store: Pick<Store, 'append' | 'events'>;
  readonly writer: WriterId;
  readonly now: () => Instant;
  readonly newId: () => EventId;
  /** False from the moment on at which another window has the outing; absent = never. */
  readonly mayWrite?: () => boolean;
}

/**
 * One outing's journal: taps in, state out.
 *
 * A tap becomes events, the events go to disk, and only when the transaction is
 * complete does the state move on. If the disk refuses, the events are held in
 * memory and the state moves on with a warning: the evening does not wait.
 */
export interface Journal {
  readonly outing: OutingId;
  readonly events: ReadonlySignal<readonly OutingEvent[]>;
  readonly state: ReadonlySignal<RunState>;
  /** True from the tap until its transaction is complete. */
  readonly writing: ReadonlySignal<boolean>;
  /** Events that are not on disk, in the order of their taps. */
  readonly unsaved: ReadonlySignal<readonly OutingEvent[]>;
  readonly fault: ReadonlySignal<StoreFault | null>;
  /** What the next undo would take back; empty if nothing. */
  readonly undoable: ReadonlySignal<readonly OutingEvent[]>;
  tap(tap: Tap): Promise<Served>;
  undo(): Promise<Served>;
  /** Tries to bring what is held in memory to disk; waits for every tap before. */
  retry(): Promise<Served>;
  /**
   * Takes in what another window has written.
   *
   * @throws StoreFault if the disk cannot be read.
   */
  refresh(): Promise<void>;
}

/**
 * Opens a journal on events that are on disk already.
 *
 * @throws RangeError if the events do not begin an outing.
 */
export function openJournal(
  outing: OutingId,
  stored: readonly OutingEvent[],
  world: JournalWorld,
): Journal {
  const saved = signal(inOrder(stored));
  const held = signal<readonly (readonly OutingEvent[])[]>([]);
  const writing = signal(false);
  const fault = signal<StoreFault | null>(null);
  const unsaved = computed(() => held.value.flat());
  const events = computed(() =>
    unsaved.value.length === 0 ? saved.value : inOrder([...saved.value, ...unsaved.value]),
  );
  const state = computed(() => {
    const folded = fold(events.value);
    if (!folded) throw new RangeError('journal-has-no-start');
    return folded;
  });

  const write = async (drafts: readonly Draft[], at: Instant): Promise<Served> => {
    const place = { outing, writer: world.writer, seq: nextSeq(events.peek(), world.writer) };
    return flush([...held.peek(), seal(drafts, at, place)]);
  };

  /** Events on the disk that are not known here: another window's, before it lost the outing. */
  const unknown = async (): Promise<readonly OutingEvent[]> => {
    const known = new Set(events.peek().map(({ id }) => id));
    return (await world.store.events(outing)).filter(({ id }) => !known.has(id));
  };
  const takeIn = (found: readonly OutingEvent[]): void => {
    if (found.length > 0) saved.value = inOrder([...saved.peek(), ...found]);
  };

  // Taps go to disk one transaction each and in their order, so that what was
  // held back by a full disk is never overtaken by what came after it.
  const flush = async (taps: readonly (readonly OutingEvent[])[]): Promise<Served> => {
    writing.value = true;
    // What is held comes first in it.
    let waiting = taps;
    try {
      for (let [tap] = waiting; tap; [tap] = waiting) {
        if (world.mayWrite?.() === false) throw RUNS_ELSEWHERE;
        const overtaken = await append(tap);
        if (overtaken.length > 0) {
          const now = [...saved.peek(), ...overtaken];
          waiting = renumbered(waiting, nextSeq(now, world.writer));
          batch(() => {
            takeIn(overtaken);
            held.value = waiting.slice(0, held.peek().length);
          });
        } else {
          const written = tap;
          waiting = waiting.slice(1);
          batch(() => {
            saved.value = [...saved.peek(), ...written];
            held.value = held.peek().slice(1);
          });
        }
      }
      fault.value = null;
      return { how: 'recorded' };
    } catch (caught) {
      const why = faultOf(caught);
      held.value = waiting;
      fault.value = why;
      return { how: 'not-saved', fault: why };
    } finally {
      writing.value = false;
    }
  };

  /**
   * Brings a tap to disk.
   *
   * @returns what has its place there already: then it was not written. Empty = it was.
   */
  const append = async (tap: readonly OutingEvent[]): Promise<readonly OutingEvent[]> => {
    try {
      await world.store.append(tap);
      return [];
    } catch (caught) {
      const found = faultOf(caught).kind === 'refused' ? await unknown() : [];
      if (found.length === 0) throw caught;
      return found;
    }
  };

  // A tap that comes while another is being written waits for it and is judged
  // by the state that it leaves: none is lost, and none is taken for another.
  let turn: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(serve: () => Promise<T>): Promise<T> => {
    const served = turn.then(serve, serve);
    turn = served;
    return served;
  };

  return {
    outing,
    events,
    state,
    writing,
    unsaved,
    fault,
    undoable: computed(() => lastTap(events.value)),
    tap(tap) {
      // The moment is the finger's, not that of its turn.
      const now = world.now();
      return inTurn(async () => {
        const drafts = next(state.peek(), tap, { now, newId: world.newId });
        return isRefusal(drafts) ? { how: 'refused', rule: drafts.rule } : write(drafts, now);
      });
    },
    undo() {
      const now = world.now();
      return inTurn(async () => {
        const targets = lastTap(events.peek());
        if (targets.length === 0) return { how: 'refused', rule: 'nothing-to-undo' };
        const drafts = targets.map(
          ({ id }): Draft => ({ id: world.newId(), kind: 'undone', data: { target: id } }),
        );
        return write(drafts, now);
      });
    },
    retry() {
      return inTurn(() => flush(held.peek()));
    },
    refresh() {
      return inTurn(async () => takeIn(await unknown()));
    },
  };
}

const RUNS_ELSEWHERE: StoreFault = { kind: 'refused', detail: 'another window has the outing' };

/** The same taps, with the first number that is free. */
function renumbered(
  taps: readonly (readonly OutingEvent[])[],
  first: number,
): readonly (readonly OutingEvent[])[] {
  let seq = first;
  return taps.map((tap) => tap.map((event) => ({ ...event, seq: seq++ })));
}

/** The store promises to reject with a fault and nothing else; anything else is our own mistake. */
export function faultOf(caught: unknown): StoreFault {
  if (typeof caught === 'object' && caught !== null && 'kind' in caught && 'detail' in caught) {
    return caught as StoreFault;
  }
  throw caught;
}
