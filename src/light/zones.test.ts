import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isRefusal, must } from '../science/refusal.ts';
import { minutesEast, utc } from '../science/units.ts';
import {
  clockNoon,
  daysLater,
  instantOf,
  localTime,
  offsetAt,
  parseZoneName,
  type Zone,
} from './zones.ts';

const zone = (name: string): Zone => must(parseZoneName(name));
const at = (iso: string) => utc(Date.parse(iso));

const clock = (date: string, hour: number, minute = 0) => ({ date, hour, minute });

describe('a clock time', () => {
  test('in the spring gap never comes, and stands for as much later', () => {
    expect(instantOf(zone('Europe/London'), clock('2027-03-28', 1, 30))).toEqual({
      kind: 'skipped',
      at: at('2027-03-28T01:30:00Z'),
    });
    expect(localTime(zone('Europe/London'), at('2027-03-28T01:30:00Z'))).toMatchObject({
      hour: 2,
      minute: 30,
    });
  });

  test('in the hour that autumn repeats comes twice', () => {
    expect(instantOf(zone('Europe/London'), clock('2027-10-31', 1, 30))).toEqual({
      kind: 'twice',
      first: at('2027-10-31T00:30:00Z'),
      second: at('2027-10-31T01:30:00Z'),
    });
  });

  test('repeats half an hour where summer time is half an hour', () => {
    expect(instantOf(zone('Australia/Lord_Howe'), clock('2027-04-04', 1, 45))).toEqual({
      kind: 'twice',
      first: at('2027-04-03T14:45:00Z'),
      second: at('2027-04-03T15:15:00Z'),
    });
    expect(instantOf(zone('Australia/Lord_Howe'), clock('2027-04-04', 1, 15)).kind).toBe('once');
  });

  test.each([
    ['Asia/Kathmandu', 345],
    ['Pacific/Chatham', 825],
    ['America/St_Johns', -210],
    ['Pacific/Kiritimati', 840],
    ['Pacific/Pago_Pago', -660],
  ])('in %s is %d minutes ahead of UTC on 12 February 2027', (name, offset) => {
    const found = instantOf(zone(name), clock('2027-02-12', 18, 5));
    expect(found).toEqual({
      kind: 'once',
      at: at('2027-02-12T18:05:00Z') - offset * 60_000,
    });
  });

  test('on a date that a zone left out never comes', () => {
    // The date line moved: 30 December 2011 did not happen there.
    expect(instantOf(zone('Pacific/Apia'), clock('2011-12-30', 12)).kind).toBe('skipped');
  });
});

test('the two sides of the date line are 25 hours of clock apart at one instant', () => {
  const moment = at('2027-05-02T05:00:00Z');
  expect(localTime(zone('Pacific/Kiritimati'), moment)).toMatchObject({
    date: '2027-05-02',
    hour: 19,
  });
  expect(localTime(zone('Pacific/Pago_Pago'), moment)).toMatchObject({
    date: '2027-05-01',
    hour: 18,
  });
});

test('a fixed offset needs no rules', () => {
  const fixed: Zone = { kind: 'fixed', offsetMin: minutesEast(-90) };
  expect(localTime(fixed, at('2027-02-12T00:15:30Z'))).toEqual({
    date: '2027-02-11',
    hour: 22,
    minute: 45,
    second: 30,
    offsetMin: -90,
  });
  expect(instantOf(fixed, clock('2027-02-11', 22, 45))).toEqual({
    kind: 'once',
    at: at('2027-02-12T00:15:00Z'),
  });
});

test('what a clock shows leads back to the instant, everywhere and always', () => {
  const anyZone = fc.constantFrom(
    ...Intl.supportedValuesOf('timeZone').filter((name) => /\//.test(name)),
  );
  const anyMinute = fc
    .integer({ min: Date.UTC(2020, 0, 1) / 60_000, max: Date.UTC(2037, 0, 1) / 60_000 })
    .map((minute) => utc(minute * 60_000));
  fc.assert(
    fc.property(anyZone, anyMinute, (name, instant) => {
      const shown = localTime(zone(name), instant);
      const back = instantOf(zone(name), shown);
      expect(back.kind).not.toBe('skipped');
      if (back.kind === 'twice') expect([back.first, back.second]).toContain(instant);
      else expect(back.at).toBe(instant);
    }),
    { numRuns: 400 },
  );
});

test('noon by the clock', () => {
  expect(clockNoon(zone('Asia/Shanghai'), '2027-06-21')).toBe(at('2027-06-21T04:00:00Z'));
});

test.each([
  ['2027-02-28', 1, '2027-03-01'],
  ['2028-02-28', 1, '2028-02-29'],
  ['2027-01-01', -1, '2026-12-31'],
])('%s and %d days is %s', (date, days, wanted) => {
  expect(daysLater(date, days)).toBe(wanted);
});

test.each(['Nowhere/Land', '+05:45', '', 'Europe/London; rm'])('%s is no zone', (name) => {
  expect(isRefusal(parseZoneName(name))).toBe(true);
});

test('an instant before 1970 and between two seconds', () => {
  expect(localTime(zone('Europe/London'), utc(-1))).toMatchObject({
    date: '1970-01-01',
    hour: 0,
    minute: 59,
    second: 59,
  });
  expect(offsetAt(zone('Europe/London'), utc(-1))).toBe(60);
});
