import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isRefusal } from '../science/refusal.ts';
import { parseDecimal, parseMark } from './decimal.ts';

describe('a number as it is typed', () => {
  it.each([
    ['36', 36],
    [' 43,8 ', 43.8],
    ['43.8', 43.8],
    ['-0,15', -0.15],
    ['−0.15', -0.15],
    ['+2', 2],
    [',5', 0.5],
    ['1/10', 0.1],
    ['1/2,5', 0.4],
  ])('reads %j', (typed, value) => {
    expect(parseDecimal(typed)).toBe(value);
  });

  it.each(['', '12 800', '12.800,5', '1,234.5', '1.2.3', '1e5', '0x10', 'f/8', '2/3', '1/', '1/0'])(
    'refuses %j rather than guess',
    (typed) => {
      expect(parseDecimal(typed)).toEqual({ refused: true, rule: 'not-a-decimal' });
    },
  );

  it.each(['NaN', 'Infinity', '9'.repeat(400)])('refuses %j, which is no figure', (typed) => {
    expect(isRefusal(parseDecimal(typed))).toBe(true);
  });

  it('reads comma and point alike', () => {
    const cents = fc.integer({ min: -10_000_000, max: 10_000_000 });
    fc.assert(
      fc.property(cents, (value) => {
        const written = (value / 100).toFixed(2);
        expect(parseDecimal(written)).toBe(value / 100 + 0);
        expect(parseDecimal(written.replace('.', ','))).toBe(value / 100 + 0);
      }),
    );
  });
});

describe('a dial mark as it is typed', () => {
  it.each([
    ['6,3', '6.3'],
    ['06.30', '6.3'],
    ['1/8000', '1/8000'],
    ['1/2,5', '1/2.5'],
    ['0,3', '0.3'],
    ['12800', '12800'],
  ])('stores %j as %j', (typed, mark) => {
    expect(parseMark(typed)).toBe(mark);
  });

  it.each(['0', '-2', 'auto', 'f/8', '64 s', '1/0', '0.0000001', '9'.repeat(30)])(
    'refuses %j',
    (typed) => {
      expect(parseMark(typed)).toEqual({ refused: true, rule: 'not-a-mark' });
    },
  );

  it('leaves a mark that it has made as it is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1e6, noNaN: true }), (value) => {
        const mark = parseMark(value.toFixed(3));
        fc.pre(!isRefusal(mark));
        expect(parseMark(mark)).toBe(mark);
      }),
    );
  });
});
