import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moonPosition, solarDayNear, sunPosition } from './ephemeris.ts';
import type { Place } from './place.ts';
import { skyPath } from './skyPath.ts';
import { degrees, later, metres, minutesBetween, type UtcMs, utc } from './units.ts';

const radians = (angle: number): number => (angle * Math.PI) / 180;

/**
 * The sun's altitude by another way: the low-precision formulas of the U.S. Naval Observatory
 * ('Computing approximate solar coordinates', Astronomical Almanac p. C24), good to an arcminute
 * within two centuries of 2000, with mean sidereal time.
 */
function roughSunAltitude(at: UtcMs, { lat, lon }: Place): number {
  const days = (at - Date.UTC(2000, 0, 1, 12)) / 86_400_000;
  const anomaly = radians(357.529 + 0.98560028 * days);
  const longitude = radians(
    280.459 + 0.98564736 * days + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly),
  );
  const tilt = radians(23.439 - 0.00000036 * days);
  const ascension = Math.atan2(Math.cos(tilt) * Math.sin(longitude), Math.cos(longitude));
  const declination = Math.asin(Math.sin(tilt) * Math.sin(longitude));
  const sidereal = radians(280.46061837 + 360.98564736629 * days + lon);
  const sine =
    Math.sin(radians(lat)) * Math.sin(declination) +
    Math.cos(radians(lat)) * Math.cos(declination) * Math.cos(sidereal - ascension);
  return (Math.asin(sine) * 180) / Math.PI;
}

const anyPlace: fc.Arbitrary<Place> = fc.record({
  lat: fc.double({ min: -90, max: 90, noNaN: true }).map(degrees),
  lon: fc.double({ min: -180, max: 180, noNaN: true }).map(degrees),
  height: fc.constant(metres(0)),
});
const anyTime = fc
  .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2044, 0, 1) })
  .map((at) => utc(at));

test('the sun stands where another published way puts it, anywhere on earth', () => {
  fc.assert(
    fc.property(anyTime, anyPlace, (at, place) => {
      const apart = sunPosition(at, place).altitude - roughSunAltitude(at, place);
      expect(Math.abs(apart)).toBeLessThan(0.02);
    }),
  );
});

describe('a path', () => {
  test('lies within 0.0005 degree of the library at any instant', () => {
    fc.assert(
      fc.property(
        anyTime,
        anyPlace.filter(({ lat }) => Math.abs(lat) > 24),
        fc.integer({ min: 0, max: 7200 }),
        (from, place, seconds) => {
          const path = skyPath(place, from, later(from, 7200));
          const at = later(from, seconds);
          const sun = path.sunAltitude(at) - sunPosition(at, place).altitude;
          const moon = path.moonAltitude(at) - moonPosition(at, place).altitude;
          expect(Math.abs(sun)).toBeLessThan(0.0005);
          expect(Math.abs(moon)).toBeLessThan(0.0005);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('stays within 0.15 degree where a body passes overhead and turns sharply', () => {
    const equator: Place = { lat: degrees(0), lon: degrees(0), height: metres(0) };
    const noon = utc(Date.UTC(2027, 2, 20, 12, 7, 30));
    const path = skyPath(equator, later(noon, -3600), later(noon, 3600));
    const apart = Array.from({ length: 120 }, (_, minute) => {
      const at = later(noon, 60 * (minute - 60));
      return Math.abs(path.sunAltitude(at) - sunPosition(at, equator).altitude);
    });
    expect(Math.max(...apart)).toBeLessThan(0.15);
  });

  test('knows nothing outside of its ends', () => {
    const place: Place = { lat: degrees(50), lon: degrees(0), height: metres(0) };
    const from = utc(Date.UTC(2027, 0, 1));
    const path = skyPath(place, from, later(from, 600));
    expect(() => path.sunAltitude(later(from, 3600))).toThrow('instant-off-the-path');
  });
});

test('the solar noons around an instant are a day apart and the nearer one comes first', () => {
  fc.assert(
    fc.property(anyTime, anyPlace, (at, place) => {
      const { noon, nextNoon } = solarDayNear(at, place);
      expect(Math.abs(minutesBetween(at, noon))).toBeLessThanOrEqual(721);
      expect(Math.abs(minutesBetween(noon, nextNoon) - 1440)).toBeLessThan(1);
    }),
    { numRuns: 50 },
  );
});
