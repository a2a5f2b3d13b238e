import { type ReadonlySignal, signal } from '@preact/signals';
import type { Store } from '../store/contract.ts';
import type { Saving } from './saving.ts';

/** What has been entered of a thing that is not whole yet. */
export interface Drafts {
  readonly newBody: {
    readonly name: string;
    readonly widthMm: number | null;
    readonly heightMm: number | null;
    readonly pixelsWide: number | null;
    readonly pixelsHigh: number | null;
  };
  readonly newLens: {
    readonly name: string;
    readonly focalMm: number | null;
    readonly widest: string;
    readonly narrowest: string;
  };
  readonly newSite: { readonly name: string; readonly coordinates: string };
}

const EMPTY: Drafts = {
  newBody: { name: '', widthMm: null, heightMm: null, pixelsWide: null, pixelsHigh: null },
  newLens: { name: '', focalMm: null, widest: '', narrowest: '' },
  newSite: { name: '', coordinates: '' },
};

const KEY = 'drafts';

/** Keeps what was entered over a wrong turn, a reload or a kill, until it is saved as a thing. */
export interface DraftDesk {
  readonly current: ReadonlySignal<Drafts>;
  load(): Promise<void>;
  change<K extends keyof Drafts>(thing: K, part: Partial<Drafts[K]>): void;
  clear(thing: keyof Drafts): void;
}

export function createDrafts({
  store,
  saving,
}: {
  readonly store: Pick<Store, 'setting' | 'putSetting'>;
  readonly saving: Saving;
}): DraftDesk {
  const current = signal(EMPTY);
  const set = (drafts: Drafts) => {
    current.value = drafts;
    saving.save(() => store.putSetting(KEY, drafts));
  };
  return {
    current,
    async load() {
      current.value = readDrafts(await store.setting(KEY));
    },
    change(thing, part) {
      const drafts = current.peek();
      set({ ...drafts, [thing]: { ...drafts[thing], ...part } });
    },
    clear(thing) {
      set({ ...current.peek(), [thing]: EMPTY[thing] });
    },
  };
}

/** Drafts of another version count only if they have the same fields of the same kinds. */
function readDrafts(kept: unknown): Drafts {
  const read = <K extends keyof Drafts>(thing: K): Drafts[K] => {
    const empty: Readonly<Record<string, unknown>> = EMPTY[thing];
    const found = isRecord(kept) ? kept[thing] : null;
    const same =
      isRecord(found) &&
      Object.entries(empty).every(([field, value]) => {
        const entered = found[field];
        return typeof value === 'string'
          ? typeof entered === 'string'
          : entered === null || Number.isFinite(entered);
      });
    return same ? (found as Drafts[K]) : EMPTY[thing];
  };
  return { newBody: read('newBody'), newLens: read('newLens'), newSite: read('newSite') };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;
