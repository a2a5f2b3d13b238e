import { computed, type ReadonlySignal, signal } from '@preact/signals';
import { matchFiles } from '../exchange/matching/matchFiles.ts';
import { type Decided, type Matching, NOTHING_DECIDED } from '../exchange/matching/types.ts';
import type { RigId } from '../gear/ids.ts';
import type { BodyClock, CameraFile, MatchedFile } from '../outing/cameraFile.ts';
import type { MadeId, OutingId } from '../outing/ids.ts';
import type { Tap } from '../outing/next.ts';
import { madeOnce } from './desks.ts';
import type { Served } from './journal.ts';
import type { LogDesk, OutingLog } from './log.ts';
import { type PicturesAnswer, readInWorker, type StartReading } from './pictureReading.ts';
import type { Unread } from './readPicture.ts';

/** How the reading of pictures of an outing stands. */
export type PicturesState =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading'; readonly done: number; readonly of: number }
  | {
      readonly kind: 'read';
      readonly files: readonly CameraFile[];
      readonly unread: readonly UnreadFile[];
      /** False if it was cancelled before all were read. */
      readonly whole: boolean;
    }
  | { readonly kind: 'failed' };

/** A chosen file that says nothing of itself. */
export interface UnreadFile {
  readonly name: string;
  readonly why: Unread;
}

/** What somebody says about one of the questions of a matching. */
export type Decision =
  | { readonly ask: 'which-rig'; readonly group: string; readonly rig: RigId | null }
  | { readonly ask: 'which-clock'; readonly clock: BodyClock }
  | { readonly ask: 'which-file'; readonly made: MadeId; readonly file: number | null };

/** The pictures of one outing at a time: read, matched, decided, accepted. */
export interface PictureDesk {
  state(outing: OutingId): PicturesState;
  /** Reads these, in place of what was chosen before; ends a reading that is under way. */
  choose(outing: OutingId, files: readonly File[]): void;
  /** Ends the reading; what has been read by then stays. */
  cancel(): void;
  /** How frames and files belong together; null while there is nothing to match. */
  matching(log: OutingLog): Matching | null;
  decide(decision: Decision): void;
  /** How many frames would get a file, or lose theirs, by `accept`. */
  ready(log: OutingLog): number;
  /** Writes what is sure or decided, and the clocks, as one event. */
  accept(log: OutingLog): Promise<Served>;
  /** Says by hand which file a frame has, or that it has none, as one event. */
  say(made: MadeId, file: CameraFile | null): Promise<Served>;
  /** A chosen picture itself, as long as the page lives; null if it is not at hand. */
  picture(file: CameraFile): File | null;
}

/** What the desk needs of the app. */
export interface PictureWorld {
  readonly log: Pick<LogDesk, 'tap'>;
}

interface Chosen {
  readonly outing: OutingId;
  readonly of: number;
  readonly files: readonly CameraFile[];
  readonly unread: readonly UnreadFile[];
  readonly how: 'reading' | 'whole' | 'cancelled' | 'failed';
}

const NONE: PicturesState = { kind: 'none' };
const NOTHING: Served = { how: 'refused', rule: 'nothing-to-match' };

/** The same bytes under the same name. */
const keyOf = ({ name, size }: { readonly name: string; readonly size: number }): string =>
  `${size} ${name}`;

const keyOfFile = ({ name, bytes }: CameraFile): string => keyOf({ name, size: bytes });

/** Files in the order of their names, as a folder shows them: what is worked out must not hang on who was read first. */
const byName = (a: { readonly name: string }, b: { readonly name: string }): number =>
  a.name < b.name ? -1 : a.name > b.name ? 1 : 0;

