import { fadeAt, fadeBetween } from '../../src/light/fade.ts';
import { fitScene } from '../../src/light/fit.ts';
import { forecastAt } from '../../src/light/forecast.ts';
import { nightOf } from '../../src/light/night.ts';
import { PRACTICE_SITE } from '../../src/light/practice.ts';
import type { MeterReading } from '../../src/light/reading.ts';
import { assumedScene, type Scene } from '../../src/light/scene.ts';
import type { Site } from '../../src/light/site.ts';
import { skyOver } from '../../src/light/skyOver.ts';
import type { SkyTable } from '../../src/light/skyTable.ts';
import { whenFallsTo } from '../../src/light/windows.ts';
import { offsetAt, parseZoneName, type Zone } from '../../src/light/zones.ts';
import {
  cloudDivisor,
  cloudStops,
  SKY_CONDITIONS,
  type SkyCondition,
} from '../../src/science/cloud.ts';
import * as ephemeris from '../../src/science/ephemeris.ts';
import { evFromIlluminance, evFromLuminance } from '../../src/science/metering.ts';
import { moonIlluminance, moonPhaseLightRatio } from '../../src/science/moonIlluminance.ts';
import { meanFadeThrough } from '../../src/science/naturalLight.ts';
import { type Place, parseLatitude, parseLongitude } from '../../src/science/place.ts';
import * as refraction from '../../src/science/refraction.ts';
import { type Refusal, refuse } from '../../src/science/refusal.ts';
import { meanMinusMid } from '../../src/science/sceneLight.ts';
import {
  firstEvent,
  MOON_EVENT_NAMES,
  moonEvents,
  SUN_EVENT_NAMES,
  sunEvents,
} from '../../src/science/skyEvents.ts';
import { skyIlluminance } from '../../src/science/skyIlluminance.ts';
import { type SkyPath, skyPath } from '../../src/science/skyPath.ts';
import { GUIDE_SUBJECTS, guideEv } from '../../src/science/subjectEv.ts';
import { dayState, localMeanNoon, sunExtremes } from '../../src/science/sunDay.ts';
import * as units from '../../src/science/units.ts';
import { type Adapter, type AdapterSet, adapter, number, optional, text } from './adapter.ts';

const instant = text('UTC', (time) => units.parseUtc(Date.parse(time)));
/** Almanac time without a zone letter. */
const terrestrial = text('TT', (time) =>
  ephemeris.utcOfTerrestrial(units.utc(Date.parse(`${time}Z`))),
);
const lat = number('deg', parseLatitude);
const lon = number('deg', parseLongitude);
const elevation = number('m', units.parseHeight);
const deg = number('deg', units.parseDegrees);
const ev = number('EV', units.parseEv);
const stops = number('stops', units.parseStops);
const illuminance = number('lx', units.parseLux);
const luminance = number('cd/m2', units.parseLuminance);
const pressure = number('hPa', units.parseHectopascals);
const temperature = number('degC', units.parseCelsius);
const date = text('date', (day) => day);

const named = <const T extends string>(unit: string, names: readonly T[]) =>
  text(
    unit,
    (value): T | Refusal => names.find((name) => name === value) ?? refuse('no-such-name'),
  );

/** The window of a search ends so many hours later. */
const within = number('h', (hours) => units.parseSeconds(hours * 3600));

const zone = text('IANA', parseZoneName);

const cloud = number('1', (divisor): SkyCondition | Refusal => {
  const condition = SKY_CONDITIONS.find((each) => cloudDivisor(each) === divisor);
  return condition ?? refuse('no-such-sky');
});

const readings = {
  unit: '[UTC, EV100]',
  read: (raw: unknown): readonly MeterReading[] =>
    (raw as readonly (readonly [string, number])[]).map(([at, ev100]) => ({
      at: units.utc(Date.parse(at)),
      meter: 'meter',
      ev100: units.ev(ev100),
    })),
};

const iso8601 = (at: units.UtcMs | null): string | null =>
  at === null ? null : new Date(at).toISOString();

interface Spot {
  readonly lat: units.Degrees;
  readonly lon: units.Degrees;
}
const seaLevel = (i: Spot): Place => ({ lat: i.lat, lon: i.lon, height: units.metres(0) });
const placeOf = (i: Spot & { readonly elevation: units.Metres }): Place => ({
  lat: i.lat,
  lon: i.lon,
  height: i.elevation,
});
const siteAt = (i: Spot, zoneOfSite: Zone = PRACTICE_SITE.zone): Site => ({
  ...PRACTICE_SITE,
  latDeg: i.lat,
  lonDeg: i.lon,
  zone: zoneOfSite,
});

const pathOfSearch = (
  i: Spot & { readonly search_from: units.UtcMs; readonly within: units.Seconds },
): SkyPath => skyPath(seaLevel(i), i.search_from, units.later(i.search_from, i.within));

const dayPath = (i: Spot & { readonly solar_day: string }): SkyPath => {
  const place = seaLevel(i);
  const day = ephemeris.solarDayNear(localMeanNoon(i.solar_day, i.lon), place);
  return skyPath(place, day.noon, day.nextNoon);
};

