import { computed, type ReadonlySignal, signal } from '@preact/signals';
import type { Clock } from '../device/clock.ts';
import type { FileToGive, Offer, Share } from '../device/share.ts';
import { type Backup, backupFile, ownOf } from '../exchange/backup.ts';
import { journalFile } from '../exchange/journalFile.ts';
import type { FileContent } from '../exchange/json.ts';
import type { Fault } from '../gear/read.ts';
import type { OutingEvent } from '../outing/events.ts';
import { fold } from '../outing/fold.ts';
import type { OutingId } from '../outing/ids.ts';
import { inOrder, standing } from '../outing/sequence.ts';
import type { Store, StoreFault } from '../store/contract.ts';
import { toFault } from '../store/fault.ts';
import type { KeptGear } from './keptGear.ts';
import type { KeptPlans } from './keptPlans.ts';
import type { LogDesk, Moment, OutingLine } from './log.ts';
import type { RunDesk } from './run.ts';
import type { Saving } from './saving.ts';
import type { SiteDesk } from './sites.ts';

/** What of the log can leave as a file. */
export type Leaving =
  /** Its frames, for a spreadsheet. */
  | { readonly what: 'table'; readonly outing: OutingId }
  /** Its pairs, for a spreadsheet. */
  | { readonly what: 'pairs'; readonly outing: OutingId }
  /** A sidecar for each picture, beside the names that are taken. */
  | { readonly what: 'sidecars'; readonly outing: OutingId; readonly existing: readonly string[] }
  /** All of it, to be read back. */
  | { readonly what: 'journal'; readonly outing: OutingId }
  /** Everything here but the practice outing. */
  | { readonly what: 'backup' };

/** What a log can be had back from; pairs and sidecars say less than it. */
type WholeLog = Exclude<Leaving, { what: 'pairs' | 'sidecars' }>;

/** A file made ready: `null` = it can leave by no way. */
export type Prepared =
  | { readonly how: 'ready'; readonly offer: Offer | null }
  | { readonly how: 'store'; readonly fault: StoreFault }
  /** The part of the app that makes it could not be loaded. */
  | { readonly how: 'part-missing' };

/** When something last left this device, and as what. */
export interface Left extends Moment {
  readonly what: WholeLog['what'];
  /** The outing had ended by then, so that nothing was missing. */
  readonly whole: boolean;
}

/** What a file would bring in; nothing is written yet. */
export interface Bringing {
  /** When the file was written, in the zone of here and now; null = it does not say. */
  readonly written: Moment | null;
  /** Outings that get lines they do not have here; `begun` = new here. */
  readonly outings: readonly { readonly name: string; readonly begun: boolean }[];
  readonly events: number;
  readonly bodies: number;
  readonly lenses: number;
  readonly rigs: number;
  readonly plans: number;
  readonly sites: number;
  /** Of the gear and plans, how many come under a new id because theirs stands for something else here. */
  readonly copies: number;
  /** How many stay away because they were deleted here. */
  readonly deletedHere: number;
  /** For `take`. */
  readonly file: FileContent<Backup>;
}

/** Why a file is not taken in. */
export type NotTaken =
  | { readonly how: 'unreadable'; readonly why: 'too-large' | 'not-text' | 'gone' | 'part-missing' }
  | { readonly how: 'refused'; readonly fault: Fault }
  | { readonly how: 'store'; readonly fault: StoreFault }
  /** Something entered here waits to be saved, and must not be passed over. */
  | { readonly how: 'unsaved' };

export type Looked = { readonly how: 'fits'; readonly brings: Bringing } | NotTaken;
export type Taken = { readonly how: 'taken'; readonly brings: Bringing } | NotTaken;

/** Files that come in. */
export interface Taking {
  /** Reads any of our files and says what it would bring in. */
  look(file: Blob): Promise<Looked>;
  /** Takes in what was looked at, in one transaction. Doing it twice changes nothing. */
  take(brings: Bringing): Promise<Taken>;
}

/** Files that leave and enter the app. */
export interface FileDesk extends Taking {
  load(): Promise<void>;
  /** Makes a file ready. What has left is remembered when its offer is given. */
  prepare(leaving: Leaving): Promise<Prepared>;
  /**
   * The text of an outing's journal file, what is only in memory included.
   *
   * @throws StoreFault if it has to be read and cannot be.
   */
  journalText(outing: OutingId): Promise<string>;
  /** When an outing's log last left this device; null = never, or only before it ended. */
  leftAt(line: Pick<OutingLine, 'outing' | 'ended'>): Left | null;
  /** When everything last left; null = never. */
  readonly backedUp: ReadonlySignal<Left | null>;
}

const KEY = 'files-left';

interface Kept {
  readonly outings: Readonly<Record<OutingId, Left>>;
  readonly backup: Left | null;
}

/** What files need of the app. */
export interface FileWorld {
  readonly store: Store;
  readonly share: Share;
  readonly clock: Clock;
  readonly saving: Saving;
  readonly gear: Pick<KeptGear, 'hasOwn' | 'load'>;
  readonly plans: Pick<KeptPlans, 'load'>;
  readonly sites: Pick<SiteDesk, 'load'>;
  readonly log: LogDesk;
  readonly run: Pick<RunDesk, 'journal' | 'open' | 'leave'>;
  /** Of the app. */
  readonly version: string;
  /** From now on there is something of the user's own to lose. */
  readonly onFirstOwnBody: () => void;
}

