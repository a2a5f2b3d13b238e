import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anySite } from '../../test/arbitraries/sky.ts';
import { sunPosition } from '../science/ephemeris.ts';
import { firstEvent, type SkyEventName } from '../science/skyEvents.ts';
import { degrees, later, minutesBetween, minutesEast, type UtcMs, utc } from '../science/units.ts';
import { eveningDate, type Night, nightOf } from './night.ts';
import { PRACTICE_DATE, PRACTICE_SITE } from './practice.ts';
import { placeOf, type Site } from './site.ts';
import { skyForOuting } from './skyOver.ts';
import { civilDusk, isDark, skyEnd, skyEv } from './skyTable.ts';
import { localTime, type Zone } from './zones.ts';

const iana = (name: string): Zone => ({ kind: 'iana', name });
const site = (lat: number, lon: number, zone: Zone = iana('Etc/UTC'), ridge = 0): Site => ({
  ...PRACTICE_SITE,
  latDeg: degrees(lat),
  lonDeg: degrees(lon),
  ridgeDeg: degrees(ridge),
  zone,
});
const at = (iso: string) => utc(Date.parse(iso));
const event = (night: Night, name: SkyEventName): UtcMs | null => firstEvent(night.events, name);
const clockOf = (zone: Zone, instant: UtcMs | null): string => {
  if (instant === null) return 'never';
  const { date, hour, minute } = localTime(zone, later(instant, 30));
  return `${date} ${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
};

describe('the practice evening at the old ferry slip', () => {
  const night = nightOf(PRACTICE_SITE, PRACTICE_DATE, 'clear');

  test('has the events that the check sheet gives', () => {
    // Sunset by the fixed limit of the USNO tables, the sheet's by the true radius: 2 s apart.
    const wanted: readonly (readonly [SkyEventName, string])[] = [
      ['sunset', '2027-02-12T17:14:23Z'],
      ['civil-dusk', '2027-02-12T17:52:27Z'],
      ['nautical-dusk', '2027-02-12T18:35:03Z'],
      ['astronomical-dusk', '2027-02-12T19:16:55Z'],
    ];
    for (const [name, instant] of wanted) {
      expect(Math.abs((event(night, name) ?? 0) - at(instant))).toBeLessThan(10_000);
    }
  });

  test('has its bands without a gap from noon to noon', () => {
    expect(night.bands.map(({ band }) => band)).toEqual([
      'day',
      'civil',
      'nautical',
      'astronomical',
      'night',
      'astronomical',
      'nautical',
      'civil',
      'day',
    ]);
    expect(night.bands[0]?.fromMs).toBe(night.noonMs);
    expect(night.bands.at(-1)?.toMs).toBe(night.nextNoonMs);
    for (const [i, band] of night.bands.slice(1).entries()) {
      expect(band.fromMs).toBe(night.bands[i]?.toMs);
    }
  });

  test('knows the first quarter moon that lights it', () => {
    expect(night.moon.waxing).toBe(true);
    expect(night.moon.litShare).toBeGreaterThan(0.3);
    expect(night.moon.litShare).toBeLessThan(0.45);
    expect(
      night.moon.up.some(
        ({ fromMs, toMs }) => fromMs < at('2027-02-12T18:00Z') && toMs > at('2027-02-12T22:00Z'),
      ),
    ).toBe(true);
  });

  test('carries a table that tells the light to a thousandth of a stop', () => {
    expect(skyEnd(night.sky)).toBe(night.nextNoonMs);
    // Worked out in the handbook from the library's positions.
    for (const [instant, wanted] of [
      ['2027-02-12T17:20:00Z', 6.729],
      ['2027-02-12T17:50:00Z', 1.031],
      ['2027-02-12T18:20:00Z', -5.408],
    ] as const) {
      expect(skyEv(night.sky, at(instant))).toBeCloseTo(wanted, 2);
    }
    // Against the same sky cut at other minutes.
    const other = skyForOuting(PRACTICE_SITE, at('2027-02-12T15:00:00Z'), 'clear');
    for (let minute = 0; minute < 600; minute += 7) {
      const instant = later(at('2027-02-12T15:10:23Z'), 60 * minute);
      expect(skyEv(night.sky, instant)).toBeCloseTo(skyEv(other, instant) ?? Number.NaN, 3);
    }
    expect(civilDusk(night.sky)).toBe(event(night, 'civil-dusk'));
  });
});

describe('an outing takes its sky along', () => {
  test.each([
    ['2027-02-12T11:00:00Z', '2027-02-13T12:'],
    ['2027-02-12T17:00:00Z', '2027-02-13T12:'],
    ['2027-02-13T03:00:00Z', '2027-02-14T12:'],
  ])('begun at %s until the noon that ends its night', (start, end) => {
    const sky = skyForOuting(PRACTICE_SITE, at(start), null);
    expect(sky.startMs).toBe(at(start));
    expect(new Date(skyEnd(sky)).toISOString().startsWith(end)).toBe(true);
    expect(JSON.stringify(sky).length).toBeLessThan(20_000);
  });

  test('and knows whether it is dark when it begins after civil dusk', () => {
    const sky = skyForOuting(PRACTICE_SITE, at('2027-02-13T03:00:00Z'), null);
    expect(isDark(sky, sky.startMs)).toBe(true);
    expect(isDark(sky, at('2027-02-13T12:00:00Z'))).toBe(false);
    expect(isDark(sky, at('2027-02-13T20:00:00Z'))).toBe(true);
  });
});

describe('beyond the polar circle', () => {
  test('midnight sun: no dusk, one band, the curve is still there', () => {
    const night = nightOf(site(70.66, 25.68, iana('Europe/Oslo')), '2027-06-15', 'clear');
    expect(night.dayState).toBe('always-up');
    expect(night.events.filter(({ event }) => !event.startsWith('moon'))).toEqual([]);
    expect(night.bands.map(({ band }) => band)).toEqual(['day']);
    expect(night.lowestSun.altitude).toBeCloseTo(3.98, 1);
    expect(night.sky.dark).toEqual([]);
    expect(skyEv(night.sky, night.lowestSun.at)).toBeGreaterThan(8);
  });

  test('polar night: twilight at noon, no sunrise', () => {
    const night = nightOf(site(70.66, 25.68, iana('Europe/Oslo')), '2027-12-20', 'clear');
    expect(night.dayState).toBe('always-down');
    expect(night.bands[0]?.band).toBe('civil');
    expect(event(night, 'sunset')).toBeNull();
    expect(event(night, 'civil-dusk')).not.toBeNull();
  });

  test('deep polar night: dark throughout', () => {
    const night = nightOf(site(88, 0), '2027-12-21', 'clear');
    expect(night.bands.map(({ band }) => band)).toEqual(['night']);
    expect(night.sky.dark).toEqual([{ fromMs: night.noonMs, toMs: night.nextNoonMs }]);
    expect(isDark(night.sky, night.noonMs)).toBe(true);
    expect(civilDusk(night.sky)).toBeNull();
  });

  test('bright night: dusk after midnight by the clock, never nautical', () => {
    const helsinki = site(60.17, 24.94, iana('Europe/Helsinki'));
    const night = nightOf(helsinki, '2027-06-21', 'clear');
    expect(clockOf(helsinki.zone, event(night, 'civil-dusk'))).toBe('2027-06-22 00:42');
    expect(event(night, 'nautical-dusk')).toBeNull();
    expect(night.dayState).toBe('rises-and-sets');
  });

  test('88 S: two sunsets within a day and weeks with none', () => {
    // The table of the U.S. Naval Observatory in the check sheet has sunset 2022-03-24 13:42 UTC.
    const south = site(-88, 45);
    const sunsets = [
      ...nightOf(south, '2022-03-23', 'clear').events,
      ...nightOf(south, '2022-03-24', 'clear').events,
    ].filter(({ event: name }) => name === 'sunset');
    expect(sunsets.length).toBeGreaterThanOrEqual(1);
    expect(
      sunsets.some(({ at: set }) => Math.abs(minutesBetween(set, at('2022-03-24T13:42:00Z'))) < 1),
    ).toBe(true);
    for (const date of ['2022-04-10', '2022-05-01', '2022-12-21']) {
      expect(event(nightOf(south, date, 'clear'), 'sunset')).toBeNull();
    }
  });

  test.each([90, -90])('at latitude %d there is a night without a fault', (lat) => {
    for (const date of ['2027-03-20', '2027-06-21', '2027-12-21']) {
      const night = nightOf(site(lat, 0), date, 'clear');
      expect(night.sky.clearEv100.every(Number.isFinite)).toBe(true);
      expect(minutesBetween(night.noonMs, night.nextNoonMs)).toBeGreaterThan(1438);
    }
  });
});

describe('the date of an evening', () => {
  test.each([
    ['Pacific/Kiritimati', 1.87, -157.4, '2027-05-02', '2027-05-02T04:53:36Z', '2027-05-02 18:54'],
    ['Pacific/Pago_Pago', -14.28, -170.7, '2027-05-01', '2027-05-02T05:29:29Z', '2027-05-01 18:29'],
    ['Pacific/Chatham', -43.95, -176.56, '2027-04-04', '2027-04-04T06:01:03Z', '2027-04-04 18:46'],
  ])(
    'in %s is that of its own clock, on either side of the date line',
    (name, lat, lon, date, instant, shown) => {
      const night = nightOf(site(lat, lon, iana(name)), date, 'clear');
      const dusk = event(night, 'civil-dusk');
      expect(Math.abs((dusk ?? 0) - at(instant))).toBeLessThan(10_000);
      expect(clockOf(iana(name), dusk)).toBe(shown);
    },
  );

  test.each(['2027-03-27', '2027-03-28', '2027-10-30', '2027-10-31'])(
    'on %s, when the clocks change, the night is as long as the sun makes it',
    (date) => {
      const night = nightOf(PRACTICE_SITE, date, 'clear');
      expect(Math.abs(minutesBetween(night.noonMs, night.nextNoonMs) - 1440)).toBeLessThan(3);
      expect(localTime(PRACTICE_SITE.zone, event(night, 'sunset') ?? night.noonMs).date).toBe(date);
    },
  );

  test("'tonight' is the coming evening by day, and the same one until morning", () => {
    for (const [instant, date] of [
      ['2027-02-12T08:00:00Z', '2027-02-12'],
      ['2027-02-12T17:30:00Z', '2027-02-12'],
      ['2027-02-13T00:30:00Z', '2027-02-12'],
      ['2027-02-13T05:30:00Z', '2027-02-12'],
      ['2027-02-13T07:00:00Z', '2027-02-13'],
    ] as const) {
      expect(eveningDate(PRACTICE_SITE, at(instant)), instant).toBe(date);
    }
  });

  test('leads back to a night that holds the instant, or is about to begin', () => {
    const anyNow = fc
      .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2040, 0, 1) })
      .map((now) => utc(now));
    fc.assert(
      fc.property(anySite, anyNow, fc.integer({ min: -240, max: 240 }), (spot, now, off) => {
        // No law puts a clock further than this from its sun.
        const offsetMin = minutesEast(Math.round(4 * spot.lonDeg) + off);
        const where: Site = { ...spot, zone: { kind: 'fixed', offsetMin } };
        const night = nightOf(where, eveningDate(where, now), 'clear');
        expect(minutesBetween(now, night.noonMs)).toBeLessThanOrEqual(6 * 60 + 1);
        expect(minutesBetween(now, night.noonMs)).toBeGreaterThan(-18 * 60 - 20);
      }),
      { numRuns: 40 },
    );
  });
});

// Each night follows sun and moon from noon to noon.
test('any night of any site: bands without gaps, events in order, the light at every minute', () => {
  const anyDay = fc
    .integer({ min: Date.UTC(2020, 0, 1), max: Date.UTC(2040, 0, 1) })
    .map((day) => new Date(day).toISOString().slice(0, 10));
  fc.assert(
    fc.property(anySite, anyDay, (where, date) => {
      const night = nightOf(where, date, null);
      expect(night.bands[0]?.fromMs).toBe(night.noonMs);
      expect(night.bands.at(-1)?.toMs).toBe(night.nextNoonMs);
      for (const [i, band] of night.bands.slice(1).entries()) {
        expect(band.fromMs).toBe(night.bands[i]?.toMs);
      }
      const times = night.events.map(({ at: when }) => when);
      expect(times).toEqual([...times].sort((a, b) => a - b));
      expect(night.sky.clearEv100.every((value) => value > -12.3 && value < 16)).toBe(true);
      const { altitude, at: lowest } = night.lowestSun;
      expect(sunPosition(lowest, placeOf(where)).altitude).toBeCloseTo(altitude, 1);
      // Each band holds a sun of its own height.
      for (const { band, fromMs, toMs } of night.bands) {
        if (toMs - fromMs < 10_000) continue;
        const middle = sunPosition(((fromMs + toMs) / 2) as UtcMs, placeOf(where)).altitude;
        const isDay = middle > -50 / 60 - 0.001;
        expect(isDay).toBe(band === 'day');
      }
    }),
    { numRuns: 40 },
  );
});

describe('a ridge toward the evening sun', () => {
  const open = nightOf(site(54.9, -3.6), '2027-06-21', 'clear');
  const shut = nightOf(site(54.9, -3.6, iana('Etc/UTC'), 10), '2027-06-21', 'clear');

  test('takes the sun away earlier, and its light, in the evening only', () => {
    const gone = shut.behindRidgeMs;
    if (gone === null) throw new Error('the sun never went behind the ridge');
    const sunset = event(open, 'sunset') ?? 0;
    expect(minutesBetween(gone, sunset as UtcMs)).toBeGreaterThan(60);
    const after = later(gone, 300);
    const loss = (skyEv(shut.sky, after) ?? 0) - (skyEv(open.sky, after) ?? 0);
    expect(loss).toBeLessThan(-1.2);
    expect(loss).toBeGreaterThan(-1.6);
    const before = later(gone, -900);
    expect(skyEv(shut.sky, before)).toBeCloseTo(skyEv(open.sky, before) ?? 0, 3);
    const morning = later(open.nextNoonMs, -8 * 3600);
    expect(skyEv(shut.sky, morning)).toBe(skyEv(open.sky, morning));
  });

  test('is not met where there is none', () => {
    expect(open.behindRidgeMs).toBeNull();
  });
});

test('cloud takes the stops that its divisor says', () => {
  const clear = nightOf(PRACTICE_SITE, PRACTICE_DATE, 'clear');
  const stratus = nightOf(PRACTICE_SITE, PRACTICE_DATE, 'dark-stratus');
  const dusk = at('2027-02-12T17:40:00Z');
  expect((skyEv(stratus.sky, dusk) ?? 0) - (skyEv(clear.sky, dusk) ?? 0)).toBeCloseTo(
    -Math.log2(10),
    9,
  );
});

test('a fixed offset does for a site without a zone', () => {
  const fixed = site(54.9, -3.6, { kind: 'fixed', offsetMin: minutesEast(0) });
  expect(nightOf(fixed, PRACTICE_DATE, 'clear').noonMs).toBe(
    nightOf(PRACTICE_SITE, PRACTICE_DATE, 'clear').noonMs,
  );
});
