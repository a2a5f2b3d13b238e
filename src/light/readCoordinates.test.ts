import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isRefusal } from '../science/refusal.ts';
import { readCoordinates, readLatitude, readLongitude } from './readCoordinates.ts';

const seconds = 1 / 3600;

describe('latitude and longitude in one text', () => {
  test.each([
    ['54.90 N 3.60 W', 54.9, -3.6],
    ['54.90N, 3.60W', 54.9, -3.6],
    ['N54.90 W3.60', 54.9, -3.6],
    ['N 54.90, W 3.60', 54.9, -3.6],
    ['54.9, -3.6', 54.9, -3.6],
    ['54.9,-3.6', 54.9, -3.6],
    ['54.9 -3.6', 54.9, -3.6],
    ['54,90 -3,60', 54.9, -3.6],
    ['54,90; -3,60', 54.9, -3.6],
    ['54,90, -3,60', 54.9, -3.6],
    ['54,90 n 3,60 w', 54.9, -3.6],
    ['−54.9 −3.6', -54.9, -3.6],
    [`54°54'00"N 3°36'00"W`, 54.9, -3.6],
    ['54° 54′ 3.6″ N, 3° 36′ 0″ W', 54.9 + 3.6 * seconds, -3.6],
    ["54°54.5'N 3°36.5'W", 54 + 54.5 / 60, -(3 + 36.5 / 60)],
    ['54 54 0 N 3 36 0 W', 54.9, -3.6],
    ['54 54 0 -3 36 0', 54.9, -3.6],
    ['-33.87 151.21', -33.87, 151.21],
    ['1.87 202.6', 1.87, -157.4],
    ['0 0', 0, 0],
    ['90 S 180 W', -90, -180],
  ])('%s', (typed, lat, lon) => {
    const found = readCoordinates(typed);
    if (isRefusal(found)) throw new Error(found.rule);
    expect(found.lat).toBeCloseTo(lat, 9);
    expect(found.lon).toBeCloseTo(lon, 9);
  });

  test.each([
    ['', 'coordinates-unreadable'],
    ['54.9', 'coordinates-unreadable'],
    ['54,9', 'coordinates-unreadable'],
    ['here', 'coordinates-unreadable'],
    ['54.9 N 3.6 N', 'wrong-axis'],
    ['3.60 W 54.90 N', 'wrong-axis'],
    ['-54.9 N 3.6 W', 'sign-and-letter'],
    ['91 N 0 E', 'latitude-out-of-range'],
    ['54.9 361', 'longitude-out-of-range'],
    ['54.9 N 190 W', 'longitude-out-of-range'],
    ['54 61 0 N 3 36 0 W', 'coordinates-unreadable'],
    ['54.5 30 0 N 3 36 0 W', 'coordinates-unreadable'],
    ['54 54 60 N 3 36 0 W', 'coordinates-unreadable'],
    ['1.234.5 3', 'coordinates-unreadable'],
  ])('refuses %j', (typed, rule) => {
    expect(readCoordinates(typed)).toMatchObject({ refused: true, rule });
  });

  test('come back from every way of writing them', () => {
    const lat = fc.integer({ min: -90 * 3600, max: 90 * 3600 });
    const lon = fc.integer({ min: -180 * 3600, max: 180 * 3600 });
    const parts = (all: number): string => {
      const size = Math.abs(all);
      return `${Math.floor(size / 3600)}°${Math.floor((size % 3600) / 60)}'${size % 60}"`;
    };
    fc.assert(
      fc.property(lat, lon, fc.boolean(), (latS, lonS, comma) => {
        const decimal = (all: number): string => {
          const text = (all / 3600).toFixed(7);
          return comma ? text.replace('.', ',') : text;
        };
        const byParts = `${parts(latS)}${latS < 0 ? 'S' : 'N'} ${parts(lonS)}${lonS < 0 ? 'W' : 'E'}`;
        for (const typed of [byParts, `${decimal(latS)} ${decimal(lonS)}`]) {
          const found = readCoordinates(typed);
          if (isRefusal(found)) throw new Error(`${typed}: ${found.rule}`);
          expect(found.lat).toBeCloseTo(latS / 3600, 6);
          expect(found.lon).toBeCloseTo(lonS / 3600, 6);
        }
      }),
    );
  });
});

test('one angle at a time', () => {
  expect(readLatitude('54,9')).toBe(54.9);
  expect(readLatitude('54.9 S')).toBe(-54.9);
  expect(readLongitude('356.4')).toBeCloseTo(-3.6, 9);
  expect(readLongitude("3°36' W")).toBeCloseTo(-3.6, 9);
  expect(readLongitude('3.6 N')).toMatchObject({ rule: 'wrong-axis' });
  expect(readLatitude('-0')).toBe(0);
});
