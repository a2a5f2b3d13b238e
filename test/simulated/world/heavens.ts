import { type Degrees, type Lux, minutesBetween, type UtcMs } from '../../../src/science/units.ts';

/*
 * Sun and moon of the simulated world and the light they give on level ground, worked out apart from
 * the app's: other series, other curves.
 */

/** A spot on the earth: north and east positive. */
export interface Spot {
  readonly lat: Degrees;
  readonly lon: Degrees;
}

const RAD = Math.PI / 180;
const sin = (angle: number): number => Math.sin(angle * RAD);
const cos = (angle: number): number => Math.cos(angle * RAD);
const asin = (value: number): number => Math.asin(Math.max(-1, Math.min(1, value))) / RAD;

/** 2000 January 1, 12 h UT. */
const J2000 = Date.UTC(2000, 0, 1, 12) as UtcMs;
const daysSince2000 = (at: UtcMs): number => minutesBetween(J2000, at) / 1440;

interface Ecliptic {
  readonly longitude: number;
  readonly latitude: number;
}

/**
 * The sun to an arcminute within two centuries of 2000. Source: U.S. Naval Observatory, 'Computing
 * approximate solar coordinates', the same as Astronomical Almanac p. C24.
 */
function sunAt(days: number): Ecliptic {
  const anomaly = 357.529 + 0.98560028 * days;
  const mean = 280.459 + 0.98564736 * days;
  return { longitude: mean + 1.915 * sin(anomaly) + 0.02 * sin(2 * anomaly), latitude: 0 };
}

/**
 * The moon to 0.3 degree in longitude, with its horizontal parallax in degrees. Source: the low
 * precision series of the Astronomical Almanac, p. D46 (from memory; the test holds it against the
 * app's ephemeris).
 */
function moonAt(days: number): Ecliptic & { readonly parallax: number } {
  const t = days / 36525;
  return {
    longitude:
      218.32 +
      481267.881 * t +
      6.29 * sin(135 + 477198.87 * t) -
      1.27 * sin(259.3 - 413335.36 * t) +
      0.66 * sin(235.7 + 890534.22 * t) +
      0.21 * sin(269.9 + 954397.74 * t) -
      0.19 * sin(357.5 + 35999.05 * t) -
      0.11 * sin(186.5 + 966404.03 * t),
    latitude:
      5.13 * sin(93.3 + 483202.02 * t) +
      0.28 * sin(228.2 + 960400.89 * t) -
      0.28 * sin(318.3 + 6003.15 * t) -
      0.17 * sin(217.6 - 407332.21 * t),
    parallax:
      0.9508 +
      0.0518 * cos(135 + 477198.87 * t) +
      0.0095 * cos(259.3 - 413335.36 * t) +
      0.0078 * cos(235.7 + 890534.22 * t) +
      0.0028 * cos(269.9 + 954397.74 * t),
  };
}

/** The altitude of a point of the ecliptic, seen from the centre of the earth, without air. */
function altitudeOf({ longitude, latitude }: Ecliptic, days: number, { lat, lon }: Spot): number {
  const tilt = 23.439 - 0.00000036 * days;
  const x = cos(latitude) * cos(longitude);
  const y = cos(tilt) * cos(latitude) * sin(longitude) - sin(tilt) * sin(latitude);
  const declination = asin(sin(tilt) * cos(latitude) * sin(longitude) + cos(tilt) * sin(latitude));
  const rightAscension = Math.atan2(y, x) / RAD;
  // Greenwich mean sidereal time in degrees: U.S. Naval Observatory, approximate form (from memory).
  const sidereal = 15 * (18.697374558 + 24.06570982441908 * days);
  const hourAngle = sidereal + lon - rightAscension;
  return asin(sin(lat) * sin(declination) + cos(lat) * cos(declination) * cos(hourAngle));
}

