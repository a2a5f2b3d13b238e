import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn, skyOf } from '../../../../test/arbitraries/sky.ts';
import { fitScene } from '../../../light/fit.ts';
import { nightOf } from '../../../light/night.ts';
import { PRACTICE_DATE, PRACTICE_SITE } from '../../../light/practice.ts';
import { assumedScene } from '../../../light/scene.ts';
import type { Site } from '../../../light/site.ts';
import { localTime, type Zone } from '../../../light/zones.ts';
import { degrees, ev, later, minutesEast, utc } from '../../../science/units.ts';
import { coordinatesText, typedCoordinates } from './coordinates.ts';
import { curveOf, hourTicks } from './curve.ts';
import { viewsOf } from './views.ts';

const view = { fromMs: minutesOn(0), toMs: minutesOn(120) };

describe('the curve', () => {
  it('follows the sky a minute at a time, with the width of nine in ten', () => {
    const points = curveOf(assumedScene(EVEN_DUSK), view);
    expect(points).toHaveLength(121);
    expect(points[60]).toMatchObject({ at: minutesOn(60), sky: -4 });
    expect(points[60]?.ev).toBeCloseTo(-4, 10);
    // 1.6 sigma of two stops.
    expect(points[60]?.low).toBeCloseTo(-4 - 3.2, 10);
    expect(points[60]?.high).toBeCloseTo(-4 + 3.2, 10);
  });

  it('parts from the sky where readings say so, and from them on grows wider', () => {
    const reading = { at: minutesOn(20), meter: 'spot', ev100: ev(6) };
    const points = curveOf(fitScene(EVEN_DUSK, [reading]), view);
    expect(points[20]?.sky).toBeCloseTo(4, 10);
    expect(points[20]?.ev).toBeCloseTo(6, 1);
    const width = (minute: number) => (points[minute]?.high ?? 0) - (points[minute]?.low ?? 0);
    expect(width(20)).toBeLessThan(1);
    expect(width(50)).toBeGreaterThan(2 * width(20));
  });

  it('of a whole day has no more points than pixels, and none where the sky is not known', () => {
    const sky = skyOf(() => 3, 24 * 60);
    const whole = curveOf(assumedScene(sky), { fromMs: minutesOn(0), toMs: minutesOn(24 * 60) });
    expect(whole).toHaveLength(289);
    const beyond = curveOf(assumedScene(EVEN_DUSK), {
      fromMs: minutesOn(100),
      toMs: minutesOn(160),
    });
    expect(beyond.at(-1)?.at).toBe(minutesOn(120));
  });

  it('holds a point at each reading in view, and none that is not in time', () => {
    const at = later(minutesOn(20), 17);
    const reading = { at, meter: 'spot', ev100: ev(6) };
    const after = { at: minutesOn(100), meter: 'spot', ev100: ev(-10) };
    const scene = fitScene(EVEN_DUSK, [reading, { ...reading, meter: 'camera' }, after]);
    const points = curveOf(scene, { fromMs: minutesOn(0), toMs: minutesOn(60) });
    expect(points).toHaveLength(61 + 2);
    expect(points.filter((point) => point.reading).map((point) => point.at)).toEqual([at, at]);
    expect(points.map((point) => point.at)).toEqual(
      points.map((point) => point.at).toSorted((a, b) => a - b),
    );
  });
});

