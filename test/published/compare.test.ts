import { describe, expect, test } from 'vitest';
import { refuse } from '../../src/science/refusal.ts';
import { fNumber, parseFNumber } from '../../src/science/units.ts';
import { adapter, number, optional } from './adapter.ts';
import { fault } from './compare.ts';
import type { Entry, Given } from './entry.ts';

const in1 = (value: unknown) => ({ value, unit: '1' });

describe('the comparison can fail', () => {
  test.each([
    ['a number outside the tolerance', in1(2), 2.011, 0.01],
    ['a number where a refusal is due', { rejects: true, reason: 'r' } as const, 2, 0],
    ['NaN where a refusal is due', { rejects: true, reason: 'r' } as const, Number.NaN, 0],
    ['a refusal where a number is due', in1(2), refuse('r'), 1],
    ['NaN where a number is due', in1(2), Number.NaN, 1],
    ['a finite number where infinity is due', in1('Infinity'), 1e300, 1],
    ['infinity where a number is due', in1(2), Number.POSITIVE_INFINITY, 1],
    ['an event where there is none', in1(null), 0, 1],
    ['no event where there is one', in1(2), null, 1],
    ['an element of an array', in1([1, 2, 3]), [1, 2, 4], 0.1],
    ['a number inside an array read as a range', in1([1, 3]), 2, 0],
    ['a shorter array', in1([1, 2]), [1], 0],
    ['an instant too late', in1('2027-02-12T17:45:00Z'), '2027-02-12T17:45:31Z', 30],
    ['a text', in1('AB'), 'BA', 0],
    ['a further field', { ...in1(2), type: 'SHORT' }, { value: 2, type: 'LONG' }, 0],
    ['a further field that is missing', { ...in1(2), type: 'SHORT' }, 2, 0],
  ])('%s', (_, expected, got, tolerance) => {
    expect(fault(expected, got, '1', tolerance)).not.toBeNull();
  });

  test('another unit', () => {
    expect(fault({ value: 2, unit: 'mm' }, 2, 'um', 0)).not.toBeNull();
  });
});

test.each([
  ['a number on the edge of the tolerance', in1(0.313), 0.3125, 0.0005],
  ['infinity', in1('Infinity'), Number.POSITIVE_INFINITY, 0],
  ['no event', in1(null), null, 0],
  ['an instant within seconds', in1('2027-02-12T17:45:00Z'), '2027-02-12T17:45:29Z', 30],
  ['a refusal', { rejects: true, reason: 'r' } as const, refuse('any rule'), 0],
])('the comparison takes %s', (_, expected, got, tolerance) => {
  expect(fault(expected, got, '1', tolerance)).toBeNull();
});

test('stop and stops are one unit', () => {
  expect(fault({ value: 1, unit: 'stop' }, 1, 'stops', 0)).toBeNull();
});

describe('an adapter', () => {
  const n = number('1', parseFNumber);
  const double = adapter({
    unit: '1',
    inputs: { N: n, M: optional(n, fNumber(4)) },
    run: (i) => i.N * i.M,
  });
  const entry = (inputs: Readonly<Record<string, Given>>): Entry => ({
    id: 'id',
    quantity: 'quantity',
    inputs,
    expected: in1(8),
    tolerance: 0,
    source: 'source',
    kind: 'derived',
  });

  test('takes an input that is left out from its default', () => {
    expect(double.run(entry({ N: in1(2) }))).toBe(8);
  });

  test('hands on the refusal of a constructor', () => {
    expect(double.run(entry({ N: in1('NaN') }))).toEqual(refuse('f-number-not-positive'));
  });

  test.each([
    ['an unknown input', { N: in1(2), O: in1(2) }, /unknown input O/],
    ['an unknown unit', { N: { value: 2, unit: 'mm' } }, /unknown unit mm/],
    ['a missing input', { M: in1(2) }, /N is missing/],
    ['a text for a number', { N: in1('two') }, /no number/],
  ])('fails on %s', (_, inputs, message) => {
    expect(() => double.run(entry(inputs))).toThrow(message);
  });
});