export function createFileDesk(world: FileWorld): FileDesk {
  const { store, share, clock, saving, log, version } = world;
  const kept = signal<Kept>({ outings: {}, backup: null });

  const remember = (leaving: WholeLog, ended: ReadonlySet<OutingId>): void => {
    const { wallMs, offsetMin } = clock.now();
    const now = { wallMs, offsetMin, what: leaving.what };
    const { outings, backup } = kept.peek();
    const left = leaving.what === 'backup' ? ended : [leaving.outing];
    const changed: Kept = {
      outings: {
        ...outings,
        ...Object.fromEntries(
          [...left].map((outing) => [outing, { ...now, whole: ended.has(outing) }]),
        ),
      },
      backup: leaving.what === 'backup' ? { ...now, whole: true } : backup,
    };
    kept.value = changed;
    saving.save(() => store.putSetting(KEY, changed));
  };

  /** The same offer; once the file is handed on, `handedOn` is called. */
  const remembered = (offer: Offer, handedOn: () => void): Offer => ({
    ...offer,
    // Nothing may be awaited before the system is asked: only a fresh tap may share.
    give: () =>
      offer.give().then((given) => {
        if (given.done === 'shared' || given.done === 'downloaded') handedOn();
        return given.done === 'refused' && given.next
          ? { ...given, next: remembered(given.next, handedOn) }
          : given;
      }),
  });

  const everything = async (): Promise<Backup> => {
    const [held, heldPlans, sites, outings, tombstones] = await Promise.all([
      store.gear(),
      store.plans(),
      store.sites(),
      store.outings(),
      store.tombstones(),
    ]);
    const journals = await Promise.all(outings.map(({ outing }) => log.events(outing)));
    return {
      gear: held,
      plans: heldPlans,
      sites,
      events: journals.flat(),
      tombstones: [...tombstones],
    };
  };

  const stamp = () => ({ app: version, written: new Date(clock.now().wallMs).toISOString() });
  const eventsOf = async (outing: OutingId) => inOrder(await log.events(outing));
  /** The events leave in any case; the log beside them is for other programs, and a part may be missing. */
  const journalText = async (outing: OutingId, events: readonly OutingEvent[]): Promise<string> => {
    const later = await import('../exchange/journalOf.ts').catch(() => null);
    const journal = later?.journalOf(outing, events) ?? { outing, events, frames: [], pairs: [] };
    return journalFile.write(journal, stamp());
  };

  /** The file, and which outings had ended when it was made; null if the part that makes it is missing. */
  const fileOf = async (
    leaving: Leaving,
  ): Promise<{ readonly file: FileToGive; readonly ended: ReadonlySet<OutingId> } | null> => {
    const now = clock.now();
    const json = (name: string, content: string): FileToGive => ({
      name: `evenfall-${name}.json`,
      type: 'application/json',
      content,
    });
    if (leaving.what === 'backup') {
      const own = ownOf(await everything());
      return {
        file: json(`backup-${dayOf(now)}`, backupFile.write(own, stamp())),
        ended: endedIn(own.events),
      };
    }
    const { outing, what } = leaving;
    const events = await eventsOf(outing);
    const state = fold(events);
    if (!state) throw new RangeError(`no such outing: ${outing}`);
    const name = `${dayOf(state.startedAt)}-${plainName(state.plan.name)}`;
    const ended = endedIn(events);
    if (what === 'journal') return { file: json(name, await journalText(outing, events)), ended };
    const later = await import('./logFiles.ts').catch(() => null);
    return later && { file: later.logFile(leaving, state, name, stamp()), ended };
  };

  /** Reading files back is for the desk: it loads later than the first script. */
  const taken = async <T>(work: (taking: Taking) => Promise<T>): Promise<T | NotTaken> => {
    let taking: Taking;
    try {
      taking = (await import('./taking.ts')).createTaking(world);
    } catch {
      return { how: 'unreadable', why: 'part-missing' };
    }
    return work(taking);
  };

  return {
    async load() {
      kept.value = readKept(await store.setting(KEY));
    },
    async prepare(leaving) {
      try {
        const made = await fileOf(leaving);
        if (made === null) return { how: 'part-missing' };
        const { file, ended } = made;
        const offer = share.offer(file);
        if (leaving.what === 'pairs' || leaving.what === 'sidecars') return { how: 'ready', offer };
        return {
          how: 'ready',
          offer: offer && remembered(offer, () => remember(leaving, ended)),
        };
      } catch (cause) {
        return { how: 'store', fault: toFault(cause) };
      }
    },
    journalText: async (outing) => journalText(outing, await eventsOf(outing)),
    leftAt({ outing, ended }) {
      const left = kept.value.outings[outing];
      return left && (left.whole || ended === null) ? left : null;
    },
    backedUp: computed(() => kept.value.backup),
    look: (file) => taken(({ look }) => look(file)),
    take: (brings) => taken(({ take }) => take(brings)),
  };
}

/** The outings that these events end. */
const endedIn = (events: readonly OutingEvent[]): ReadonlySet<OutingId> =>
  new Set(standing(events).flatMap(({ kind, outing }) => (kind === 'ended' ? [outing] : [])));

/** The local day of a moment. */
const dayOf = ({ wallMs, offsetMin }: Moment): string =>
  new Date(wallMs + offsetMin * 60_000).toISOString().slice(0, 10);

/** A name that every file system takes. */
const plainName = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40)
    .toLowerCase() || 'outing';

/** What another version kept counts only if it says when and what. */
function readKept(found: unknown): Kept {
  const { outings, backup } = Object(found) as Partial<Kept>;
  const isLeft = (left: unknown): left is Left =>
    typeof (left as Left | null)?.wallMs === 'number' &&
    typeof (left as Left).offsetMin === 'number' &&
    typeof (left as Left).what === 'string' &&
    typeof (left as Left).whole === 'boolean';
  return {
    outings: Object.fromEntries(
      Object.entries(outings ?? {}).filter(([, left]) => isLeft(left)),
    ) as Kept['outings'],
    backup: isLeft(backup) ? backup : null,
  };
}
