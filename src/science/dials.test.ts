import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { F_NUMBER_MARKS, ISO_MARKS, type Step, TIME_MARKS } from './dialMarks.ts';
import {
  exactFNumber,
  exactIso,
  exactTime,
  markedFNumber,
  markedIso,
  markedTime,
} from './dialSeries.ts';
import {
  type DialPosition,
  fNumberPositions,
  isoPositions,
  nearestPosition,
  timePositions,
} from './dials.ts';
import { must, refuse } from './refusal.ts';
import { fNumber, iso } from './units.ts';

const STEPS: readonly Step[] = ['third', 'half', 'whole'];
const PER_STOP: Readonly<Record<Step, number>> = { third: 3, half: 2, whole: 1 };

const THIRDS = { widest: '1', narrowest: '64', step: 'third', missing: [] } as const;
const LENS = { widest: '4', narrowest: '32', step: 'third', missing: [] } as const;
const SENSITIVITY = {
  lowest: '64',
  highest: '25600',
  step: 'third',
  extendedLowest: null,
  extendedHighest: null,
  missing: [],
} as const;
const DOUBLING = {
  shortest: '1/4000',
  longest: '64',
  step: 'third',
  stepFrom1s: 'whole',
  beyond30s: 'doubling',
  longMarks: 'exact',
  missing: [],
} as const;
const MINUTES = {
  ...DOUBLING,
  longest: '60',
  stepFrom1s: 'third',
  beyond30s: 'minutes',
} as const;

const marksOf = (positions: readonly DialPosition<number>[]): readonly string[] =>
  positions.map((position) => position.mark);

const anyStep = fc.constantFrom(...STEPS);
const anyTimeDial = fc.record({
  shortest: fc.constantFrom('1/8000', '1/500', '1/8', '1'),
  longest: fc.constantFrom('4', '8', '27', '64', '60', '90', '900', '2048', '5000'),
  step: anyStep,
  stepFrom1s: anyStep,
  beyond30s: fc.constantFrom('doubling' as const, 'minutes' as const),
  longMarks: fc.constantFrom('exact' as const, 'as-marked' as const, 'unknown' as const),
  missing: fc.subarray(['1/4', '2', '15', '60']),
});
const anyLens = fc.record({
  widest: fc.constantFrom('0.95', '1', '1.4', '1.7', '2.8', '3.4', '4'),
  narrowest: fc.constantFrom('11', '16', '22', '24', '32', '64'),
  step: anyStep,
  missing: fc.subarray(['5.6', '8']),
});
const anyIsoDial = fc.record({
  lowest: fc.constantFrom('100', '200'),
  highest: fc.constantFrom('6400', '51200'),
  step: anyStep,
  extendedLowest: fc.constantFrom(null, '50'),
  extendedHighest: fc.constantFrom(null, '102400'),
  missing: fc.subarray(['100', '800']),
});

/** Every position is told from the next one and stands in order. */
function expectInOrder(positions: readonly DialPosition<number>[]): void {
  const exact = positions.map((position) => position.exact);
  expect(exact).toEqual([...exact].sort((a, b) => a - b));
  expect(new Set(exact).size).toBe(exact.length);
}

/** Every position is the one nearest to its own exact value. */
function expectRoundTrip(positions: readonly DialPosition<number>[]): void {
  for (const position of positions) {
    expect(nearestPosition(positions, position.exact)).toBe(position);
  }
}

describe('the series behind the marks', () => {
  const series = STEPS.flatMap((step) => [
    {
      name: `f-numbers in ${step} steps`,
      marked: F_NUMBER_MARKS[step].map((mark) => must(markedFNumber(mark)) as number),
      exact: F_NUMBER_MARKS[step].map((mark) => exactFNumber(must(markedFNumber(mark)), step)),
      ratio: 2 ** (1 / (2 * PER_STOP[step])),
      stopsPerOctave: 2,
    },
    {
      name: `times in ${step} steps`,
      marked: TIME_MARKS[step].map((mark) => must(markedTime(mark)) as number),
      exact: TIME_MARKS[step].map((mark) => exactTime(must(markedTime(mark)), step)),
      ratio: 2 ** (1 / PER_STOP[step]),
      stopsPerOctave: 1,
    },
    {
      name: `ISO in ${step} steps`,
      marked: ISO_MARKS[step].map((mark) => must(markedIso(mark)) as number),
      exact: ISO_MARKS[step].map((mark) => exactIso(must(markedIso(mark)), step)),
      ratio: 2 ** (1 / PER_STOP[step]),
      stopsPerOctave: 1,
    },
  ]);

  test.each(series)('$name leave no step out', ({ exact, ratio }) => {
    expect(exact.length).toBeGreaterThan(10);
    for (const [index, value] of exact.slice(1).entries()) {
      expect(value / (exact[index] as number)).toBeCloseTo(ratio, 10);
    }
  });

  // Worst case in the reference: 0.237 stop, '0.3' s in half steps.
  test.each(series)('$name are marked within 0.24 stop', ({ marked, exact, stopsPerOctave }) => {
    for (const [index, value] of exact.entries()) {
      const error = stopsPerOctave * Math.log2((marked[index] as number) / value);
      expect(Math.abs(error)).toBeLessThan(0.24);
    }
  });

  test('one mark means two values on two series', () => {
    const thirteen = fNumber(13);
    expect(exactFNumber(thirteen, 'third')).toBeCloseTo(12.6992, 4);
    expect(exactFNumber(thirteen, 'half')).toBeCloseTo(13.4543, 4);
  });
});

