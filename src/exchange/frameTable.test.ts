import { describe, expect, it } from 'vitest';
import {
  A,
  B,
  dialled,
  Evening,
  frame,
  held,
  planOf,
  s,
  twoSets,
} from '../../test/evenings/evening.ts';
import { isFault } from '../gear/read.ts';
import { frameRecords, framesCsv } from './frameTable.ts';
import { readCsv } from './readCsv.ts';

/** The rows of an evening's file, read back: cells under the names of their columns. */
function rowsOf(evening: Evening): Readonly<Record<string, string>>[] {
  const table = readCsv(framesCsv(evening.state()));
  if (isFault(table)) throw new Error(table.rule);
  return table.rows.map((row) =>
    Object.fromEntries(table.header.map((name, index) => [name, row[index] ?? ''])),
  );
}

describe('the practice pair', () => {
  // 36 x 24 at f/8, 60 s against 43.8 x 32.9 at f/6.3, 64 s, ISO 100 both: 0.67 stop by aperture
  // and 0.09 by time in favour of the larger; with its area (0.74) 1.50 in all.
  const evening = new Evening([
    frame('base', A, dialled('6.3', '64', '100')),
    frame('base', B, dialled('8', '60', '100'), { visit: 2 }),
  ]);
  evening.tap({ tap: 'set-counter', rig: B, next: 7 }).setUp().shootAll();
  const [a, b] = rowsOf(evening);

  it('stands under Exif names with the figures of the marks', () => {
    expect(a).toMatchObject({
      ExposureTime: '64',
      FNumber: '6.3',
      PhotographicSensitivity: '100',
      FocalLength: '45',
      TimeMark: '64',
      Rig: 'A',
      Body: 'Alder 44',
      Lens: 'Alder 45 mm',
    });
    expect(Number(a?.['FNumberExact'])).toBeCloseTo(6.3496, 4);
    expect(b).toMatchObject({ ExposureTime: '60', FNumber: '8', FileName: 'BIR00007' });
  });

  it('states the differences of the pair and what evens it up', () => {
    expect(a).toMatchObject({ Reference: 'A', SumStops: '', EvenUpStops: '' });
    expect(Number(b?.['ApertureStops'])).toBeCloseTo(-0.667, 3);
    expect(Number(b?.['TimeStops'])).toBeCloseTo(-0.093, 3);
    expect(b?.['IsoStops']).toBe('0');
    expect(Number(b?.['SumStops'])).toBeCloseTo(-0.76, 2);
    expect(Number(b?.['EvenUpStops'])).toBeCloseTo(0.76, 2);
    expect(Number(b?.['LightPerAreaStops'])).toBeCloseTo(-0.76, 2);
    expect(Number(b?.['LightWholeSensorStops'])).toBeCloseTo(-1.5, 2);
  });

  it('leaves unknown empty, and names what is unknown', () => {
    expect(b).toMatchObject({ OffsetStops: '', TransmissionStops: '', FadeStops: '' });
    expect(b?.['UnknownCauses']?.split(' ')).toEqual(['offset', 'transmission', 'fade']);
  });

  it('says that it is invented', () => {
    expect(a?.['Invented']).toBe('true');
  });

  it('gives the instants in UTC with the offset of the place', () => {
    const opened = Date.parse(a?.['OpenedUtc'] ?? '');
    const closed = Date.parse(a?.['ClosedUtc'] ?? '');
    expect(closed - opened).toBe(64_000);
    expect(a?.['OpenedUtc']).toMatch(/^2027-02-12T\d\d:\d\d:\d\d\.\d{3}Z$/);
    expect(a).toMatchObject({ OffsetTimeOriginal: '+00:00', TimeZone: 'Etc/UTC' });
  });
});

describe('the offset of a place', () => {
  it.each([
    [0, '+00:00'],
    [60, '+01:00'],
    [345, '+05:45'],
    [-210, '-03:30'],
  ])('of %i minutes is %s', (offsetMin, written) => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const state = evening.state();
    const made = state.made.map((one) => ({
      ...one,
      startedAt: { ...one.startedAt, offsetMin },
    }));
    expect(frameRecords({ ...state, made })[0]?.['OffsetTimeOriginal']).toBe(written);
  });
});

