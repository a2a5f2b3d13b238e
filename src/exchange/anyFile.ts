import { readGear } from '../gear/parse.ts';
import {
  also,
  type Fault,
  fault,
  id,
  isFault,
  list,
  object,
  type Reader,
  within,
} from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { readSite } from '../light/parse.ts';
import type { OutingId } from '../outing/ids.ts';
import { readPlan } from '../plan/parse.ts';
import { type Backup, backupFile } from './backup.ts';
import { readEvents } from './events.ts';
import { backupOfStorage, storageFrom2 } from './fromStorage.ts';
import { gearFile } from './gearFile.ts';
import { type Journal, journalFile } from './journalFile.ts';
import type { FileContent } from './json.ts';
import { backupFrom1, gearFileFrom1, journalFrom2 } from './older.ts';
import { fileReader, formatOf, parseJson } from './readJson.ts';
import { STORAGE_FORMAT, STORAGE_VERSION } from './storageFile.ts';

/*
 * Reading stands apart from writing: a log must get off the phone by what its
 * first script holds, while a file is read back at the desk.
 */

const MOST_PLANS = 10_000;
const MOST_SITES = 10_000;
const MOST_TOMBSTONES = 100_000;

/** A list in which no id stands twice. */
const eachOnce = <T extends { readonly id: string }>(reader: Reader<T>, most: number) =>
  also(list(reader, most), (things) => {
    const seen = new Set<string>();
    for (const [index, thing] of things.entries()) {
      if (seen.has(thing.id)) {
        return within(`[${index}]`, within('id', fault('id-twice', { id: thing.id })));
      }
      seen.add(thing.id);
    }
    return null;
  });

const readContent = object<Backup>({
  gear: readGear,
  plans: eachOnce(readPlan, MOST_PLANS),
  sites: eachOnce(readSite, MOST_SITES),
  events: readEvents,
  tombstones: list(id<string>(), MOST_TOMBSTONES),
});

const readBackup = fileReader(backupFile, readContent, [
  backupFrom1,
  // Its events are brought up one by one.
  (content) => content,
]);

const readStorage = fileReader<Backup>(
  { format: STORAGE_FORMAT, version: STORAGE_VERSION },
  (content) => readContent(backupOfStorage(content)),
  // Databases 1 and 2 hold bodies and plans of one shape, 3 and 4 of another.
  [(content) => content, storageFrom2, (content) => content],
);

const readGearFile = fileReader(gearFile, object<{ gear: Gear }>({ gear: readGear }), [
  gearFileFrom1,
]);

const readJournal = fileReader(
  journalFile,
  also(
    object<Journal>({
      outing: id<OutingId>(),
      events: readEvents,
      frames: () => [],
      pairs: () => [],
    }),
    ({ outing, events }) => {
      const stray = events.findIndex((event) => event.outing !== outing);
      return stray < 0
        ? null
        : within('events', within(`[${stray}]`, within('outing', fault('event-of-other-outing'))));
    },
  ),
  // Each event is brought up by itself.
  [(content) => content, journalFrom2],
);

const EMPTY: Backup = {
  gear: { bodies: [], lenses: [], rigs: [] },
  plans: [],
  sites: [],
  events: [],
  tombstones: [],
};

/**
 * Reads any of our files: a backup, what was saved of a database, gear alone, or one outing's journal. What a
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
      return readBackup(json);
    case STORAGE_FORMAT:
      return readStorage(json);
    case gearFile.format:
      return filled(readGearFile(json), ({ gear }) => ({ gear }));
    case journalFile.format:
      return filled(readJournal(json), ({ events }) => ({ events }));
    default:
      return within('format', fault('other-format', { found: format }));
  }
}

const filled = <T>(
  read: FileContent<T> | Fault,
  part: (content: T) => Partial<Backup>,
): FileContent<Backup> | Fault =>
  isFault(read) ? read : { head: read.head, content: { ...EMPTY, ...part(read.content) } };
