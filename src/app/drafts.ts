import { type ReadonlySignal, signal } from '@preact/signals';
import type { RigId } from '../gear/ids.ts';
import {
  id,
  isFault,
  list,
  nullable,
  number,
  object,
  oneOf,
  type Reader,
  text,
} from '../gear/read.ts';
import { READY_LISTS, type ReadyListName } from '../plan/readyLists.ts';
import { madeOnce } from './desks.ts';

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
  readonly newPlan: {
    readonly rigs: readonly RigId[];
    /** Null = the first of the rigs. */
    readonly reference: RigId | null;
    readonly list: ReadyListName | 'body-heat' | 'nothing';
    /** At which ISO a body is measured; null = as its list says. */
    readonly seriesIso: string | null;
    /** Null = as its list is called. */
    readonly name: string | null;
  };
}

const EMPTY: Drafts = {
  newBody: { name: '', widthMm: null, heightMm: null, pixelsWide: null, pixelsHigh: null },
  newLens: { name: '', focalMm: null, widest: '', narrowest: '' },
  newSite: { name: '', coordinates: '' },
  newPlan: { rigs: [], reference: null, list: 'base-iso-latitude', seriesIso: null, name: null },
};

/** Far more than any field takes: a draft may hold what its field will refuse (our choice). */
const entered = text(10_000);
const figure = nullable(number((value) => value, -Number.MAX_VALUE, Number.MAX_VALUE));
const rig = id<RigId>();

const READERS: { readonly [K in keyof Drafts]: Reader<Drafts[K]> } = {
  newBody: object({
    name: entered,
    widthMm: figure,
    heightMm: figure,
    pixelsWide: figure,
    pixelsHigh: figure,
  }),
  newLens: object({ name: entered, focalMm: figure, widest: entered, narrowest: entered }),
  newSite: object({ name: entered, coordinates: entered }),
  newPlan: object({
    rigs: list(rig, 100),
    reference: nullable(rig),
    list: oneOf([...READY_LISTS, 'body-heat', 'nothing']),
    seriesIso: nullable(entered),
    name: nullable(entered),
  }),
};

/** Keeps what was entered over a wrong turn, a reload or a kill, until it is saved as a thing. */
export interface DraftDesk {
  readonly current: ReadonlySignal<Drafts>;
  change<K extends keyof Drafts>(thing: K, part: Partial<Drafts[K]>): void;
  clear(thing: keyof Drafts): void;
}

/** Where drafts are kept; the first script knows no more of them. */
export interface KeptDrafts {
  /** As they were found at the start of the app. */
  readonly found: unknown;
  keep(drafts: Drafts): void;
}

export function createDrafts({ found, keep }: KeptDrafts): DraftDesk {
  const current = signal(readDrafts(found));
  const set = (drafts: Drafts) => {
    current.value = drafts;
    keep(drafts);
  };
  return {
    current,
    change(thing, part) {
      const drafts = current.peek();
      set({ ...drafts, [thing]: { ...drafts[thing], ...part } });
    },
    clear(thing) {
      set({ ...current.peek(), [thing]: EMPTY[thing] });
    },
  };
}

/** The one desk of an app. */
export const draftDesk = madeOnce(createDrafts);

/** What another version kept counts only if this one could have kept it. */
function readDrafts(found: unknown): Drafts {
  const kept = Object(found) as Partial<Record<keyof Drafts, unknown>>;
  const read = <K extends keyof Drafts>(thing: K): Drafts[K] => {
    const draft = READERS[thing](kept[thing]);
    return isFault(draft) ? EMPTY[thing] : draft;
  };
  return {
    newBody: read('newBody'),
    newLens: read('newLens'),
    newSite: read('newSite'),
    newPlan: read('newPlan'),
  };
}
