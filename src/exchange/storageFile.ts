import type { Stamp } from './json.ts';

/**
 * All that lies in the browser's database, as it lies there: the way out where the app cannot open
 * it, because a newer version wrote it or a mistake of ours stands in the way. Unlike a backup it
 * is not understood by whoever writes it.
 */
export interface Storage {
  /** The records of each store, by the store's name. */
  readonly stores: Readonly<Record<string, readonly unknown[]>>;
}

export const STORAGE_FORMAT = 'evenfall-storage';
/** The database that this code reads back from such a file; a newer one is refused whole. */
export const STORAGE_VERSION = 4;

/** @param version the database's own. */
export const writeStorage = (version: number, { stores }: Storage, stamp: Stamp): string =>
  JSON.stringify({ format: STORAGE_FORMAT, version, ...stamp, stores });
