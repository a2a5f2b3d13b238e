import type { SkyCondition } from '../science/cloud.ts';
import { crossings } from '../science/crossings.ts';
import { moonPhase, solarDayNear, solarNoonAfter } from '../science/ephemeris.ts';
import { discAboveRidge } from '../science/ridge.ts';
import {
  moonEvents,
  type SkyEvent,
  SUN_LIMITS,
  type SunEventName,
  sunEvents,
} from '../science/skyEvents.ts';
import type { SkyPath } from '../science/skyPath.ts';
import { type DayState, dayState, type Extreme, sunExtremes } from '../science/sunDay.ts';
import { type Degrees, later, type Share, type UtcMs } from '../science/units.ts';
import { placeOf, type Site } from './site.ts';
import { pathOver, skyTableOf } from './skyOver.ts';
import type { SkyTable, Stretch } from './skyTable.ts';
import { clockNoon, daysLater, localTime } from './zones.ts';

/*
 * One night of a site, from solar noon to solar noon. Needs the ephemeris: loads later.
 */

/** Day, the three twilights and night, by the sun's altitude. */
export type BandName = 'day' | 'civil' | 'nautical' | 'astronomical' | 'night';

export interface Band extends Stretch {
  readonly band: BandName;
}

/** The moon of one night. */
export interface NightMoon {
  /** The lit part of the disc, in the middle of the night. */
  readonly litShare: Share;
  readonly waxing: boolean;
  /** When it stands above the horizon. */
  readonly up: readonly Stretch[];
}

/** Everything that a night's sky will do. Any event may be absent, and near the poles come twice. */
export interface Night {
  /** By the site's calendar: the date of the noon at which it starts. */
  readonly date: string;
  /** Solar noon, to the minute before. */
  readonly noonMs: UtcMs;
  /** The next one, to the minute after. */
  readonly nextNoonMs: UtcMs;
  readonly sky: SkyTable;
  /** In order. */
  readonly events: readonly SkyEvent[];
  /** When the sun's disc is gone behind the ridge; null where it is open or never gets there. */
  readonly behindRidgeMs: UtcMs | null;
  /** Without gaps from noon to noon. */
  readonly bands: readonly Band[];
  readonly dayState: DayState;
  readonly lowestSun: Extreme;
  readonly moon: NightMoon;
}

/**
 * The night that follows the solar noon nearest to 12:00 by the site's clock on a date
 * (YYYY-MM-DD), to the next solar noon.
 */
export function nightOf(site: Site, date: string, cloud: SkyCondition | null): Night {
  const place = placeOf(site);
  const { noon, nextNoon } = solarDayNear(clockNoon(site.zone, date), place);
  const path = pathOver(site, noon, nextNoon);
  const sun = sunEvents(path);
  const { lowest, highest } = sunExtremes(path);
  return {
    date,
    noonMs: path.from,
    nextNoonMs: path.to,
    sky: skyTableOf(site, path, cloud),
    events: [...sun, ...moonEvents(path)].sort((a, b) => a.at - b.at),
    behindRidgeMs: behindRidge(path, lowest.at, site.ridgeDeg),
    bands: bandsOf(path, sun),
    dayState: dayState(lowest.altitude, highest.altitude),
    lowestSun: lowest,
    moon: moonOf(path),
  };
}

/** Until so long before noon, people mean by 'tonight' the night that is ending. */
const BEFORE_NOON_S = 6 * 3600;

/**
 * The date of the evening that someone at the site means by 'tonight': from six hours before a
 * solar noon on, the evening that follows it.
 */
export function eveningDate(site: Site, now: UtcMs): string {
  const place = placeOf(site);
  const noon = solarNoonAfter(later(now, BEFORE_NOON_S - 86_400), place);
  // A clock may be hours off the sun, so of the dates around take the one that leads back here.
  const { date } = localTime(site.zone, noon);
  const away = (each: string): number =>
    Math.abs(solarDayNear(clockNoon(site.zone, each), place).noon - noon);
  return [daysLater(date, -1), daysLater(date, 1)].reduce(
    (best, each) => (away(each) < away(best) ? each : best),
    date,
  );
}

const BELOW: Readonly<Record<SunEventName, BandName>> = {
  sunset: 'civil',
  'civil-dusk': 'nautical',
  'nautical-dusk': 'astronomical',
  'astronomical-dusk': 'night',
  'astronomical-dawn': 'astronomical',
  'nautical-dawn': 'nautical',
  'civil-dawn': 'civil',
  sunrise: 'day',
};

function bandAt(sunAltitude: Degrees): BandName {
  if (sunAltitude >= SUN_LIMITS.horizon) return 'day';
  if (sunAltitude >= SUN_LIMITS.civil) return 'civil';
  if (sunAltitude >= SUN_LIMITS.nautical) return 'nautical';
  return sunAltitude >= SUN_LIMITS.astronomical ? 'astronomical' : 'night';
}

function bandsOf(
  { from, to, sunAltitude }: SkyPath,
  events: readonly SkyEvent<SunEventName>[],
): readonly Band[] {
  const bands: Band[] = [];
  let band = bandAt(sunAltitude(from));
  let fromMs = from;
  for (const { event, at } of events) {
    bands.push({ band, fromMs, toMs: at });
    band = BELOW[event];
    fromMs = at;
  }
  return [...bands, { band, fromMs, toMs: to }];
}

function behindRidge(path: SkyPath, lowest: UtcMs, ridge: Degrees): UtcMs | null {
  if (ridge <= 0) return null;
  const above = (at: UtcMs): number => discAboveRidge(path.sunAltitude(at), ridge);
  // Just above nothing: the last of the disc.
  return crossings(above, 1e-6, path.from, lowest).find(({ rising }) => !rising)?.at ?? null;
}

function moonOf(path: SkyPath): NightMoon {
  const middle = ((path.from + path.to) / 2) as UtcMs;
  const events = moonEvents(path);
  const up: Stretch[] = [];
  const firstIsSet = events[0]?.event === 'moonset';
  const upThroughout = events.length === 0 && path.moonAltitude(path.from) > 0;
  let fromMs = firstIsSet || upThroughout ? path.from : null;
  for (const { event, at } of events) {
    if (event === 'moonset' && fromMs !== null) up.push({ fromMs, toMs: at });
    fromMs = event === 'moonrise' ? at : null;
  }
  if (fromMs !== null) up.push({ fromMs, toMs: path.to });
  const { litShare } = moonPhase(middle);
  return { litShare, waxing: path.moonPhaseAngle(path.to) < path.moonPhaseAngle(path.from), up };
}