/** The sky from ten minutes before to ten minutes after. */
const skyAround = (
  i: Spot,
  from: units.UtcMs,
  to: units.UtcMs,
  condition: SkyCondition = 'clear',
): SkyTable => skyOver(siteAt(i), units.later(from, -600), units.later(to, 600), condition);

const fitted = (i: Spot & { readonly readings: readonly MeterReading[] }): Scene => {
  const first = i.readings[0];
  const last = i.readings.at(-1);
  if (!first || !last) throw new Error('no readings');
  return fitScene(skyAround(i, first.at, last.at), i.readings);
};

const momentary = (startMs: units.UtcMs) => ({ startMs, t: units.seconds(0.001) });

const topocentric = { time: instant, lat, lon, elevation } as const;
const refracted = { ...topocentric, pressure, temperature } as const;
const almanac = { time: terrestrial } as const;
const search = { search_from: instant, within, lat, lon } as const;

/** The one quantity whose time the sheet gives in either scale. */
const litShareIn = (time: typeof instant): Adapter =>
  adapter({ unit: '1', inputs: { time }, run: (i) => ephemeris.moonPhase(i.time).litShare });
const litShare: Adapter = {
  unit: '1',
  run: (entry) =>
    litShareIn(entry.inputs['time']?.unit === 'TT' ? terrestrial : instant).run(entry),
};