export function createPictureDesk({ log }: PictureWorld, start: StartReading): PictureDesk {
  const chosen = signal<Chosen | null>(null);
  const decided = signal<Decided>(NOTHING_DECIDED);
  let pictures: ReadonlyMap<string, File> = new Map();
  let end = () => {};

  const hear = (answer: PicturesAnswer): void => {
    const last = chosen.peek();
    if (last?.how !== 'reading') return;
    if (answer.kind === 'failed') chosen.value = { ...last, how: 'failed' };
    else if (answer.kind === 'done') chosen.value = { ...last, how: 'whole' };
    else {
      const files = [...last.files];
      const unread = [...last.unread];
      for (const one of answer.pictures) {
        if ('read' in one) files.push(one.read);
        else unread.push({ name: one.name, why: one.unread });
      }
      chosen.value = { ...last, files, unread };
    }
  };

  const sorted = computed((): readonly CameraFile[] =>
    [...(chosen.value?.files ?? [])].sort(byName),
  );
  const matchings = new WeakMap<OutingLog, ReadonlySignal<Matching | null>>();
  const matchingOf = (of: OutingLog): ReadonlySignal<Matching | null> => {
    const known =
      matchings.get(of) ??
      computed((): Matching | null => {
        const now = chosen.value;
        if (now === null || now.outing !== of.journal.outing || now.how === 'reading') return null;
        if (now.how === 'failed' || sorted.value.length === 0) return null;
        return matchFiles(of.journal.state.value, of.frames.value, sorted.value, decided.value);
      });
    matchings.set(of, known);
    return known;
  };

  /** What is sure or decided and does not stand in the journal yet. */
  const toWrite = (of: OutingLog, matching: Matching | null): readonly MatchedFile[] => {
    const written = of.journal.state.value.files;
    return (matching?.frames ?? []).flatMap(({ made, file, sure, said }): MatchedFile[] => {
      if (!sure && !said) return [];
      const found = file === null ? null : sorted.value[file];
      if (found === undefined) return [];
      const before = written.get(made);
      // That a frame has no file is an answer only if somebody has just given it.
      if (found === null) {
        return decided.value.files.has(made) && before !== null ? [{ made, file: null }] : [];
      }
      return before && keyOfFile(before) === keyOfFile(found) ? [] : [{ made, file: found }];
    });
  };

  const tap = async (what: Tap): Promise<Served> => log.tap(what);

  return {
    state(outing) {
      const now = chosen.value;
      if (now?.outing !== outing) return NONE;
      if (now.how === 'failed') return { kind: 'failed' };
      if (now.how === 'reading') {
        return { kind: 'reading', done: now.files.length + now.unread.length, of: now.of };
      }
      return {
        kind: 'read',
        files: sorted.value,
        unread: [...now.unread].sort(byName),
        whole: now.how === 'whole',
      };
    },
    choose(outing, files) {
      end();
      if (files.length === 0) return;
      pictures = new Map(files.map((file) => [keyOf(file), file]));
      decided.value = NOTHING_DECIDED;
      chosen.value = { outing, of: files.length, files: [], unread: [], how: 'reading' };
      let wanted = true;
      const stop = start(files, (answer) => {
        if (wanted) hear(answer);
      });
      end = () => {
        wanted = false;
        stop();
      };
    },
    cancel() {
      const last = chosen.peek();
      if (last?.how !== 'reading') return;
      end();
      chosen.value = { ...last, how: 'cancelled' };
    },
    matching: (of) => matchingOf(of).value,
    decide(decision) {
      const { rigs, clocks, files } = decided.peek();
      decided.value =
        decision.ask === 'which-rig'
          ? { rigs: new Map([...rigs, [decision.group, decision.rig]]), clocks, files }
          : decision.ask === 'which-clock'
            ? { rigs, clocks: new Map([...clocks, [decision.clock.rig, decision.clock]]), files }
            : { rigs, clocks, files: new Map([...files, [decision.made, decision.file]]) };
    },
    ready: (of) => toWrite(of, matchingOf(of).value).length,
    async accept(of) {
      const matching = matchingOf(of).peek();
      if (matching === null) return NOTHING;
      const { clocks } = matching;
      const served = await tap({ tap: 'match-files', files: toWrite(of, matching), clocks });
      if (served.how !== 'refused') decided.value = NOTHING_DECIDED;
      return served;
    },
    say: (made, file) => tap({ tap: 'match-files', files: [{ made, file }], clocks: [] }),
    picture: (file) => pictures.get(keyOfFile(file)) ?? null,
  };
}

/** The one desk of an app. */
export const pictureDesk = madeOnce((world: PictureWorld) =>
  createPictureDesk(world, readInWorker),
);
