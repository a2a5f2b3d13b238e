import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anySite, anySkyTable, DUSK, EVEN_DUSK, minutesOn } from '../../test/arbitraries/sky.ts';
import { isFault } from '../gear/read.ts';
import { later } from '../science/units.ts';
import { readSite, readSkyTable, readZone } from './parse.ts';
import { PRACTICE_SITE } from './practice.ts';
import { civilDusk, isDark, movedSky, skyEnd, skyEv, skyWithBefore } from './skyTable.ts';

const roundTrip = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe('a site', () => {
  test('comes back from JSON as it went', () => {
    fc.assert(
      fc.property(anySite, (site) => {
        expect(readSite(roundTrip(site))).toEqual(site);
      }),
    );
    expect(readSite(roundTrip(PRACTICE_SITE))).toEqual(PRACTICE_SITE);
  });

  test.each([
    [{ latDeg: 90.001 }, 'latDeg', 'latitude-out-of-range'],
    [{ lonDeg: -180.5 }, 'lonDeg', 'longitude-out-of-range'],
    [{ heightM: 'high' }, 'heightM', 'not-a-number'],
    [{ ridgeDeg: -1 }, 'ridgeDeg', 'out-of-range'],
    [{ zone: { kind: 'iana', name: 'Nowhere/Land' } }, 'zone.name', 'zone-unknown'],
    [{ zone: { kind: 'iana', name: '+05:45' } }, 'zone.name', 'zone-unknown'],
    [{ zone: { kind: 'fixed', offsetMin: 30.5 } }, 'zone.offsetMin', 'zone-offset-out-of-range'],
    [{ zone: { kind: 'fixed', offsetMin: 900 } }, 'zone.offsetMin', 'out-of-range'],
    [{ name: '  ' }, 'name', 'text-empty'],
    [{ colour: 'red' }, '', 'field-unknown'],
  ])('with %j is refused, with the place and the reason', (wrong, path, rule) => {
    expect(readSite({ ...PRACTICE_SITE, ...wrong })).toMatchObject({ path, rule });
  });

  test('without a field is refused', () => {
    const { note: _, ...rest } = PRACTICE_SITE;
    expect(readSite(rest)).toMatchObject({ path: 'note', rule: 'field-missing' });
  });
});

test('a zone of whole quarters of an hour is as good as any', () => {
  expect(readZone({ kind: 'fixed', offsetMin: 765 })).toEqual({ kind: 'fixed', offsetMin: 765 });
});

describe('the sky of an outing', () => {
  test('comes back from JSON as it went', () => {
    fc.assert(
      fc.property(anySkyTable, (sky) => {
        expect(readSkyTable(roundTrip(sky))).toEqual(sky);
      }),
    );
  });

  test.each([
    [{ clearEv100: [1, null] }, 'clearEv100[1]', 'not-a-number'],
    [{ clearEv100: Array.from({ length: 4000 }, () => 1) }, 'clearEv100', 'list-too-long'],
    [{ cloud: 'foggy' }, 'cloud', 'not-among'],
    [{ dark: [{ fromMs: 2, toMs: 1 }] }, 'dark[0]', 'stretch-backward'],
  ])('with %j is refused', (wrong, path, rule) => {
    const read = readSkyTable({ ...EVEN_DUSK, ...wrong });
    expect(isFault(read)).toBe(true);
    expect(read).toMatchObject({ path, rule });
  });

  test('tells the light between its minutes, and nothing outside', () => {
    expect(skyEv(EVEN_DUSK, minutesOn(10.25))).toBeCloseTo(8 - 0.2 * 10.25, 12);
    expect(skyEv({ ...EVEN_DUSK, cloud: 'thin-cloud-over-sun' }, minutesOn(10))).toBeCloseTo(5, 12);
    expect(skyEv({ ...EVEN_DUSK, cloud: null }, minutesOn(10))).toBeCloseTo(6, 12);
    expect(skyEv(EVEN_DUSK, minutesOn(-0.01))).toBeNull();
    expect(skyEv(EVEN_DUSK, minutesOn(120.01))).toBeNull();
    expect(skyEnd(EVEN_DUSK)).toBe(minutesOn(120));
  });

  test('tells night from day by civil dusk', () => {
    expect(isDark(EVEN_DUSK, minutesOn(39.9))).toBe(false);
    expect(isDark(EVEN_DUSK, minutesOn(40))).toBe(true);
    expect(civilDusk(EVEN_DUSK)).toBe(minutesOn(40));
  });

  test('is the same at another time when it is moved there', () => {
    const moved = movedSky(EVEN_DUSK, minutesOn(1000));
    expect(skyEv(moved, minutesOn(1010))).toBe(skyEv(EVEN_DUSK, minutesOn(10)));
    expect(civilDusk(moved)).toBe(minutesOn(1040));
    expect(movedSky(moved, DUSK)).toEqual(EVEN_DUSK);
  });

  test('goes on from another that is there before it, and keeps what it says itself', () => {
    const own = {
      ...movedSky(EVEN_DUSK, later(minutesOn(30), 20)),
      cloud: 'dark-stratus',
    } as const;
    const whole = skyWithBefore(own, EVEN_DUSK);
    expect(whole.startMs).toBe(later(minutesOn(0), 20));
    expect(skyEnd(whole)).toBe(skyEnd(own));
    expect(skyEv(whole, later(minutesOn(50), 20))).toBe(skyEv(own, later(minutesOn(50), 20)));
    // The cloud that is said of the own one is said of all.
    const cloud =
      (skyEv(own, later(minutesOn(40), 20)) ?? 0) - (skyEv(EVEN_DUSK, minutesOn(10)) ?? 0);
    expect(cloud).toBeCloseTo(-Math.log2(10), 1);
    expect((skyEv(whole, minutesOn(10)) ?? 0) - (skyEv(EVEN_DUSK, minutesOn(10)) ?? 0)).toBeCloseTo(
      cloud,
      9,
    );
    expect(skyWithBefore(EVEN_DUSK, own)).toBe(EVEN_DUSK);
    const far = movedSky(EVEN_DUSK, minutesOn(1000));
    expect(skyWithBefore(far, EVEN_DUSK)).toBe(far);
  });
});