/** The altitude of the sun's centre without air. */
export function sunAltitude(at: UtcMs, spot: Spot): Degrees {
  const days = daysSince2000(at);
  return altitudeOf(sunAt(days), days, spot) as Degrees;
}

/** The moon over a spot. */
export interface Moon {
  /** Of its centre, lowered by the parallax, without air. */
  readonly altitude: Degrees;
  /** Between moon and sun, as seen from the earth: 180 at full moon. */
  readonly elongation: Degrees;
}

/** Where the moon stands over a spot. */
export function moonOver(at: UtcMs, spot: Spot): Moon {
  const days = daysSince2000(at);
  const [sun, moon] = [sunAt(days), moonAt(days)];
  const geocentric = altitudeOf(moon, days, spot);
  const apart = cos(moon.latitude) * cos(moon.longitude - sun.longitude);
  return {
    altitude: (geocentric - moon.parallax * cos(geocentric)) as Degrees,
    elongation: (90 - asin(apart)) as Degrees,
  };
}

/**
 * Cubics of log10 of the sun's and sky's light in lx in altitude / 90, each from an altitude on.
 * Source: Explanatory Supplement to the Astronomical Almanac (1992), chapter 9.
 */
const SUPPLEMENT = [
  { from: 20, terms: [3.74, 3.97, -4.07, 1.47] },
  { from: 5, terms: [3.05, 13.28, -45.98, 64.33] },
  { from: -0.8, terms: [2.88, 22.26, -207.64, 1034.3] },
  { from: -5, terms: [2.88, 21.81, -258.11, -858.36] },
  { from: -12, terms: [2.7, 12.17, -431.69, -1899.83] },
  { from: -18, terms: [13.84, 262.72, 1447.42, 2797.93] },
] as const;
/** Below, the night: the light no longer falls. */
const LOWEST = -18;

function supplement(altitude: number): number {
  const high = Math.max(LOWEST, altitude);
  const { terms } = SUPPLEMENT.find(({ from }) => high >= from) ?? SUPPLEMENT[5];
  return terms.reduce((sum, term, power) => sum + term * (high / 90) ** power, 0);
}

const STEP = 0.5;
/** The cubics' joints jump by up to 0.014 stop, a sky does not: a smooth curve through every half degree. */
const NODES = Array.from({ length: 2 * (90 - LOWEST) + 7 }, (_, i) =>
  supplement(Math.min(90, LOWEST - 1 + STEP * i)),
);

/** The light of sun, twilight and night sky in lx. */
export function skyLight(altitude: Degrees): Lux {
  const place = (Math.max(LOWEST - 0.5, Math.min(90, altitude)) - LOWEST + 1) / STEP;
  const at = Math.floor(place);
  const [a = 0, b = 0, c = 0, d = 0] = NODES.slice(at - 1, at + 3);
  const x = place - at;
  // Catmull and Rom's cubic: through the nodes, with the slope from their neighbours.
  const log10 = b + 0.5 * x * (c - a + x * (2 * a - 5 * b + 4 * c - d + x * (3 * (b - c) + d - a)));
  return (10 ** log10) as Lux;
}

/** A full moon in the zenith outside of the air, and what a mass of air takes, in magnitudes. */
const FULL_MOON_LUX = 0.32;
const EXTINCTION = 0.2;

/**
 * The light of the moon on level ground in lx: sine of the altitude, an extinction by the mass of
 * air (Rozenberg 1966, from memory) and a phase law (Explanatory Supplement 1992).
 */
export function moonLight({ altitude, elongation }: Moon): Lux {
  if (altitude <= 0) return 0 as Lux;
  const high = sin(altitude);
  const airMass = 1 / (high + 0.025 * Math.exp(-11 * high));
  const away = 180 - elongation;
  const phase = -8.68e-3 * away - 2.2e-9 * away ** 4;
  return (FULL_MOON_LUX * high * 10 ** (phase - 0.4 * EXTINCTION * airMass)) as Lux;
}