describe('what really happened', () => {
  it('keeps a retake beside the first try, and says which one counts', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const [first] = evening.state().made;
    if (!first) throw new Error('no frame was made');
    evening.tap({ tap: 'judge', made: first.id, verdict: 'moved' });
    evening.tap({ tap: 'retake', frame: first.planned.key }).shoot();
    const [one, two] = rowsOf(evening);
    expect(one).toMatchObject({ Attempt: '1', Counts: 'false', Verdict: 'moved' });
    expect(two).toMatchObject({ Attempt: '2', Counts: 'true', Verdict: '' });
  });

  it('gives a bulb frame as long as the hand held it, and how sure that is', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().pass(299);
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(rowsOf(evening)[0]).toMatchObject({
      TimeMark: 'bulb',
      ExposureTime: '298',
      ExposureTimeFrom: 'hand-steady',
      ExposureTimeUncertainty: '0.3',
      PlannedExposureTime: '240',
      PlannedTimeMark: 'bulb',
      LeadInSeconds: '2',
    });
  });

  it('states no uncertainty where only the wall clock bridged the time', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().pass(100).reload(142);
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(rowsOf(evening)[0]).toMatchObject({
      ExposureTimeFrom: 'hand-wall',
      ExposureTimeUncertainty: '',
    });
  });

  it('leaves the time empty where the clock ran backwards', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().reload(-3600);
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(rowsOf(evening)[0]).toMatchObject({ ExposureTime: '', ExposureTimeFrom: 'unknown' });
  });

  it('follows a correction, differences included, and keeps what was first logged', () => {
    const evening = new Evening(twoSets()).setUp().shootAll();
    const before = rowsOf(evening)[1];
    const made = evening.state().made[1];
    if (!made) throw new Error('no second frame');
    evening.tap({ tap: 'correct', made: made.id, change: { field: 'isoMark', value: '200' } });
    evening.tap({ tap: 'correct', made: made.id, change: { field: 'elapsedS', value: s(30) } });
    const after = rowsOf(evening)[1];
    expect(before).toMatchObject({ Corrected: 'false', FirstLoggedPhotographicSensitivity: '' });
    expect(after).toMatchObject({
      PhotographicSensitivity: '200',
      ExposureTime: '30',
      ExposureTimeFrom: 'correction',
      Corrected: 'true',
      AsPlanned: 'false',
      FirstLoggedPhotographicSensitivity: '100',
      PlannedPhotographicSensitivity: '100',
    });
    expect(Number(after?.['SumStops']) - Number(before?.['SumStops'])).toBeCloseTo(0, 9);
    expect(Number(after?.['IsoStops'])).toBeCloseTo(1, 9);
    expect(Number(after?.['TimeStops']) - Number(before?.['TimeStops'])).toBeCloseTo(-1, 9);
  });

  it('lets no note run in a spreadsheet, and gives it back as it was', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const [first] = evening.state().made;
    if (!first) throw new Error('no frame was made');
    const note = '=HYPERLINK("x","fog, ""thick""")\nand wind';
    evening.tap({ tap: 'note', text: note, made: first.id });
    expect(framesCsv(evening.state())).not.toMatch(/(^|,|")=/m);
    expect(rowsOf(evening)[0]?.['Notes']).toBe(note);
  });

  it('keeps the name of a plan that begins like a formula, and places the frame in its set', () => {
    const frames = twoSets();
    const plan = { ...planOf(frames), name: '-2 test' };
    const [row] = rowsOf(new Evening(frames, plan).setUp().shoot());
    expect(row).toMatchObject({ Plan: '-2 test', SetNumber: '1', SetKind: 'light', Pass: '1' });
  });
});

describe('the file and the records', () => {
  it('say the same, column by column', () => {
    const evening = new Evening(twoSets()).setUp().shootAll();
    const rows = rowsOf(evening);
    const records = frameRecords(evening.state());
    expect(records).toHaveLength(4);
    records.forEach((record, index) => {
      const row = rows[index] ?? {};
      expect(Object.keys(row)).toEqual(Object.keys(record));
      for (const [name, cell] of Object.entries(record)) {
        if (typeof cell === 'number') expect(Number(row[name])).toBeCloseTo(cell, 9);
        else expect(row[name]).toBe(cell === null ? '' : String(cell));
      }
    });
  });
});

describe('heat', () => {
  it('has columns of its own, with its range, in no sum', () => {
    const [a, b] = rowsOf(new Evening(twoSets()).setUp().shoot().shoot());
    for (const row of [a, b]) {
      const [least, usual, most] = ['Least', '', 'Most'].map((which) =>
        Number(row?.[`SensorHeat${which}Stops`]),
      ) as [number, number, number];
      expect(least).toBeGreaterThan(0);
      expect(usual).toBeGreaterThan(least);
      expect(most).toBeGreaterThan(usual);
      expect(row?.['SensorHeatUnknown']).toBe('');
    }
    expect(a).toMatchObject({ PairHeatStops: '', PairHeatUnknown: '' });
    const pair = Number(b?.['SensorHeatStops']) - Number(a?.['SensorHeatStops']);
    expect(Number(b?.['PairHeatStops'])).toBeCloseTo(pair, 9);
    const causes = ['Time', 'Aperture', 'Iso'].map((cause) => Number(b?.[`${cause}Stops`]));
    expect(Number(b?.['SumStops'])).toBeCloseTo(
      causes.reduce((sum, each) => sum + each, 0),
      9,
    );
  });

  it('is unknown, never zero, after a battery was changed', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    evening.tap({ tap: 'battery-changed', rig: B }).shoot();
    const [a, b] = rowsOf(evening);
    expect(Number(a?.['SensorHeatStops'])).toBeGreaterThan(0);
    expect(b).toMatchObject({
      SensorHeatStops: '',
      SensorHeatUnknown: 'battery-changed',
      PairHeatStops: '',
      PairHeatLeastStops: '',
      PairHeatUnknown: 'battery-changed',
    });
  });

  it('stands beside what each frame takes in its set’s mean', () => {
    const [a, b] = rowsOf(new Evening(twoSets()).setUp().shoot().shoot());
    expect(a?.['WeightsInMeans']).toBe('B:-1');
    expect(b?.['WeightsInMeans']).toBe('B:1');
  });
});
