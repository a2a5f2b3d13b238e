import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import type { OutingLocks, Ownership } from '../device/locks.ts';
import { entriesOf, type LogEntry } from '../log/entries.ts';
import { framesOf, type LogFrame } from '../log/frames.ts';
import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { EventId, MadeId, OutingId, WriterId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import type { Tap } from '../outing/next.ts';
import type { RunState } from '../outing/state.ts';
import type { OutingSummary, Store, StoreFault } from '../store/contract.ts';
import { toFault } from '../store/fault.ts';
import { type Journal, openJournal, type Served } from './journal.ts';
import type { RunDesk } from './run.ts';

/** A wall time with the minutes that local time was ahead of UTC. */
export type Moment = Pick<Instant, 'wallMs' | 'offsetMin'>;

/** An outing as the list shows it. */
export interface OutingLine {
  readonly outing: OutingId;
  /** The name of its plan. */
  readonly name: string;
  readonly invented: boolean;
  readonly begun: Moment;
  /** Null while nobody has ended it. */
  readonly ended: Moment | null;
  readonly frames: number;
}

/** One outing's log. Each part is worked out when it is first looked at, and anew when the journal moves on. */
export interface OutingLog {
  readonly journal: Journal;
  readonly frames: ReadonlySignal<readonly LogFrame[]>;
  readonly entries: ReadonlySignal<readonly LogEntry[]>;
}

/**
 * How an opened outing can be used. 'elsewhere': another window has it, so that here it can only be
 * read. 'beginning': only its first frames are here yet, the rest is being read.
 */
export type Access = 'full' | 'elsewhere' | 'beginning';

/** What became of the outing that is asked for. */
export type Opened =
  | { readonly how: 'reading' }
  | {
      readonly how: 'open';
      readonly log: OutingLog;
      readonly access: Access;
    }
  /** There is no such outing on this device. */
  | { readonly how: 'missing' }
  | { readonly how: 'failed'; readonly fault: StoreFault };

export type Resumed = 'resumed' | 'another-runs' | 'not-saved';

/** The outings of this device and their logs. */
export interface LogDesk {
  /** Newest first; null while they are read for the first time. */
  readonly outings: ReadonlySignal<readonly OutingLine[] | null>;
  /** Why the list could not be read; null when it could. */
  readonly fault: ReadonlySignal<StoreFault | null>;
  /** Null while no outing is asked for. */
  readonly opened: ReadonlySignal<Opened | null>;
  /** Looks through the store again. */
  refresh(): Promise<void>;
  /** Opens an outing; null closes the one that is open. */
  show(outing: OutingId | null): void;
  /** Reads the open outing again: a file has brought something in, or reading failed. */
  reread(): void;
  /** All events of an outing, those included that could not be saved yet. */
  events(outing: OutingId): Promise<readonly OutingEvent[]>;
  /** Says something of the past: a correction, a note, a verdict, a discard. */
  tap(tap: Tap): Promise<Served>;
  /** What `undo` would take back: only what is said of the past, never a step of the run. */
  readonly undoable: ReadonlySignal<Remark | null>;
  undo(): Promise<Served>;
  /** Takes an outing that nobody has ended in hand again. */
  resume(outing: OutingId): Promise<Resumed>;
}

/** What was said last of the past, and of which frame; null = of none. */
export interface Remark {
  readonly kind:
    | 'corrected'
    | 'discarded'
    | 'noted'
    | 'judged'
    | 'evened-up'
    | 'gear-corrected'
    | 'files-matched'
    | 'values-taken';
  readonly made: MadeId | null;
}

function remarkOf(event: OutingEvent | undefined): Remark | null {
  switch (event?.kind) {
    case 'corrected':
      return { kind: event.kind, made: event.data.frame };
    case 'discarded':
    case 'noted':
    case 'judged':
      return { kind: event.kind, made: event.data.made };
    case 'evened-up':
    case 'gear-corrected':
    case 'files-matched':
    case 'values-taken':
      return { kind: event.kind, made: null };
    default:
      return null;
  }
}

/** Events that are read at once; a longer journal opens with these while the rest is read. */
const BEGINNING = 400;

const CACHE_KEY = 'outing-lines';

/** Lines that need not be worked out again as long as neither code nor journal has changed. */
interface LineCache {
  readonly version: string;
  readonly lines: Readonly<
    Record<OutingId, Pick<OutingSummary, 'events' | 'lastWallMs'> & { readonly line: OutingLine }>
  >;
}

interface Found {
  readonly outing: OutingId;
  readonly opened: Opened;
  readonly ownership: Ownership;
}

export function createLogDesk({
  store,
  writer,
  clock,
  newId,
  locks,
  run,
  version,
}: {
  readonly store: Pick<Store, 'append' | 'events' | 'outings' | 'setting' | 'putSetting'>;
  readonly writer: WriterId;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly locks: Pick<OutingLocks, 'claim' | 'release'>;
  readonly run: Pick<RunDesk, 'journal' | 'state' | 'ownership' | 'underWay' | 'open' | 'leave'>;
  /** Of the app: another one may fold a journal differently. */
  readonly version: string;
}): LogDesk {
  const lines = signal<readonly OutingLine[] | null>(null);
  const fault = signal<StoreFault | null>(null);
  const wanted = signal<OutingId | null>(null);
  const found = signal<Found | null>(null);
  /** Journals that hold what could not be saved: they must not be read anew. */
  const held = new Map<OutingId, Journal>();
  const logs = new WeakMap<Journal, OutingLog>();

  const logOf = (journal: Journal): OutingLog => {
    const known = logs.get(journal) ?? outingLog(journal);
    logs.set(journal, known);
    return known;
  };
  const inHand = (outing: OutingId): Journal | null => {
    const journal = run.journal.value;
    return journal?.outing === outing ? journal : null;
  };

  /** @param most Only the beginning of the journal. */
  const read = async (outing: OutingId, most?: number): Promise<Opened> => {
    const kept = held.get(outing);
    if (kept) return { how: 'open', log: logOf(kept), access: 'full' };
    try {
      const events = await store.events(outing, most);
      const access = events.length === most ? 'beginning' : 'full';
      if (!events.some(({ kind }) => kind === 'outing-started')) return { how: 'missing' };
      const now = () => clock.now() as Instant;
      const world = { store, writer, now, newId: () => newId() as EventId };
      return { how: 'open', log: logOf(openJournal(outing, events, world)), access };
    } catch (cause) {
      return { how: 'failed', fault: toFault(cause) };
    }
  };
  const find = async (outing: OutingId): Promise<void> => {
    const ownership = await locks.claim(outing);
    const stillWanted = () => wanted.peek() === outing && inHand(outing) === null;
    let opened = await read(outing, BEGINNING);
    const begun = isBeginning(opened);
    // Asked for twice, read twice: the first answer stays.
    if (begun && stillWanted()) found.value ??= { outing, opened, ownership };
    // A beginning that does not hold the start was another phone's.
    if (begun || opened.how === 'missing') opened = await read(outing);
    const now = { outing, opened, ownership };
    const { value } = found;
    if (!stillWanted()) letGo(now);
    else if (value === null || isBeginning(value.opened)) found.value = now;
  };
  const letGo = ({ outing, opened, ownership }: Found): void => {
    if (opened.how === 'open') {
      const { journal } = opened.log;
      if (journal.unsaved.peek().length > 0) held.set(outing, journal);
      else held.delete(outing);
    }
    if (ownership === 'owner' && run.journal.peek()?.outing !== outing) locks.release(outing);
  };

  // The outing in hand has its journal at the run desk, so that both see one truth; as soon as it is
  // put aside it is read here.
  effect(() => {
    const outing = wanted.value;
    const here = outing !== null && inHand(outing) === null ? outing : null;
    const before = found.peek();
    if (before && before.outing !== here) {
      found.value = null;
      letGo(before);
    }
    if (here !== null && before?.outing !== here) void find(here);
  });

  const opened = computed((): Opened | null => {
    const outing = wanted.value;
    if (outing === null) return null;
    const journal = inHand(outing);
    if (journal) {
      const access = run.ownership.value === 'elsewhere' ? 'elsewhere' : 'full';
      return { how: 'open', log: logOf(journal), access };
    }
    const { value } = found;
    if (value?.outing !== outing) return { how: 'reading' };
    return value.opened.how === 'open' &&
      value.ownership === 'elsewhere' &&
      !isBeginning(value.opened)
      ? { ...value.opened, access: 'elsewhere' }
      : value.opened;
  });
  const writable = (): Journal | null => {
    const now = opened.peek();
    return now?.how === 'open' && now.access === 'full' ? now.log.journal : null;
  };
  const undoable = computed((): Remark | null => {
    const now = opened.value;
    return now?.how === 'open' && now.access === 'full'
      ? remarkOf(now.log.journal.undoable.value[0])
      : null;
  });

  return {
    outings: computed(() => {
      const state = run.state.value;
      return (
        lines.value?.map((line) => (state?.outing === line.outing ? lineOf(state) : line)) ?? null
      );
    }),
    fault,
    opened,
    undoable,
    async refresh() {
      try {
        lines.value = await readLines(store, version);
        fault.value = null;
      } catch (cause) {
        fault.value = toFault(cause);
      }
    },
    show(outing) {
      wanted.value = outing;
    },
    reread() {
      const outing = wanted.peek();
      if (outing === null) return;
      wanted.value = null;
      wanted.value = outing;
    },
    async events(outing) {
      const journal =
        inHand(outing) ?? held.get(outing) ?? (wanted.peek() === outing ? writable() : null);
      return journal?.events.peek() ?? (await store.events(outing));
    },
    tap: async (tap) => (await writable()?.tap(tap)) ?? READ_ONLY,
    undo: async () => (undoable.peek() && (await writable()?.undo())) || READ_ONLY,
    async resume(outing) {
      if (run.journal.peek()?.outing === outing) return 'resumed';
      if (run.underWay.peek()) return 'another-runs';
      const journal = held.get(outing) ?? writable();
      if (journal && journal.unsaved.peek().length > 0) return 'not-saved';
      run.leave();
      await run.open(outing);
      return 'resumed';
    },
  };
}

const isBeginning = (opened: Opened): boolean =>
  opened.how === 'open' && opened.access === 'beginning';

const READ_ONLY: Served = { how: 'refused', rule: 'read-only' };

function outingLog(journal: Journal): OutingLog {
  const { state } = journal;
  const frames = computed(() => framesOf(state.value));
  return {
    journal,
    frames,
    entries: computed(() => entriesOf(state.value, frames.value)),
  };
}

const lineOf = (state: RunState): OutingLine => ({
  outing: state.outing,
  name: state.plan.name,
  invented: state.plan.invented,
  begun: momentOf(state.startedAt),
  ended: state.endedAt && momentOf(state.endedAt),
  frames: state.made.length,
});

const momentOf = ({ wallMs, offsetMin }: Instant): Moment => ({ wallMs, offsetMin });

/** The lines of all outings; only journals that have changed since are read. */
async function readLines(
  store: Pick<Store, 'events' | 'outings' | 'setting' | 'putSetting'>,
  version: string,
): Promise<readonly OutingLine[]> {
  const [summaries, cached] = await Promise.all([store.outings(), store.setting(CACHE_KEY)]);
  // Written by this very version, or not looked at.
  const cache =
    (cached as LineCache | undefined)?.version === version ? (cached as LineCache) : null;
  const known: LineCache['lines'] = cache?.lines ?? {};
  const lines: { -readonly [K in OutingId]: LineCache['lines'][K] } = {};
  let changed = summaries.length !== Object.keys(known).length;
  for (const { outing, events, lastWallMs } of summaries) {
    const before = known[outing];
    if (before?.events === events && before.lastWallMs === lastWallMs) lines[outing] = before;
    else {
      const state = fold(await store.events(outing));
      if (state) lines[outing] = { events, lastWallMs, line: lineOf(state) };
      changed = true;
    }
  }
  // Only a saving of time: a full disk makes the list slower, not wrong.
  if (changed) store.putSetting(CACHE_KEY, { version, lines }).catch(() => undefined);
  return Object.values(lines)
    .map(({ line }) => line)
    .sort((a, b) => b.begun.wallMs - a.begun.wallMs);
}
