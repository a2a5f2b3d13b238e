import {
  AstroTime,
  Body,
  Equator,
  EquatorFromVector,
  GeoVector,
  Horizon,
  Illumination,
  KM_PER_AU,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  SearchHourAngle,
  SearchMoonPhase,
} from 'astronomy-engine';
import type { Place } from './place.ts';
import { type Degrees, type Kilometres, later, type Share, type UtcMs, utc } from './units.ts';

/*
 * The positions of sun and moon. The only module that knows the library, which weighs more than the
 * rest of the sciences together: nothing that the app needs at once may import it.
 *
 * UTC is taken as UT1, which differs by less than 0.9 s: 0.004 degree. Measured against the sheet in
 * test/published: sun within 0.001 degree, moon within 0.005.
 */

/** Where a body stands as seen from a place, without refraction. */
export interface Position {
  /** Of the centre, above the level horizon. */
  readonly altitude: Degrees;
  /** From north through east, 0 to 360; without meaning at the zenith and at the poles. */
  readonly azimuth: Degrees;
}

/** Where a body stands among the stars as seen from the middle of the earth, equator of date. */
export interface Equatorial {
  /** 0 to 360. */
  readonly rightAscension: Degrees;
  readonly declination: Degrees;
  readonly distance: Kilometres;
}

/** How the moon is lit and how far it is, as seen from the middle of the earth. */
export interface MoonPhase {
  /** Between sun and earth as seen from the moon: 0 at full, 180 at new. */
  readonly phaseAngle: Degrees;
  /** The lit part of the disc. */
  readonly litShare: Share;
  /** Equatorial horizontal parallax. */
  readonly parallax: Degrees;
}

const EARTH_RADIUS_KM = 6378.137;

const timeOf = (at: UtcMs): AstroTime => new AstroTime(new Date(at));
const instantOf = (time: AstroTime): UtcMs => utc(time.date.getTime());
const observerAt = ({ lat, lon, height }: Place): Observer => new Observer(lat, lon, height);
const inDegrees = (radians: number): Degrees => ((radians * 180) / Math.PI) as Degrees;

function positionOf(body: Body, at: UtcMs, place: Place): Position {
  const time = timeOf(at);
  const observer = observerAt(place);
  const { ra, dec } = Equator(body, time, observer, true, true);
  // No refraction is asked for: the light curve and the twilights are defined without it.
  const { altitude, azimuth } = Horizon(time, observer, ra, dec);
  return { altitude: altitude as Degrees, azimuth: azimuth as Degrees };
}

/** Where the sun stands, topocentric and airless. */
export const sunPosition = (at: UtcMs, place: Place): Position => positionOf(Body.Sun, at, place);

/** Where the moon stands, topocentric (its parallax lowers it by up to a degree) and airless. */
export const moonPosition = (at: UtcMs, place: Place): Position => positionOf(Body.Moon, at, place);

/** How the moon is lit and how far it is. */
export function moonPhase(at: UtcMs): MoonPhase {
  const { phase_angle, phase_fraction, geo_dist } = Illumination(Body.Moon, timeOf(at));
  return {
    phaseAngle: phase_angle as Degrees,
    litShare: phase_fraction as Share,
    parallax: inDegrees(Math.asin(EARTH_RADIUS_KM / (geo_dist * KM_PER_AU))),
  };
}

function geocentric(body: Body, at: UtcMs): Equatorial {
  const time = timeOf(at);
  const ofDate = RotateVector(Rotation_EQJ_EQD(time), GeoVector(body, time, true));
  const { ra, dec } = EquatorFromVector(ofDate);
  return {
    rightAscension: (ra * 15) as Degrees,
    declination: dec as Degrees,
    distance: (ofDate.Length() * KM_PER_AU) as Kilometres,
  };
}

/** Where the sun stands among the stars, apparent. */
export const sunAmongStars = (at: UtcMs): Equatorial => geocentric(Body.Sun, at);

/** Where the moon stands among the stars, apparent. */
export const moonAmongStars = (at: UtcMs): Equatorial => geocentric(Body.Moon, at);

const DAY_MS = 86_400_000;
/** 2000-01-01 12:00, from which the library counts days in either time scale. */
const J2000_MS = Date.UTC(2000, 0, 1, 12);

/**
 * The instant at which the uniform Terrestrial Time of the almanacs shows a reading, given in
 * milliseconds as if it were UTC. The two differ by about a minute; for years to come by a forecast.
 */
export const utcOfTerrestrial = (reading: UtcMs): UtcMs =>
  instantOf(AstroTime.FromTerrestrialTime((reading - J2000_MS) / DAY_MS));

/** The next time that the sun stands highest, in the meridian. */
export const solarNoonAfter = (at: UtcMs, place: Place): UtcMs =>
  instantOf(SearchHourAngle(Body.Sun, observerAt(place), 0, timeOf(at), +1).time);

const HALF_DAY_S = 43_200;

/** The solar noon nearest to an instant and the one after it. */
export function solarDayNear(
  at: UtcMs,
  place: Place,
): { readonly noon: UtcMs; readonly nextNoon: UtcMs } {
  const noon = solarNoonAfter(later(at, -HALF_DAY_S), place);
  // Well past this noon, so that the search cannot find the same one again.
  return { noon, nextNoon: solarNoonAfter(later(noon, HALF_DAY_S), place) };
}

/** Degrees by which the moon is ahead of the sun along the ecliptic. */
const QUARTERS = { new: 0, first: 90, full: 180, last: 270 } as const;

export type MoonQuarter = keyof typeof QUARTERS;

export const MOON_QUARTERS = Object.keys(QUARTERS) as readonly MoonQuarter[];

/** Longer than from any quarter to its next. */
const LUNATION_DAYS = 31;

/** The first time after an instant that the moon reaches a quarter, within a minute. */
export function moonQuarterAfter(quarter: MoonQuarter, at: UtcMs): UtcMs {
  const found = SearchMoonPhase(QUARTERS[quarter], timeOf(at), LUNATION_DAYS);
  if (!found) throw new RangeError('moon-quarter-not-found');
  return instantOf(found);
}