export const adapters: AdapterSet['adapters'] = {
  // Positions
  sun_altitude_airless: adapter({
    unit: 'deg',
    inputs: topocentric,
    run: (i) => ephemeris.sunPosition(i.time, placeOf(i)).altitude,
  }),
  sun_azimuth: adapter({
    unit: 'deg',
    inputs: topocentric,
    run: (i) => ephemeris.sunPosition(i.time, placeOf(i)).azimuth,
  }),
  sun_altitude_apparent: adapter({
    unit: 'deg',
    inputs: refracted,
    run: (i) =>
      refraction.apparentAltitude(
        ephemeris.sunPosition(i.time, placeOf(i)).altitude,
        i.pressure,
        i.temperature,
      ),
  }),
  moon_altitude_airless: adapter({
    unit: 'deg',
    inputs: topocentric,
    run: (i) => ephemeris.moonPosition(i.time, placeOf(i)).altitude,
  }),
  moon_azimuth: adapter({
    unit: 'deg',
    inputs: topocentric,
    run: (i) => ephemeris.moonPosition(i.time, placeOf(i)).azimuth,
  }),
  moon_altitude_apparent: adapter({
    unit: 'deg',
    inputs: refracted,
    run: (i) =>
      refraction.apparentAltitude(
        ephemeris.moonPosition(i.time, placeOf(i)).altitude,
        i.pressure,
        i.temperature,
      ),
  }),
  sun_right_ascension: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.sunAmongStars(i.time).rightAscension,
  }),
  sun_declination: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.sunAmongStars(i.time).declination,
  }),
  moon_right_ascension: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.moonAmongStars(i.time).rightAscension,
  }),
  moon_declination: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.moonAmongStars(i.time).declination,
  }),
  moon_distance: adapter({
    unit: 'km',
    inputs: almanac,
    run: (i) => ephemeris.moonAmongStars(i.time).distance,
  }),
  moon_horizontal_parallax: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.moonPhase(i.time).parallax,
  }),
  moon_phase_angle: adapter({
    unit: 'deg',
    inputs: almanac,
    run: (i) => ephemeris.moonPhase(i.time).phaseAngle,
  }),
  moon_illuminated_fraction: litShare,
  refraction_from_true_altitude: adapter({
    unit: 'arcmin',
    inputs: { true_altitude: deg, pressure, temperature },
    run: (i) => refraction.refractionAtTrue(i.true_altitude, i.pressure, i.temperature),
  }),
  refraction_from_apparent_altitude: adapter({
    unit: 'arcmin',
    inputs: { apparent_altitude: deg, pressure, temperature },
    run: (i) => refraction.refractionAtApparent(i.apparent_altitude, i.pressure, i.temperature),
  }),

  // Events and days
  sun_event: adapter({
    unit: 'UTC',
    inputs: { ...search, event: named('name', SUN_EVENT_NAMES) },
    run: (i) => iso8601(firstEvent(sunEvents(pathOfSearch(i)), i.event)),
  }),
  moon_event: adapter({
    unit: 'UTC',
    inputs: { ...search, event: named('name', MOON_EVENT_NAMES) },
    run: (i) => iso8601(firstEvent(moonEvents(pathOfSearch(i)), i.event)),
  }),
  moon_quarter: adapter({
    unit: 'UTC',
    inputs: { quarter: named('name', ephemeris.MOON_QUARTERS), search_from: instant },
    run: (i) => iso8601(ephemeris.moonQuarterAfter(i.quarter, i.search_from)),
  }),
  local_evening_event: adapter({
    unit: 'UTC',
    inputs: { zone, local_date: date, event: named('name', SUN_EVENT_NAMES), lat, lon },
    run: (i) =>
      iso8601(firstEvent(nightOf(siteAt(i, i.zone), i.local_date, 'clear').events, i.event)),
  }),
  sun_day_state: adapter({
    unit: 'state',
    inputs: { solar_day: date, lat, lon },
    run: (i) => {
      const { lowest, highest } = sunExtremes(dayPath(i));
      return dayState(lowest.altitude, highest.altitude);
    },
  }),
  sun_lowest_altitude_after_noon: adapter({
    unit: 'deg',
    inputs: { solar_day: date, lat, lon },
    run: (i) => sunExtremes(dayPath(i)).lowest.altitude,
  }),
  zone_offset: adapter({
    unit: 'min',
    inputs: { zone, time: instant },
    run: (i) => offsetAt(i.zone, i.time),
  }),

  // Light
  sky_illuminance: adapter({
    unit: 'lx',
    inputs: { sun_altitude_airless: deg },
    run: (i) => skyIlluminance(i.sun_altitude_airless),
  }),
  moon_illuminance: adapter({
    unit: 'lx',
    inputs: { moon_altitude_airless: deg, phase_angle: deg, horizontal_parallax: deg },
    run: (i) => moonIlluminance(i.moon_altitude_airless, i.phase_angle, i.horizontal_parallax),
  }),
  moon_phase_light_ratio: adapter({
    unit: '1',
    inputs: { phase_angle: deg },
    run: (i) => moonPhaseLightRatio(i.phase_angle),
  }),
  cloud_divisor: adapter({
    unit: '1',
    inputs: { sky: named('name', SKY_CONDITIONS) },
    run: (i) => cloudDivisor(i.sky),
  }),
  cloud_stops: adapter({
    unit: 'stops',
    inputs: { sky: named('name', SKY_CONDITIONS) },
    run: (i) => cloudStops(i.sky),
  }),
  ev100_from_illuminance: adapter({
    unit: 'EV',
    inputs: { illuminance, C: number('lx s', units.parseIncidentConstant) },
    run: (i) => evFromIlluminance(i.illuminance, units.iso(100), i.C),
  }),
  ev100_from_luminance: adapter({
    unit: 'EV',
    inputs: { luminance, K: number('cd s/m2', units.parseReflectedConstant) },
    run: (i) => evFromLuminance(i.luminance, units.iso(100), i.K),
  }),
  subject_ev100_range: adapter({
    unit: 'EV',
    inputs: { subject: named('name', GUIDE_SUBJECTS) },
    run: (i) => guideEv(i.subject),
  }),

  // Scene and fade: through the table that an outing stores
  scene_ev100: adapter({
    unit: 'EV',
    inputs: {
      time: instant,
      lat,
      lon,
      cloud_divisor: optional(cloud, 'clear' as const),
      scene_offset: optional(stops, units.stops(0)),
      artificial_ev: optional(ev, null),
    },
    run: (i) => {
      const sky = skyAround(i, i.time, i.time, i.cloud_divisor);
      const scene = assumedScene(sky, i.scene_offset, i.artificial_ev);
      return forecastAt(scene, i.time)?.ev100 ?? null;
    },
  }),
  fade_rate: adapter({
    unit: 'stops/min',
    inputs: { time: instant, lat, lon },
    run: (i) => fadeAt(assumedScene(skyAround(i, i.time, i.time)), i.time),
  }),
  mean_fade_in_band: adapter({
    unit: 'stops/min',
    inputs: { solar_day: date, lat, lon, from_sun_altitude: deg, to_sun_altitude: deg },
    run: (i) => meanFadeThrough(dayPath(i), i.from_sun_altitude, i.to_sun_altitude),
  }),
  fade_between: adapter({
    unit: 'stops',
    inputs: { mid_exposure_1: instant, mid_exposure_2: instant, lat, lon },
    run: (i) =>
      fadeBetween(
        assumedScene(skyAround(i, i.mid_exposure_1, i.mid_exposure_2)),
        momentary(i.mid_exposure_1),
        momentary(i.mid_exposure_2),
      )?.stops ?? null,
  }),
  exposure_mean_minus_mid: adapter({
    unit: 'stops',
    inputs: {
      exposure: number('s', units.parseSeconds),
      fade: number('stops/min', units.parseStopsPerMinute),
    },
    run: (i) => meanMinusMid(i.exposure, i.fade),
  }),
  time_when_ev: adapter({
    unit: 'UTC',
    inputs: { ...search, scene_offset: stops, target_ev100: ev },
    run: (i) => {
      const to = units.later(i.search_from, i.within);
      const scene = assumedScene(skyAround(i, i.search_from, to), i.scene_offset);
      return iso8601(whenFallsTo(scene, i.target_ev100, { fromMs: i.search_from, toMs: to }));
    },
  }),
  fitted_scene_offset: adapter({
    unit: 'stops',
    inputs: { readings, lat, lon },
    run: (i) => fitted(i).offsets[0]?.stops ?? null,
  }),
  fitted_fade_scale: adapter({
    unit: '1',
    inputs: { readings, lat, lon },
    run: (i) => fitted(i).scale,
  }),
};

export const withoutUse: AdapterSet['withoutUse'] = {};