describe('the f-number dial', () => {
  test('stands in order, and each exact value leads back to its mark', () => {
    fc.assert(
      fc.property(anyLens, (dial) => {
        const positions = must(fNumberPositions(dial));
        expectInOrder(positions);
        expectRoundTrip(positions);
      }),
    );
  });

  test('runs in thirds from end to end', () => {
    expect(marksOf(must(fNumberPositions(LENS)))).toEqual(
      '4 4.5 5 5.6 6.3 7.1 8 9 10 11 13 14 16 18 20 22 25 29 32'.split(' '),
    );
  });

  test('keeps a widest off the series as it is marked, first', () => {
    const [first, second] = must(fNumberPositions({ ...LENS, widest: '1.7' }));
    expect(first).toEqual({ mark: '1.7', exact: 1.7, extended: false, onSeries: false });
    expect(second?.mark).toBe('1.8');
  });

  test('starts at a widest that lies between a mark and the value behind it', () => {
    // f/1.2 in thirds is 1.2599: neither the mark nor the value may stand before or beside 1.25.
    const positions = must(fNumberPositions({ ...LENS, widest: '1.25' }));
    expect(marksOf(positions).slice(0, 2)).toEqual(['1.25', '1.4']);
    expectInOrder(positions);
  });

  test('keeps a narrowest off the series as it is marked, last', () => {
    const last = must(fNumberPositions({ ...LENS, narrowest: '24' })).at(-1);
    expect(last).toEqual({ mark: '24', exact: 24, extended: false, onSeries: false });
  });

  test('has one position for a lens of one aperture', () => {
    expect(marksOf(must(fNumberPositions({ ...LENS, widest: '1.7', narrowest: '1.7' })))).toEqual([
      '1.7',
    ]);
  });

  test('leaves out what is missing', () => {
    const marks = marksOf(must(fNumberPositions({ ...LENS, missing: ['4.0', '29'] })));
    expect(marks).not.toContain('4');
    expect(marks).not.toContain('29');
    expect(marks).toHaveLength(17);
  });

  test.each([
    ['ends upside down', { widest: '8', narrowest: '4' }, 'dial-ends-upside-down'],
    ['a word', { widest: 'wide' }, 'dial-mark-not-a-number'],
    ['an empty mark', { narrowest: '' }, 'dial-mark-not-a-number'],
    ['a negative mark', { widest: '-4' }, 'dial-mark-not-a-number'],
    ['zero', { widest: '0' }, 'f-number-not-positive'],
    ['a word among the missing', { missing: ['none'] }, 'dial-mark-not-a-number'],
    ['nothing left', { narrowest: '4', missing: ['4'] }, 'dial-empty'],
  ])('refuses %s', (_, change, rule) => {
    expect(fNumberPositions({ ...LENS, ...change })).toEqual(refuse(rule));
  });
});

describe('the ISO dial', () => {
  test('stands in order, and each exact value leads back to its mark', () => {
    fc.assert(
      fc.property(anyIsoDial, (dial) => {
        const positions = must(isoPositions(dial));
        expectInOrder(positions);
        expectRoundTrip(positions);
      }),
    );
  });

  test('flags positions beyond the range the maker stands for', () => {
    const positions = must(
      isoPositions({
        ...SENSITIVITY,
        lowest: '100',
        highest: '400',
        step: 'whole',
        extendedLowest: '50',
        extendedHighest: '800',
      }),
    );
    expect(positions.map(({ mark, extended }) => [mark, extended])).toEqual([
      ['50', true],
      ['100', false],
      ['200', false],
      ['400', false],
      ['800', true],
    ]);
  });

  test('takes another way of writing an end', () => {
    const dial = { ...SENSITIVITY, step: 'half', lowest: '100', highest: '9600' } as const;
    expect(must(isoPositions(dial)).at(-1)?.mark).toBe('9000');
  });

  test.each([
    ['ends upside down', { lowest: '800', highest: '400' }, 'dial-ends-upside-down'],
    ['an extended end inside the range', { extendedLowest: '100' }, 'dial-ends-upside-down'],
    ['an extended end below the range', { extendedHighest: '800' }, 'dial-ends-upside-down'],
    ['an end off the series', { lowest: '65' }, 'dial-end-off-series'],
    ['an extended end off the series', { extendedHighest: '30000' }, 'dial-end-off-series'],
    ['a word', { highest: 'high' }, 'dial-mark-not-a-number'],
    ['zero', { lowest: '0' }, 'iso-not-positive'],
    ['nothing left', { highest: '64', missing: ['64'] }, 'dial-empty'],
  ])('refuses %s', (_, change, rule) => {
    expect(isoPositions({ ...SENSITIVITY, ...change })).toEqual(refuse(rule));
  });
});

