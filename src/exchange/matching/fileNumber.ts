import type { FileNames } from '../../gear/body.ts';

/** The name without folder and ending. */
export const stemOf = (name: string): string =>
  name.slice(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1).replace(/\.[^.]*$/, '');

/**
 * The number at the end of a file's name; null where it has none, or one longer than the body
 * writes. Whatever stands before it is left to `prefixOf`: cards are renamed, numbers kept.
 */
export function fileNumberOf(name: string, { digits }: Pick<FileNames, 'digits'>): number | null {
  const found = /(\d+)$/.exec(stemOf(name))?.[1];
  return found === undefined || found.length > digits ? null : Number(found);
}

/** What stands before the number in a file's name, in small letters. */
export const prefixOf = (name: string): string => stemOf(name).replace(/\d+$/, '').toLowerCase();
