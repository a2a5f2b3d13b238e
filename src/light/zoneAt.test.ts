import fc from 'fast-check';
import { expect, test } from 'vitest';
import { degrees, utc } from '../science/units.ts';
import { PRACTICE_SITE } from './practice.ts';
import { placeOf } from './site.ts';
import { zoneAt } from './zoneAt.ts';
import { localTime } from './zones.ts';

const at = (lat: number, lon: number) => zoneAt({ lat: degrees(lat), lon: degrees(lon) });

test.each([
  [27.7, 85.3, { kind: 'iana', name: 'Asia/Kathmandu' }],
  [-43.95, -176.56, { kind: 'iana', name: 'Pacific/Chatham' }],
  [1.87, -157.4, { kind: 'iana', name: 'Pacific/Kiritimati' }],
  [0, -30, { kind: 'fixed', offsetMin: -120 }],
  [0, 65, { kind: 'fixed', offsetMin: 240 }],
])('%d %d', (lat, lon, wanted) => {
  expect(at(lat, lon)).toEqual(wanted);
});

test('the practice site has its own zone', () => {
  expect(zoneAt(placeOf(PRACTICE_SITE))).toEqual(PRACTICE_SITE.zone);
});

test('any place on earth has a zone that this machine can tell the time of', () => {
  const lat = fc.double({ min: -90, max: 90, noNaN: true });
  const lon = fc.double({ min: -180, max: 180, noNaN: true });
  fc.assert(
    fc.property(lat, lon, (latDeg, lonDeg) => {
      const zone = at(latDeg, lonDeg);
      if (zone === null) throw new Error('no zone');
      expect(localTime(zone, utc(0)).date).toMatch(/^19(69|70)-/);
    }),
  );
});
