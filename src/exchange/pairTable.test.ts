import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { EVEN_DUSK } from '../../test/arbitraries/sky.ts';
import { B, Evening, planOf, twoSets } from '../../test/evenings/evening.ts';
import type { SetId } from '../plan/ids.ts';
import { stops } from '../science/units.ts';
import { frameRecords, framesCsv } from './frameTable.ts';
import { pairRecords, pairsCsv } from './pairTable.ts';

const walked = () =>
  new Evening(twoSets(), planOf(twoSets()), 'phone', EVEN_DUSK).setUp().shootAll();

/** As a general reader of RFC 4180 has it. */
const read = (csv: string): Record<string, string>[] =>
  parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' });

const asText = (cell: unknown): string =>
  cell === null
    ? ''
    : typeof cell === 'number'
      ? String(Number(cell.toPrecision(10)))
      : String(cell);

describe('the table of pairs', () => {
  it('reads back by a general reader, cell by cell, as does that of frames', () => {
    const run = walked().state();
    for (const [csv, records] of [
      [pairsCsv(run), pairRecords(run)],
      [framesCsv(run), frameRecords(run)],
    ] as const) {
      const rows = read(csv);
      expect(rows).toHaveLength(records.length);
      for (const [at, record] of records.entries()) {
        for (const [name, cell] of Object.entries(record)) {
          const found = rows[at]?.[name] ?? 'gone';
          if (typeof cell === 'number') expect(Number(found), name).toBeCloseTo(cell, 9);
          // Text that a spreadsheet would run is guarded by an apostrophe.
          else expect(found.replace(/^'(?=[+])/, ''), name).toBe(asText(cell));
        }
      }
    }
  });

  it('has a row for the whole set and one for each pass, and sums what is known', () => {
    const records = pairRecords(walked().state());
    expect(records.map((record) => [record['Rig'], record['Pass']])).toEqual([
      ['B', null],
      ['B', 1],
      ['A', null],
      ['A', 1],
    ]);
    for (const record of records) {
      const causes = ['Time', 'Aperture', 'Iso', 'Offset', 'Fade'];
      const sum = causes.reduce((total, cause) => total + Number(record[`${cause}Stops`] ?? 0), 0);
      expect(record['SumStops']).toBeCloseTo(sum, 9);
      expect(record['EvenUpStops']).toBeCloseTo(-sum, 9);
      expect(record['UnknownCauses']).toBe('offset transmission');
      expect(record['FadeKnownBy']).toBe('predicted');
    }
  });

  it('sets what was needed beside what was predicted', () => {
    const evening = walked().tap({
      tap: 'even-up',
      found: {
        set: 'base' as SetId,
        rig: B,
        pass: null,
        needed: { stops: stops(1), sigma: null, by: 'typed' },
      },
    });
    const [whole] = pairRecords(evening.state());
    expect(whole).toMatchObject({ NeededStops: 1, NeededBy: 'typed', NeededUncertainty: 0.1 });
    expect(whole?.['LeftOverStops']).toBeCloseTo(1 - Number(whole?.['EvenUpStops']), 9);
  });
});
