import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isFault } from '../gear/read.ts';
import { type Cell, writeCsv } from './csv.ts';
import { readCsv } from './readCsv.ts';

const lines = (
  rows: Cell[][],
  header = rows[0]?.map((_cell, index) => `c${index}`) ?? [],
): string => writeCsv({ header, rows });

describe('writing', () => {
  it('begins with a byte order mark and ends every line with CR LF', () => {
    expect(lines([['a', 1]])).toBe('\uFEFFc0,c1\r\na,1\r\n');
  });

  it('quotes what would break a row, and doubles quotes', () => {
    expect(lines([['a,b', 'say "no"', 'two\nlines', ' edge']])).toBe(
      '\uFEFFc0,c1,c2,c3\r\n"a,b","say ""no""","two\nlines"," edge"\r\n',
    );
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', "'=1"])(
    'lets no spreadsheet run %j',
    (text) => {
      const cell = lines([[text]]).split('\r\n')[1] ?? '';
      expect(cell.replace('"', '').startsWith("'")).toBe(true);
    },
  );

  it('writes figures with a point and without exponent, and unknown as nothing', () => {
    const figures = [-0.76, 1 / 8192, 1e-9, -1e-16, 0.1 + 0.2, 25600, true, null, Number.NaN];
    const row = lines([figures]).split('\r\n')[1];
    expect(row).toBe('-0.76,0.0001220703125,0.000000001,0,0.3,25600,true,,');
  });
});

describe('reading', () => {
  it('takes either line end, with or without mark and last line end', () => {
    const table = {
      header: ['a', 'b'],
      rows: [
        ['1', ''],
        ['', 'x y'],
      ],
    };
    expect(readCsv('a,b\n1,\n,x y')).toEqual(table);
    expect(readCsv('\uFEFFa,b\r\n1,\r\n,x y\r\n')).toEqual(table);
  });

  it('removes one guard and leaves other apostrophes', () => {
    expect(readCsv("a\r\n'=1\r\n''=1\r\n'tis\r\n")).toEqual({
      header: ['a'],
      rows: [['=1'], ["'=1"], ["'tis"]],
    });
  });

  it.each([
    ['csv-quote-open', 2, 'a,b\r\n1,"open\r\nand on'],
    ['csv-quote-stray', 3, 'a,b\r\n1,2\r\n"x"y,2\r\n'],
    ['csv-quote-stray', 2, 'a,b\r\nx"y,2\r\n'],
    ['csv-row-length', 3, 'a,b\r\n1,2\r\n1,2,3\r\n'],
  ])('names %s at line %i', (rule, line, file) => {
    expect(readCsv(file)).toMatchObject({ rule, params: { line } });
  });

  it('counts the lines inside quotes', () => {
    expect(readCsv('a\r\n"1\n2\n3"\r\nx,y\r\n')).toMatchObject({
      rule: 'csv-row-length',
      params: { line: 5, expected: 1, found: 2 },
    });
  });

  it('says that an empty file is empty', () => {
    expect(readCsv('')).toMatchObject({ rule: 'file-empty' });
  });
});

describe('a table that went out and came back', () => {
  const text = fc.string({ unit: fc.constantFrom(...'a ,"\'=+-@\t\r\n;|é日0.'), maxLength: 12 });
  const width = fc.integer({ min: 1, max: 5 });
  const table = width.chain((columns) =>
    fc.record({
      header: fc.array(text, { minLength: columns, maxLength: columns }),
      rows: fc.array(fc.array(text, { minLength: columns, maxLength: columns }), { maxLength: 6 }),
    }),
  );

  it('is the same text', () => {
    fc.assert(
      fc.property(table, (before) => {
        expect(readCsv(writeCsv(before))).toEqual(before);
      }),
    );
  });

  it('has the same figures to nine digits', () => {
    const figure = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(figure, (value) => {
        const back = readCsv(writeCsv({ header: ['f'], rows: [[value]] }));
        const cell = isFault(back) ? undefined : back.rows[0]?.[0];
        expect(cell).toMatch(/^-?\d+(\.\d+)?$/);
        expect(Math.abs(Number(cell) - value)).toBeLessThanOrEqual(
          Math.max(1e-12, 1e-9 * Math.abs(value)),
        );
      }),
    );
  });

  it('never throws when it is cut or changed on the way', () => {
    fc.assert(
      fc.property(table, fc.nat(), fc.constantFrom('"', ',', '\r', '\n', ''), (before, at, put) => {
        const file = writeCsv(before);
        const place = at % (file.length + 1);
        const read = readCsv(file.slice(0, place) + put);
        if (isFault(read)) expect(read.rule).toMatch(/^(csv-|file-empty)/);
        else for (const row of read.rows) expect(row).toHaveLength(read.header.length);
      }),
    );
  });
});
