import { type Fault, fault, isFault, within } from '../gear/read.ts';
import { type Backup, backupFile } from './backup.ts';
import { gearFile } from './gearFile.ts';
import { journalFile } from './journalFile.ts';
import { type FileContent, formatOf, parseJson } from './json.ts';

const EMPTY: Backup = {
  gear: { bodies: [], lenses: [], rigs: [] },
  plans: [],
  sites: [],
  events: [],
  tombstones: [],
};

/**
 * Reads any of our files: a backup, gear alone, or one outing's journal. What a
 * file does not hold is empty. Whole or not at all: nothing is to be written
 * before this has answered.
 *
 * @returns the first fault with its place. Look at the size of a file (`MOST_BYTES`) before its
 *   text is loaded.
 */
export function readAnyFile(file: string): FileContent<Backup> | Fault {
  const json = parseJson(file);
  if (isFault(json)) return json;
  const format = formatOf(json);
  switch (format) {
    case backupFile.format:
      return backupFile.read(json);
    case gearFile.format:
      return filled(gearFile.read(json), ({ gear }) => ({ gear }));
    case journalFile.format:
      return filled(journalFile.read(json), ({ events }) => ({ events }));
    default:
      return within('format', fault('other-format', { found: format }));
  }
}

const filled = <T>(
  read: FileContent<T> | Fault,
  part: (content: T) => Partial<Backup>,
): FileContent<Backup> | Fault =>
  isFault(read) ? read : { head: read.head, content: { ...EMPTY, ...part(read.content) } };
