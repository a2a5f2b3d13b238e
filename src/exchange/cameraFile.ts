import type { RigId } from '../gear/ids.ts';
import {
  id,
  line,
  name,
  nullable,
  number,
  object,
  oneOf,
  type Reader,
  truth,
  whole,
} from '../gear/read.ts';
import type {
  BodyClock,
  CameraFile,
  CameraTime,
  EvenedUp,
  MatchedFile,
} from '../outing/cameraFile.ts';
import type { MadeId } from '../outing/ids.ts';
import type { SetId } from '../plan/ids.ts';
import {
  parseCelsius,
  parseDuration,
  parseFNumber,
  parseIso,
  parseMillimetres,
  parsePixels,
  parseSeconds,
  parseStops,
  type Seconds,
} from '../science/units.ts';

/* What a journal holds of pictures' files, from unknown JSON. */

/** The last instant that a date can name. */
const MOST_MS = 8.64e15;
/** Longer than any exposure of one outing. */
const MOST_S = 1e6;
/** A body's clock may stand in another century. */
const MOST_AHEAD_S = 1e11;
const MOST_TEXT = 300;
const MOST_BYTES = 1e12;
const MOST_STOPS = 60;

const instant = number((value) => value, -MOST_MS, MOST_MS);
const readStops = number(parseStops, -MOST_STOPS, MOST_STOPS, 'stop');
/** A difference of two clocks, which may be negative. */
const signedSeconds = number((value) => value as Seconds, -MOST_AHEAD_S, MOST_AHEAD_S, 's');
const said = nullable(line(MOST_TEXT));

const readCameraTime: Reader<CameraTime> = object<CameraTime>({
  shownMs: instant,
  offsetMin: nullable(whole(-1440, 1440)),
  subSecond: truth,
});

/** What a picture's file says of itself. */
export const readCameraFile: Reader<CameraFile> = object<CameraFile>({
  name: name(MOST_TEXT),
  bytes: whole(0, MOST_BYTES),
  time: nullable(readCameraTime),
  exposureS: nullable(number(parseSeconds, 1e-7, MOST_S, 's')),
  fNumber: nullable(number(parseFNumber, 0.1, 1000)),
  iso: nullable(number(parseIso, 0.1, 1e8)),
  focalMm: nullable(number(parseMillimetres, 0.1, 1e5, 'mm')),
  make: said,
  model: said,
  serial: said,
  lens: said,
  pixelsWide: nullable(number(parsePixels, 1, 1e6, 'px')),
  pixelsHigh: nullable(number(parsePixels, 1, 1e6, 'px')),
  temperature: nullable(number(parseCelsius, -100, 200)),
});

export const readMatchedFile: Reader<MatchedFile> = object<MatchedFile>({
  made: id<MadeId>(),
  file: nullable(readCameraFile),
});

export const readBodyClock: Reader<BodyClock> = object<BodyClock>({
  rig: id<RigId>(),
  aheadS: signedSeconds,
  sigmaS: number(parseDuration, 0, MOST_AHEAD_S, 's'),
  gainsSPerHour: number((value) => value as Seconds, -3600, 3600, 's'),
  atMs: instant,
  from: oneOf(['clock-frame', 'sequence', 'by-hand']),
});

export const readEvenedUp: Reader<EvenedUp> = object<EvenedUp>({
  set: id<SetId>(),
  rig: id<RigId>(),
  pass: nullable(whole(1, 1000)),
  needed: nullable(
    object<NonNullable<EvenedUp['needed']>>({
      stops: readStops,
      sigma: nullable(number(parseStops, 0, MOST_STOPS, 'stop')),
      by: oneOf(['typed', 'region']),
    }),
  ),
});
