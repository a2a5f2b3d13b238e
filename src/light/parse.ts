import {
  also,
  type Fields,
  fault,
  id,
  line,
  list,
  name,
  number,
  object,
  oneOf,
  type Reader,
  tagged,
  text,
  truth,
} from '../gear/read.ts';
import { parseLatitude, parseLongitude } from '../science/place.ts';
import { isRefusal } from '../science/refusal.ts';
import { parseDegrees, parseEv, parseHeight, parseMinutesEast } from '../science/units.ts';
import { readCloud, readUtc } from './readSky.ts';
import type { Site, SiteId } from './site.ts';
import type { SkyTable, Stretch } from './skyTable.ts';
import { parseZoneName, type Zone } from './zones.ts';

/*
 * What may be stored as a site or a sky. The bounds are our own: wide enough for any place on
 * earth, close enough to stop a slip of the finger or a wrong unit.
 */

const MOST_NAME = 60;
const MOST_NOTE = 2000;
/** Two days and to spare. */
const MOST_STEPS = 3000;
const MOST_STRETCHES = 20;

/** A zone that this browser can tell the time of. */
export const readZone: Reader<Zone> = tagged<Zone, 'kind'>('kind', {
  iana: object<Extract<Zone, { kind: 'iana' }>>({
    kind: oneOf(['iana']),
    name: also(line(64), (zone) =>
      isRefusal(parseZoneName(zone)) ? fault('zone-unknown', { zone }) : null,
    ),
  }),
  fixed: object<Extract<Zone, { kind: 'fixed' }>>({
    kind: oneOf(['fixed']),
    offsetMin: number(parseMinutesEast, -14 * 60, 14 * 60, 'min'),
  }),
});

/** A reader for each field of a site, for a form that checks a field as it is left. */
export const siteFields: Fields<Site> = {
  id: id<SiteId>(),
  name: name(MOST_NAME),
  latDeg: number(parseLatitude, -90, 90, '°'),
  lonDeg: number(parseLongitude, -180, 180, '°'),
  heightM: number(parseHeight, -500, 9000, 'm'),
  zone: readZone,
  ridgeDeg: number(parseDegrees, 0, 60, '°'),
  note: text(MOST_NOTE),
  invented: truth,
};

export const readSite: Reader<Site> = object<Site>(siteFields);

const readStretch: Reader<Stretch> = also(
  object<Stretch>({ fromMs: readUtc, toMs: readUtc }),
  ({ fromMs, toMs }) => (fromMs > toMs ? fault('stretch-backward') : null),
);

/** The sky that an outing stores at its start. */
export const readSkyTable: Reader<SkyTable> = object<SkyTable>({
  startMs: readUtc,
  clearEv100: list(number(parseEv, -50, 50, 'EV'), MOST_STEPS),
  cloud: readCloud,
  dark: list(readStretch, MOST_STRETCHES),
});
