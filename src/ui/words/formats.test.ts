import { expect, test } from 'vitest';
import { parseDecimal } from '../../gear/decimal.ts';
import { type Seconds, seconds, stops } from '../../science/units.ts';
import { figures as german } from './figures.de.ts';
import { figures } from './figures.en.ts';

const format = figures;

test('stops carry a sign and a real minus, and zero carries none', () => {
  expect(format.stops(stops(0.762))).toBe('+0.8');
  expect(format.stopsFine(stops(0.762))).toBe('+0.76');
  expect(format.stopsFine(stops(-0.738))).toBe('\u22120.74');
  expect(format.stops(stops(-0.04))).toBe('0.0');
  expect(format.stopsFine(stops(0.004))).toBe('0.00');
});

test('figures from five digits on stand in groups that do not break', () => {
  expect(format.number(6400, 0)).toBe('6400');
  expect(format.number(12_800, 0)).toBe('12\u00a0800');
  expect(format.number(-1_234_567.891, 2)).toBe('\u22121\u00a0234\u00a0567.89');
  expect(format.isoMark('12800')).toBe('ISO\u00a012\u00a0800');
});

test('typed values keep the decimals they have', () => {
  expect(format.plain(43.8)).toBe('43.8');
  expect(format.plain(36)).toBe('36');
  expect(format.plain(-0.15)).toBe('\u22120.15');
  expect(format.plain(1 / 3)).toBe('0.333');
});

test('durations read like a clock', () => {
  expect(format.duration(seconds(64))).toBe('1:04');
  expect(format.duration(seconds(3723))).toBe('1:02:03');
  expect(format.duration(-7 as Seconds)).toBe('\u22120:07');
  expect(format.duration(0 as Seconds)).toBe('0:00');
});

test('instants are shown in the zone they were taken in', () => {
  const evening = Date.UTC(2027, 1, 12, 17, 42, 7);
  expect(format.time(evening, 0)).toBe('17:42');
  expect(format.timeFine(evening, 60)).toBe('18:42:07');
  expect(format.date(Date.UTC(2027, 1, 12, 23, 30), 60)).toBe('13 Feb 2027');
  expect(format.calendarDate('2027-02-12')).toBe('12 Feb 2027');
});

test('marks are written as the body shows them', () => {
  expect(format.fMark('6.3')).toBe('f/6.3');
  expect(format.timeMark('1/10')).toBe('1/10\u00a0s');
  expect(format.timeChoice({ kind: 'dial', mark: '64' })).toBe('64\u00a0s');
});

/** Seen to fail with a point for the comma in `figures.de.ts`. */
test('German writes commas and its own dates, and leaves the marks of dials as they are', () => {
  expect(german.stopsFine(stops(0.762))).toBe('+0,76');
  expect(german.stops(stops(-0.738))).toBe('\u22120,7');
  expect(german.plain(43.8)).toBe('43,8');
  expect(german.number(12_800.5, 1)).toBe('12\u00a0800,5');
  expect(german.calendarDate('2027-02-12')).toBe('12. Feb. 2027');
  expect(german.fMark('6.3')).toBe('f/6.3');
  expect(german.timeMark('1/10')).toBe('1/10\u00a0s');
});

/** Seen to fail with a middle dot for the comma, which `parseDecimal` does not take. */
test.each([figures, german])('what a field shows in a language can be read back', ({ plain }) => {
  for (const value of [43.8, -0.15, 0.002, 36]) {
    expect(parseDecimal(plain(value))).toBe(value);
  }
});