describe('the time dial', () => {
  test('stands in order, and each exact value leads back to its mark', () => {
    fc.assert(
      fc.property(anyTimeDial, (dial) => {
        const positions = must(timePositions(dial));
        expectInOrder(positions);
        expectRoundTrip(positions);
      }),
    );
  });

  test('reads powers of two from 1 s if it doubles in whole steps', () => {
    const positions = must(timePositions(DOUBLING));
    const long = positions.filter((position) => position.exact >= 1);
    expect(marksOf(long)).toEqual(['1', '2', '4', '8', '16', '32', '64']);
    expect(long.map((position) => position.exact)).toEqual([1, 2, 4, 8, 16, 32, 64]);
    expect(marksOf(positions).slice(-10, -7)).toEqual(['0.5', '0.6', '0.8']);
  });

  test('reads thirds to 30 s and 60 s true if it goes on in minutes', () => {
    const positions = must(timePositions(MINUTES));
    const long = positions.filter((position) => position.exact >= 1);
    expect(marksOf(long)).toEqual('1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30 60'.split(' '));
    expect(long.slice(-2).map((position) => position.exact)).toEqual([32, 60]);
    expect(positions.some((position) => position.uncertain)).toBe(false);
  });

  test('runs rounded marks true if the body does', () => {
    const positions = must(timePositions({ ...MINUTES, longMarks: 'as-marked' }));
    expect(positions.find(({ mark }) => mark === '15')?.exact).toBe(15);
    expect(positions.find(({ mark }) => mark === '30')?.exact).toBe(30);
    expect(positions.find(({ mark }) => mark === '1/60')?.exact).toBe(1 / 64);
  });

  test('says which marks nobody has measured', () => {
    const positions = must(
      timePositions({ ...MINUTES, stepFrom1s: 'whole', longMarks: 'unknown' }),
    );
    expect(marksOf(positions.filter((position) => position.uncertain))).toEqual(['15', '30']);
    expect(positions.find(({ mark }) => mark === '15')?.exact).toBe(16);
  });

  test('goes on past 30 s by either habit', () => {
    const past30 = (longest: string, beyond30s: 'doubling' | 'minutes') =>
      must(timePositions({ ...MINUTES, longest, beyond30s }))
        .filter((position) => position.exact > 32)
        .map((position) => [position.mark, position.exact]);
    expect(past30('512', 'doubling')).toEqual([
      ['64', 64],
      ['128', 128],
      ['256', 256],
      ['512', 512],
    ]);
    expect(past30('900', 'minutes')).toEqual([
      ['60', 60],
      ['120', 120],
      ['240', 240],
      ['480', 480],
      ['900', 900],
    ]);
  });

  test('keeps a longest off the series as it is marked, last', () => {
    const last = must(timePositions({ ...MINUTES, longest: '3600' })).at(-1);
    expect(last).toEqual({
      mark: '3600',
      exact: 3600,
      extended: false,
      onSeries: false,
      uncertain: false,
    });
  });

  test.each([
    ['1/3', '0.3'],
    ['1/2', '0.5'],
    ['1/1.6', '0.6'],
    ['0.25', '1/4'],
    ['3', '3.2'],
  ])('takes %s for %s', (written, mark) => {
    const positions = must(timePositions({ ...MINUTES, shortest: written }));
    expect(positions[0]?.mark).toBe(mark);
  });

  test.each([
    ['ends upside down', { shortest: '2', longest: '1' }, 'dial-ends-upside-down'],
    ['a shortest off the series', { shortest: '1/7' }, 'dial-end-off-series'],
    ['a word', { longest: 'bulb' }, 'dial-mark-not-a-number'],
    ['a comma', { longest: '0,5' }, 'dial-mark-not-a-number'],
    ['a name of the language', { shortest: 'constructor' }, 'dial-mark-not-a-number'],
    ['a fraction without end', { shortest: '1/0' }, 'time-not-positive'],
    ['zero', { shortest: '0' }, 'time-not-positive'],
    ['nothing left', { shortest: '8', longest: '8', missing: ['8'] }, 'dial-empty'],
  ])('refuses %s', (_, change, rule) => {
    expect(timePositions({ ...MINUTES, ...change })).toEqual(refuse(rule));
  });
});

describe('the nearest position', () => {
  test('is within half a step anywhere between the ends', () => {
    const positions = must(fNumberPositions(THIRDS));
    fc.assert(
      fc.property(fc.double({ min: 1, max: 64, noNaN: true }), (wanted) => {
        const nearest = nearestPosition(positions, fNumber(wanted));
        const apart = 2 * Math.abs(Math.log2((nearest?.exact as number) / wanted));
        expect(apart).toBeLessThanOrEqual(1 / 6 + 1e-9);
      }),
    );
  });

  test('is none where there are no positions', () => {
    expect(nearestPosition([], iso(100))).toBeNull();
  });
});
