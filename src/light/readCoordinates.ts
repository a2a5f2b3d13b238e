import { type Place, parseLatitude, parseLongitude } from '../science/place.ts';
import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';
import type { Degrees } from '../science/units.ts';

/*
 * Coordinates as people type and copy them: decimal degrees, degrees and decimal minutes, or
 * degrees, minutes and seconds; a sign or a letter; point or comma before the decimals.
 */

/** Which letters go with an axis, positive first. */
const LETTERS = { lat: ['N', 'S'], lon: ['E', 'W'] } as const;
type Axis = keyof typeof LETTERS;

const figure = (text: string): number => Number(text.replace(',', '.'));

const WHOLE = /^\d+$/;
const NUMBER = /^\d+(?:[.,]\d+)?$/;

/** Degrees from one to three figures; null unless only the last has decimals and none runs over. */
function sexagesimal(figures: readonly string[]): number | null {
  const [degrees, minutes = '0', seconds = '0'] = figures;
  if (degrees === undefined || figures.length > 3) return null;
  const fits = figures.every((each, index) =>
    (index === figures.length - 1 ? NUMBER : WHOLE).test(each),
  );
  if (!fits || figure(minutes) >= 60 || figure(seconds) >= 60) return null;
  return figure(degrees) + figure(minutes) / 60 + figure(seconds) / 3600;
}

/** The typed text in capitals, one kind of minus, marks of degrees, minutes and seconds as gaps. */
const tidied = (typed: string): string =>
  typed
    .toUpperCase()
    .replace(/[−–]/g, '-')
    .replace(/[°º'’′"”″]/g, ' ')
    .trim();

/** One angle with its sign or letter. */
function readAngle(text: string, axis: Axis): number | Refusal {
  const [positive, negative] = LETTERS[axis];
  const letters = text.match(/[A-Z]/g) ?? [];
  const letter = letters[0];
  if (letters.length > 1) return refuse('coordinates-unreadable');
  if (letter !== undefined && letter !== positive && letter !== negative) {
    return refuse(/[NSEW]/.test(letter) ? 'wrong-axis' : 'coordinates-unreadable');
  }
  const bare = text.replace(/^[NSEW]\s*|\s*[NSEW]$/g, '');
  const sign = /^[+-]/.exec(bare)?.[0];
  if (sign !== undefined && letter !== undefined) return refuse('sign-and-letter');
  const size = sexagesimal(
    bare
      .slice(sign?.length ?? 0)
      .trim()
      .split(/\s+/),
  );
  if (size === null) return refuse('coordinates-unreadable');
  return sign === '-' || letter === negative ? -size || 0 : size;
}

/** A latitude as typed, N and plus positive; refuses what cannot be read or is out of range. */
export function readLatitude(typed: string): Degrees | Refusal {
  const angle = readAngle(tidied(typed), 'lat');
  return isRefusal(angle) ? angle : parseLatitude(angle);
}

/**
 * A longitude as typed, E and plus positive; also 0 to 360 eastward. Comes back from -180 to 180.
 * With a letter it may not pass 180.
 */
export function readLongitude(typed: string): Degrees | Refusal {
  const text = tidied(typed);
  const angle = readAngle(text, 'lon');
  if (isRefusal(angle)) return angle;
  return /[EW]/.test(text) && Math.abs(angle) > 180
    ? refuse('longitude-out-of-range')
    : parseLongitude(angle);
}

/** The text of latitude and longitude; null if it cannot be told where one ends. */
function halves(text: string): readonly [string, string] | null {
  const marked =
    /^(.*[NS])[\s,;]*(\S.*[EW])$/.exec(text) ?? /^([NS].*?)[\s,;]*([EW].*)$/.exec(text);
  if (marked?.[1] !== undefined && marked[2] !== undefined) return [marked[1], marked[2]];
  // A comma followed by a gap, or the only comma between two points, parts the two.
  const parted =
    /^([^;]+);([^;]+)$/.exec(text) ??
    /^(.+?),\s+(.+)$/.exec(text) ??
    /^([+-]?\d+\.\d+),([+-]?\d+\.\d+)$/.exec(text);
  if (parted?.[1] !== undefined && parted[2] !== undefined)
    return [parted[1].trim(), parted[2].trim()];
  const figures = text.split(/\s+/);
  const half = figures.length / 2;
  return Number.isInteger(half)
    ? [figures.slice(0, half).join(' '), figures.slice(half).join(' ')]
    : null;
}

/**
 * Latitude and longitude in one text, in this order: '54.90 N 3.60 W', '54,9 -3,6',
 * '54.9,-3.6', `54°54'0"N 3°36'0"W`.
 *
 * @returns a refusal: 'coordinates-unreadable', 'wrong-axis' (a letter of the other axis),
 * 'sign-and-letter', 'latitude-out-of-range' or 'longitude-out-of-range'.
 */
export function readCoordinates(typed: string): Pick<Place, 'lat' | 'lon'> | Refusal {
  const found = halves(tidied(typed));
  if (!found) return refuse('coordinates-unreadable');
  const lat = readLatitude(found[0]);
  const lon = readLongitude(found[1]);
  if (isRefusal(lat)) return lat;
  return isRefusal(lon) ? lon : { lat, lon };
}
