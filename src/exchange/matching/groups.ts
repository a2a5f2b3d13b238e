import type { CameraFile } from '../../outing/cameraFile.ts';
import { fileNumberOf, prefixOf, stemOf } from './fileNumber.ts';

/** Files that one body wrote, as far as they say. */
export interface Written {
  readonly key: string;
  readonly make: string | null;
  readonly model: string | null;
  readonly serial: string | null;
  readonly files: readonly number[];
  /** One file of each picture. */
  readonly pictures: readonly number[];
}

/** A picture's other files, by the file that stands for it. */
export type Copies = ReadonlyMap<number, number>;

const ANY_DIGITS = { digits: Number.POSITIVE_INFINITY };

const plain = (text: string | null): string | null => text?.trim().toLowerCase() || null;

/** By make, model and serial number; where there is none, by what the names begin with. */
export function groupsOf(files: readonly CameraFile[]): {
  readonly groups: readonly Written[];
  /** The file that each copy is the same picture as. */
  readonly copies: Copies;
} {
  const byKey = new Map<string, number[]>();
  files.forEach((file, place) => {
    const serial = plain(file.serial);
    const key = JSON.stringify([
      plain(file.make),
      plain(file.model),
      serial,
      serial === null ? [prefixOf(file.name), digitsOf(file.name)] : null,
    ]);
    const group = byKey.get(key);
    if (group) group.push(place);
    else byKey.set(key, [place]);
  });
  const copies = new Map<number, number>();
  const groups = [...byKey].flatMap(([key, places]): readonly Written[] => {
    for (const [copy, of] of copiesAmong(files, places)) copies.set(copy, of);
    const { make, model, serial } = files[places[0] as number] as CameraFile;
    const pictures = places.filter((place) => !copies.has(place));
    const counts = serial === null ? countsAmong(files, pictures) : [pictures];
    return counts.map((counted, count) => {
      const own = new Set(counted);
      return {
        key: count === 0 ? key : `${key} ${count + 1}`,
        make,
        model,
        serial,
        files: places.filter((place) => own.has(copies.get(place) ?? place)),
        pictures: counted,
      };
    });
  });
  return { groups, copies };
}

/** A counter goes on in small steps: what was deleted, what another body of the group took. */
const MOST_STEP = 100;
/** Fewer pictures than this are no body of their own. */
const LEAST_OF_A_BODY = 3;

/**
 * Two bodies of one model that say no serial number still count their files each for itself: the
 * pictures in the order of time, shared out among counters that only go on.
 */
function countsAmong(
  files: readonly CameraFile[],
  pictures: readonly number[],
): readonly (readonly number[])[] {
  const timeOf = (place: number): number => files[place]?.time?.shownMs ?? 0;
  const numberOf = (place: number): number =>
    fileNumberOf(files[place]?.name ?? '', ANY_DIGITS) ?? 0;
  const counts: number[][] = [];
  const inOrder = pictures.toSorted((a, b) => timeOf(a) - timeOf(b) || numberOf(a) - numberOf(b));
  for (const place of inOrder) {
    const step = (count: readonly number[]): number =>
      numberOf(place) - numberOf(count.at(-1) as number);
    const next = counts
      .filter((count) => step(count) > 0 && step(count) <= MOST_STEP)
      .sort((a, b) => step(a) - step(b))[0];
    if (next) next.push(place);
    else counts.push([place]);
  }
  const bodies = counts.filter(({ length }) => length >= LEAST_OF_A_BODY);
  const strays = counts.filter(({ length }) => length < LEAST_OF_A_BODY).flat();
  const [first, ...others] = bodies;
  if (!first) return [pictures];
  for (const place of strays) {
    const away = (count: readonly number[]): number =>
      Math.min(...count.map((other) => Math.abs(timeOf(other) - timeOf(place))));
    others.reduce((best, each) => (away(each) < away(best) ? each : best), first).push(place);
  }
  return bodies;
}

/** Bodies count with as many digits all evening. */
const digitsOf = (name: string): number => stemOf(name).length - prefixOf(name).length;

const endingOf = (name: string): string => /\.([^.]*)$/.exec(name)?.[1]?.toLowerCase() ?? '';

/**
 * Files that are one picture: the same instant and exposure, and the same name (a raw and its JPEG,
 * a second card) or neighbouring numbers with another ending. The largest stands for it.
 */
function copiesAmong(files: readonly CameraFile[], places: readonly number[]): Copies {
  const alike = new Map<string, number[]>();
  for (const place of places) {
    const { time, exposureS, fNumber, iso } = files[place] as CameraFile;
    if (time === null) continue;
    const key = JSON.stringify([time.shownMs, exposureS, fNumber, iso]);
    const others = alike.get(key);
    if (others) others.push(place);
    else alike.set(key, [place]);
  }
  const copies = new Map<number, number>();
  for (const same of alike.values()) {
    const bySize = same.toSorted((a, b) => (files[b]?.bytes ?? 0) - (files[a]?.bytes ?? 0));
    bySize.forEach((place, rank) => {
      const file = files[place] as CameraFile;
      const original = bySize
        .slice(0, rank)
        .find((other) => !copies.has(other) && isCopy(file, files[other] as CameraFile));
      if (original !== undefined) copies.set(place, original);
    });
  }
  return copies;
}

function isCopy(one: CameraFile, other: CameraFile): boolean {
  if (stemOf(one.name).toLowerCase() === stemOf(other.name).toLowerCase()) return true;
  const [a, b] = [fileNumberOf(one.name, ANY_DIGITS), fileNumberOf(other.name, ANY_DIGITS)];
  return (
    a !== null &&
    b !== null &&
    Math.abs(a - b) === 1 &&
    endingOf(one.name) !== endingOf(other.name) &&
    prefixOf(one.name) === prefixOf(other.name)
  );
}
