import { computed, effect, type ReadonlySignal, signal } from '@preact/signals';
import {
  type ChosenFile,
  fileChooser,
  openChosen,
  type SaveFilePicker,
} from '../device/chosenFile.ts';
import type { Clock } from '../device/clock.ts';
import type { OutingId } from '../outing/ids.ts';
import type { RunState } from '../outing/state.ts';
import type { Store } from '../store/contract.ts';
import { madeOnce } from './desks.ts';
import type { FileDesk } from './files.ts';
import type { Moment } from './log.ts';
import type { RunDesk } from './run.ts';
import type { Saving } from './saving.ts';

/** How a copy of the journal leaves after each set. */
export type SafetyCopy =
  | { readonly way: 'off' }
  /** To the share sheet, by a tap; `due` once a set is through and none was handed on since. */
  | { readonly way: 'offer'; readonly due: boolean }
  /** Into a chosen file, by itself. */
  | {
      readonly way: 'file';
      readonly name: string;
      readonly state: 'waits' | 'asks' | 'failed' | { readonly written: Moment };
    };

/**
 * Copies of the outing in hand outside the browser's storage. The journal is the truth; a copy that
 * fails takes nothing from it.
 */
export interface SafetyDesk {
  readonly copy: ReadonlySignal<SafetyCopy>;
  /** Whether a file can be chosen here; else copies can only be offered. */
  readonly choosesFiles: boolean;
  load(): Promise<void>;
  /** Lets the user choose the file of the outing in hand. Call it straight from a tap. */
  chooseFile(): Promise<void>;
  /** Asks to go on with the file chosen before this page was loaded. Call it straight from a tap. */
  goOn(): Promise<void>;
  offer(on: boolean): void;
  /** The copy that is due was handed on, or is not wanted now. */
  settle(): void;
}

const KEY = 'safety-copy';

/** What is kept: the handle of a chosen file, or that copies are offered. */
interface Kept {
  readonly handle: unknown;
  /** The only outing that is ever written into the file: the next one must not replace it. */
  readonly outing: OutingId | null;
  readonly offer: boolean;
}

/** What the desk needs of the app. */
export interface SafetyWorld {
  readonly pick: SaveFilePicker | undefined;
  readonly run: Pick<RunDesk, 'state' | 'ownership'>;
  readonly files: Pick<FileDesk, 'journalText'>;
  readonly store: Pick<Store, 'setting' | 'putSetting'>;
  readonly saving: Pick<Saving, 'save'>;
  readonly clock: Clock;
}

export function createSafetyDesk({
  pick,
  run,
  files,
  store,
  saving,
  clock,
}: SafetyWorld): SafetyDesk {
  const choose = fileChooser(pick);
  const copy = signal<SafetyCopy>({ way: 'off' });
  let file: ChosenFile | null = null;
  let fileFor: OutingId | null = null;
  /** Copies one after the other: the later one holds all that the earlier one did. */
  let turn = Promise.resolve();

  const become = (state: Extract<SafetyCopy, { way: 'file' }>['state']): void => {
    if (file) copy.value = { way: 'file', name: file.name, state };
  };
  const write = async (outing: OutingId): Promise<void> => {
    const into = file;
    if (!into) return;
    try {
      if (!(await into.mayWrite())) return become('asks');
      await into.write(await files.journalText(outing));
      if (into === file) become({ written: clock.now() });
    } catch {
      // Whatever it was, the file is not to be relied on; the screen says so.
      if (into === file) become('failed');
    }
  };
  const copyNow = (): void => {
    const outing = run.state.peek()?.outing;
    const { way } = copy.peek();
    if (outing === undefined || run.ownership.peek() === 'elsewhere') return;
    if (way === 'offer') copy.value = { way, due: true };
    else if (way === 'file' && outing === fileFor) turn = turn.then(() => write(outing));
  };

  let before: { readonly outing: OutingId; readonly ends: number } | null = null;
  effect(() => {
    const state = run.state.value;
    const last = before;
    before = state && { outing: state.outing, ends: endsIn(state) };
    if (before && last?.outing === before.outing && before.ends > last.ends) copyNow();
  });

  const keep = (kept: Kept): void => saving.save(() => store.putSetting(KEY, kept));

  return {
    copy: computed(() => {
      const { value } = copy;
      return value.way === 'file' && run.state.value?.outing !== fileFor ? { way: 'off' } : value;
    }),
    choosesFiles: choose !== null,
    async load() {
      const { handle, outing, offer } = Object(await store.setting(KEY)) as Partial<Kept>;
      file = openChosen(handle);
      fileFor = outing ?? null;
      if (file) become((await file.mayWrite()) ? 'waits' : 'asks');
      else if (offer === true) copy.value = { way: 'offer', due: false };
    },
    async chooseFile() {
      const outing = run.state.peek()?.outing;
      const chosen = outing && (await choose?.(`evenfall-${outing}.json`));
      if (!chosen) return;
      file = chosen;
      fileFor = outing;
      become('waits');
      keep({ handle: chosen.handle, outing, offer: false });
      // At once, so that a file that cannot be written is found out by daylight.
      copyNow();
    },
    async goOn() {
      if (await file?.askToWrite()) copyNow();
    },
    offer(on) {
      file = null;
      copy.value = on ? { way: 'offer', due: false } : { way: 'off' };
      keep({ handle: null, outing: null, offer: on });
    },
    settle() {
      if (copy.peek().way === 'offer') copy.value = { way: 'offer', due: false };
    },
  };
}

/** The one desk of an app, which looks for what was chosen before. */
export const safetyDesk = madeOnce((world: SafetyWorld) => {
  const desk = createSafetyDesk(world);
  // What cannot be read now is chosen anew; the set-up sheet shows that there is none.
  desk.load().catch(() => undefined);
  return desk;
});

/** How many ends there are behind: of sets of which no frame is left, and of the outing. */
function endsIn({ plan, queue, open, made, phase }: RunState): number {
  const unrecorded = made.filter(({ id }) => open.includes(id)).map(({ planned }) => planned);
  const left = new Set([...queue, ...unrecorded].map(({ set }) => set));
  return plan.sets.filter(({ id }) => !left.has(id)).length + (phase === 'ended' ? 1 : 0);
}
