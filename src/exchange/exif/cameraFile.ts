import type { CameraFile, CameraTime } from '../../outing/cameraFile.ts';
import { isRefusal, type Refusal } from '../../science/refusal.ts';
import {
  parseCelsius,
  parseFNumber,
  parseIso,
  parseMillimetres,
  parsePixels,
  parseSeconds,
} from '../../science/units.ts';

/*
 * What a picture's Exif says, from the tags of a general reader. Names of tags and what they hold:
 * CIPA DC-008-2023 (Exif 3.0). Nothing is trusted: a tag of another shape or an impossible value is
 * as good as none.
 */

/** Tags by their Exif name, as a general reader hands them over. */
export type ExifTags = Readonly<Record<string, { readonly value?: unknown } | undefined>>;

/** A picture's file as its folder knows it. */
export interface NamedBytes {
  readonly name: string;
  readonly size: number;
}

const MOST_TEXT = 300;

/** What the file says of itself; null for all that its tags do not say. */
export function cameraFileOf(file: NamedBytes, tags: ExifTags): CameraFile {
  const exposure = ratio(tags['ExposureTime']) ?? fromApex(ratio(tags['ShutterSpeedValue']));
  return {
    name: file.name.slice(-MOST_TEXT),
    bytes: file.size,
    time: timeOf(tags),
    exposureS: within(parsed(parseSeconds, exposure), 1e-7, 1e6),
    fNumber: within(parsed(parseFNumber, ratio(tags['FNumber'])), 0.1, 1000),
    iso: within(parsed(parseIso, isoOf(tags)), 0.1, 1e8),
    focalMm: within(parsed(parseMillimetres, ratio(tags['FocalLength'])), 0.1, 1e5),
    make: text(tags['Make']),
    model: text(tags['Model']),
    serial: text(tags['BodySerialNumber']),
    lens: text(tags['LensModel']),
    pixelsWide: within(parsed(parsePixels, sideOf(tags, 'PixelXDimension', 'ImageWidth')), 1, 1e6),
    pixelsHigh: within(parsed(parsePixels, sideOf(tags, 'PixelYDimension', 'ImageLength')), 1, 1e6),
    temperature: within(parsed(parseCelsius, ratio(tags['AmbientTemperature'])), -100, 200),
  };
}

const parsed = <T extends number>(
  parse: (value: number) => T | Refusal,
  value: number | null,
): T | null => {
  if (value === null) return null;
  const read = parse(value);
  return isRefusal(read) ? null : read;
};

const within = <T extends number>(value: T | null, least: number, most: number): T | null =>
  value !== null && value >= least && value <= most ? value : null;

/** The first value of a tag that may hold several. */
const first = (value: unknown): unknown => (Array.isArray(value) ? value[0] : value);

/** A plain number, or numerator over denominator, as a rational comes. */
function ratio(tag: { readonly value?: unknown } | undefined): number | null {
  const value = tag?.value;
  if (Array.isArray(value) && Array.isArray(value[0])) return ratio({ value: value[0] });
  if (Array.isArray(value) && value.length === 2) {
    const [over, under] = value;
    return typeof over === 'number' && typeof under === 'number' && under !== 0
      ? over / under
      : null;
  }
  const plain = first(value);
  return typeof plain === 'number' && Number.isFinite(plain) ? plain : null;
}

/** Tv = -log2 t (Exif, ShutterSpeedValue). */
const fromApex = (tv: number | null): number | null => (tv === null ? null : 2 ** -tv);

/** 65535 in the two-byte tag says that the figure is too large for it, and stands in a four-byte one. */
const TOO_LARGE = 65_535;

function isoOf(tags: ExifTags): number | null {
  const short =
    ratio({ value: first(tags['ISOSpeedRatings']?.value) }) ??
    ratio({ value: first(tags['PhotographicSensitivity']?.value) });
  if (short !== null && short > 0 && short < TOO_LARGE) return short;
  return (
    ratio(tags['RecommendedExposureIndex']) ??
    ratio(tags['StandardOutputSensitivity']) ??
    ratio(tags['ISOSpeed']) ??
    (short === TOO_LARGE ? short : null)
  );
}

/** A raw's own directory may be of its small preview: Exif's figure comes first. */
const sideOf = (tags: ExifTags, ofPicture: string, ofFile: string): number | null =>
  ratio(tags[ofPicture]) ?? ratio({ value: first(tags[ofFile]?.value) });

/** One printable line, or null. */
function text(tag: { readonly value?: unknown } | undefined): string | null {
  const value = first(tag?.value);
  if (typeof value !== 'string') return null;
  const line = value
    .replace(/[\p{Cc}\p{Cs}]+/gu, ' ')
    .trim()
    .slice(0, MOST_TEXT);
  return line === '' ? null : line;
}

const TIME = /^(\d{4}):(\d\d):(\d\d)[ T](\d\d):(\d\d):(\d\d)/;
const OFFSET = /^([+-])(\d\d):(\d\d)$/;

/** When the exposure was taken, as the body's clock showed it. */
function timeOf(tags: ExifTags): CameraTime | null {
  const kinds = [
    ['DateTimeOriginal', 'SubSecTimeOriginal', 'OffsetTimeOriginal'],
    ['DateTimeDigitized', 'SubSecTimeDigitized', 'OffsetTimeDigitized'],
    ['DateTime', 'SubSecTime', 'OffsetTime'],
  ] as const;
  for (const [of, partsOf, offsetOf] of kinds) {
    const found = TIME.exec(text(tags[of]) ?? '');
    if (!found) continue;
    const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = found
      .slice(1)
      .map(Number);
    const whole = Date.UTC(year, month - 1, day, hour, minute, second);
    const back = new Date(whole);
    // 30 February, 25 o'clock and a clock that was never set say nothing.
    const real =
      back.getUTCMonth() === month - 1 && back.getUTCDate() === day && back.getUTCHours() === hour;
    if (!real || year < 1980) continue;
    const parts = /^\d{1,9}$/.exec(text(tags[partsOf]) ?? '')?.[0];
    return {
      shownMs: whole + (parts === undefined ? 0 : Math.round(Number(`0.${parts}`) * 1000)),
      offsetMin: offset(text(tags[offsetOf])),
      subSecond: parts !== undefined,
    };
  }
  return null;
}

function offset(said: string | null): number | null {
  const [, sign, hours, minutes] = OFFSET.exec(said ?? '') ?? [];
  if (hours === undefined || minutes === undefined) return null;
  const size = Number(hours) * 60 + Number(minutes);
  return size > 1440 ? null : sign === '-' ? -size : size;
}
