import type { FileNames } from '../../gear/body.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import { fileNumberOf, prefixOf, stemOf } from './fileNumber.ts';
import { type Exposure, exposureOf } from './rows.ts';

/** A picture in the order in which a body took them, or a number that no file has. */
export interface Column {
  /** Its place in the list of files; null = the files' numbers leave a gap here. */
  readonly file: number | null;
  /** When it opened by the body's clock, in seconds counted as if they were UTC. */
  readonly fromS: number;
  /** The same as `fromS` for a file. */
  readonly toS: number;
  readonly exposure: Exposure;
  readonly number: number | null;
}

/** A longer jump of the numbers is another folder or a counter that was set. */
const MOST_IN_GAP = 20;

/**
 * When a file's exposure opened by the body's clock; `writesEnd` where its time is that of the end.
 * The middle of the second, where no parts of it are said.
 */
export const openedByFile = ({ time, exposureS }: CameraFile, writesEnd: boolean): number | null =>
  time && time.shownMs / 1000 + (time.subSecond ? 0 : 0.5) - (writesEnd ? (exposureS ?? 0) : 0);

/**
 * A body's pictures in the order in which it took them. Without any time they stand by their
 * numbers, at any time; where only some say a time, the others are left out.
 */
export function columnsOf(
  files: readonly CameraFile[],
  places: readonly number[],
  names: FileNames,
  writesEnd: boolean,
): readonly Column[] {
  const all = places.map((place): Column => {
    const file = files[place] as CameraFile;
    const atS = openedByFile(file, writesEnd);
    return {
      file: place,
      fromS: atS ?? Number.NEGATIVE_INFINITY,
      toS: atS ?? Number.POSITIVE_INFINITY,
      exposure: exposureOf(file.exposureS, file.fNumber, file.iso),
      number: fileNumberOf(file.name, names),
    };
  });
  const timed = all.filter(({ fromS }) => Number.isFinite(fromS));
  const name = ({ file }: Column): string => stemOf(files[file as number]?.name ?? '');
  const byNumber = (a: Column, b: Column): number =>
    (a.number ?? 0) - (b.number ?? 0) || (name(a) < name(b) ? -1 : 1);
  if (timed.length === 0) return all.sort(byNumber);
  const sorted = timed.sort((a, b) => a.fromS - b.fromS || byNumber(a, b));
  return sorted.flatMap((column, place) => {
    const next = sorted[place + 1];
    return next ? [column, ...gapBetween(column, next, files, names)] : [column];
  });
}

/** A place for each number that is missing between two files. */
function gapBetween(
  before: Column,
  after: Column,
  files: readonly CameraFile[],
  { rollsOverAfter, rawAndJpegShareNumber }: FileNames,
): readonly Column[] {
  if (before.number === null || after.number === null) return [];
  const [one, other] = [before, after].map(({ file }) =>
    prefixOf(files[file as number]?.name ?? ''),
  );
  if (one !== other) return [];
  const step = rawAndJpegShareNumber ? 1 : 2;
  const on = (after.number - before.number + rollsOverAfter) % rollsOverAfter;
  const missing = Math.round(on / step) - 1;
  if (missing < 1 || missing > MOST_IN_GAP) return [];
  const first = before.number;
  return Array.from({ length: missing }, (_, place) => ({
    file: null,
    fromS: before.fromS,
    toS: after.toS,
    exposure: exposureOf(null, null, null),
    number: ((first + step * (place + 1) - 1) % rollsOverAfter) + 1,
  }));
}