describe('the hours under the curve', () => {
  it.each<[string, Zone, number, string]>([
    ['in Nepal', { kind: 'fixed', offsetMin: minutesEast(345) }, 15, '23:00'],
    ['in Newfoundland', { kind: 'fixed', offsetMin: minutesEast(-210) }, 30, '14:00'],
  ])('are whole hours of the site’s clock, %s too', (_, zone, minute, first) => {
    const ticks = hourTicks(view, (at) => localTime(zone, at), 300, 50);
    expect(ticks.map((at) => new Date(at).getUTCMinutes())).toEqual([minute, minute]);
    const { hour } = localTime(zone, ticks[0] ?? utc(0));
    expect(`${hour}:00`).toBe(first);
  });

  it('are whole hours again after a clock was moved by half an hour', () => {
    // By the rule of Lord Howe Island: from 02:00 on, UTC+10:30 becomes UTC+11.
    const zone: Zone = { kind: 'iana', name: 'Australia/Lord_Howe' };
    const morning = { fromMs: utc(Date.UTC(2027, 9, 2, 14)), toMs: utc(Date.UTC(2027, 9, 2, 18)) };
    const ticks = hourTicks(morning, (at) => localTime(zone, at), 400, 50);
    expect(ticks.map((at) => new Date(at).toISOString().slice(11, 16))).toEqual([
      '14:30',
      '16:00',
      '17:00',
      '18:00',
    ]);
  });

  it('of a day on a narrow screen stand six hours apart', () => {
    const day = { fromMs: minutesOn(0), toMs: minutesOn(24 * 60) };
    const ticks = hourTicks(day, (at) => localTime({ kind: 'iana', name: 'UTC' }, at), 240, 45);
    expect(ticks.map((at) => new Date(at).getUTCHours())).toEqual([18, 0, 6, 12]);
  });
});

describe('what is drawn of a night', () => {
  const at = (lat: number, date: string): Site => ({
    ...PRACTICE_SITE,
    latDeg: degrees(lat),
    note: date,
  });
  const viewsAt = (lat: number, date: string) => viewsOf(nightOf(at(lat, date), date, null));
  const hours = (stretch?: { fromMs: number; toMs: number }) =>
    stretch ? (stretch.toMs - stretch.fromMs) / 3_600_000 : null;

  it('is dusk from an hour and a quarter before sunset to full night, and dawn likewise', () => {
    const views = viewsOf(nightOf(PRACTICE_SITE, PRACTICE_DATE, null));
    expect([...views.keys()]).toEqual(['dusk', 'night', 'dawn']);
    // Sunset 17:14:30, astronomical dusk 19:17; dawn 05:39:30, sunrise 07:41:40.
    const [dusk, dawn] = [views.get('dusk'), views.get('dawn')];
    expect(Math.abs((dusk?.fromMs ?? 0) - Date.UTC(2027, 1, 12, 15, 59, 30))).toBeLessThan(60_000);
    expect(Math.abs((dusk?.toMs ?? 0) - Date.UTC(2027, 1, 12, 19, 52))).toBeLessThan(60_000);
    expect(Math.abs((dawn?.fromMs ?? 0) - Date.UTC(2027, 1, 13, 5, 4, 30))).toBeLessThan(60_000);
    expect(Math.abs((dawn?.toMs ?? 0) - Date.UTC(2027, 1, 13, 8, 56, 40))).toBeLessThan(60_000);
  });

  it('goes on to the darkest minute where it never gets fully dark, and is never endless', () => {
    const views = viewsAt(60, '2027-06-21');
    const night = nightOf(at(60, ''), '2027-06-21', null);
    expect(views.get('dusk')?.toMs).toBe(night.lowestSun.at + 35 * 60_000);
    for (const date of ['2027-06-21', '2027-03-20', '2027-12-21']) {
      for (const lat of [-88, -66, 0, 48, 66, 78, 88]) {
        for (const [name, stretch] of viewsAt(lat, date)) {
          expect(hours(stretch)).toBeGreaterThan(0);
          if (name !== 'night') expect(hours(stretch)).toBeLessThanOrEqual(8);
        }
      }
    }
  });

  it('is the whole of it where the sun passes no limit', () => {
    expect([...viewsAt(69.6, '2027-06-21').keys()]).toEqual(['night']);
  });
});

describe('coordinates in a field', () => {
  it('can be read back as they stand', () => {
    for (const [lat, lon] of [
      [54.9, -3.6],
      [-0.0001, 179.9999],
      [0, 0],
      [-89.5, -180],
    ] as const) {
      const text = coordinatesText({ lat: degrees(lat), lon: degrees(lon) });
      expect(typedCoordinates(text)).toEqual({ lat, lon });
    }
  });

  it('are kept to eleven metres, and refused with their rule', () => {
    expect(typedCoordinates('54.123456 -3.987654')).toEqual({ lat: 54.1235, lon: -3.9877 });
    expect(typedCoordinates('95 N 3 W')).toMatchObject({ rule: 'latitude-out-of-range' });
  });
});
