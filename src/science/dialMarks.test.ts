import { describe, expect, test } from 'vitest';
import { F_NUMBER_MARKS, ISO_MARKS, TIME_MARKS } from './dialMarks.ts';
import {
  exactFNumber,
  exactIso,
  exactTime,
  markedFNumber,
  markedIso,
  markedTime,
} from './dialSeries.ts';
import { must } from './refusal.ts';

/*
 * The printed tables, 'mark=exact value', against the marks that the dials are made of. Exact
 * f-numbers: Ray (1979) as reproduced on a stored page; times and ISO: common practice, no source.
 */
const PRINTED = [
  {
    name: 'f-numbers in third steps',
    marks: F_NUMBER_MARKS.third,
    exact: (mark: string) => exactFNumber(must(markedFNumber(mark)), 'third'),
    table: `
      1=1.0000 1.1=1.1225 1.2=1.2599 1.4=1.4142 1.6=1.5874 1.8=1.7818 2=2.0000 2.2=2.2449
      2.5=2.5198 2.8=2.8284 3.2=3.1748 3.5=3.5636 4=4.0000 4.5=4.4898 5=5.0397 5.6=5.6569
      6.3=6.3496 7.1=7.1272 8=8.0000 9=8.9797 10=10.0794 11=11.3137 13=12.6992 14=14.2544
      16=16.0000 18=17.9594 20=20.1587 22=22.6274 25=25.3984 29=28.5088 32=32.0000 36=35.9188
      40=40.3175 45=45.2548`,
  },
  {
    name: 'f-numbers in half steps',
    marks: F_NUMBER_MARKS.half,
    exact: (mark: string) => exactFNumber(must(markedFNumber(mark)), 'half'),
    table: `
      1=1.0000 1.2=1.1892 1.4=1.4142 1.7=1.6818 2=2.0000 2.4=2.3784 2.8=2.8284 3.3=3.3636
      4=4.0000 4.8=4.7568 5.6=5.6569 6.7=6.7272 8=8.0000 9.5=9.5137 11=11.3137 13=13.4543
      16=16.0000 19=19.0273 22=22.6274 27=26.9087 32=32.0000 38=38.0546 45=45.2548`,
  },
  {
    name: 'times in third steps',
    marks: TIME_MARKS.third,
    exact: (mark: string) => exactTime(must(markedTime(mark)), 'third'),
    table: `
      1/8000=1/8192.00 1/6400=1/6501.99 1/5000=1/5160.64 1/4000=1/4096.00 1/3200=1/3251.00
      1/2500=1/2580.32 1/2000=1/2048.00 1/1600=1/1625.50 1/1250=1/1290.16 1/1000=1/1024.00
      1/800=1/812.75 1/640=1/645.08 1/500=1/512.00 1/400=1/406.37 1/320=1/322.54
      1/250=1/256.00 1/200=1/203.19 1/160=1/161.27 1/125=1/128.00 1/100=1/101.59 1/80=1/80.63
      1/60=1/64.00 1/50=1/50.80 1/40=1/40.32 1/30=1/32.00 1/25=1/25.40 1/20=1/20.16
      1/15=1/16.00 1/13=1/12.70 1/10=1/10.08 1/8=1/8.00 1/6=1/6.35 1/5=1/5.04 1/4=1/4.00
      0.3=0.3150 0.4=0.3969 0.5=0.5000 0.6=0.6300 0.8=0.7937 1=1.0000 1.3=1.2599 1.6=1.5874
      2=2.0000 2.5=2.5198 3.2=3.1748 4=4.0000 5=5.0397 6=6.3496 8=8.0000 10=10.0794 13=12.6992
      15=16.0000 20=20.1587 25=25.3984 30=32.0000`,
  },
  {
    name: 'times in half steps',
    marks: TIME_MARKS.half,
    exact: (mark: string) => exactTime(must(markedTime(mark)), 'half'),
    table: `
      1/8000=1/8192.00 1/6000=1/5792.62 1/4000=1/4096.00 1/3000=1/2896.31 1/2000=1/2048.00
      1/1500=1/1448.15 1/1000=1/1024.00 1/750=1/724.08 1/500=1/512.00 1/350=1/362.04
      1/250=1/256.00 1/180=1/181.02 1/125=1/128.00 1/90=1/90.51 1/60=1/64.00 1/45=1/45.25
      1/30=1/32.00 1/20=1/22.63 1/15=1/16.00 1/10=1/11.31 1/8=1/8.00 1/6=1/5.66 1/4=1/4.00
      0.3=0.3536 0.5=0.5000 0.7=0.7071 1=1.0000 1.5=1.4142 2=2.0000 3=2.8284 4=4.0000 6=5.6569
      8=8.0000 10=11.3137 15=16.0000 20=22.6274 30=32.0000`,
  },
  {
    name: 'ISO in third steps',
    marks: ISO_MARKS.third,
    exact: (mark: string) => exactIso(must(markedIso(mark)), 'third'),
    table: `
      50=50.0 64=63.0 80=79.4 100=100.0 125=126.0 160=158.7 200=200.0 250=252.0 320=317.5
      400=400.0 500=504.0 640=635.0 800=800.0 1000=1007.9 1250=1269.9 1600=1600.0 2000=2015.9
      2500=2539.8 3200=3200.0 4000=4031.7 5000=5079.7 6400=6400.0 8000=8063.5 10000=10159.4
      12800=12800.0 16000=16127.0 20000=20318.7 25600=25600.0 32000=32254.0 40000=40637.5
      51200=51200.0 64000=64508.0 80000=81274.9 102400=102400.0`,
  },
  {
    name: 'ISO in half steps',
    marks: ISO_MARKS.half,
    exact: (mark: string) => exactIso(must(markedIso(mark)), 'half'),
    table: `
      50=50.0 70=70.7 100=100.0 140=141.4 200=200.0 280=282.8 400=400.0 560=565.7 800=800.0
      1100=1131.4 1600=1600.0 2200=2262.7 3200=3200.0 4500=4525.5 6400=6400.0 9000=9051.0
      12800=12800.0 18000=18101.9 25600=25600.0 36000=36203.9 51200=51200.0 72000=72407.7
      102400=102400.0`,
  },
].map((series) => ({
  ...series,
  rows: series.table
    .trim()
    .split(/\s+/)
    .map((row) => row.split('=') as [string, string]),
}));

/** Half the last printed digit of '1/8192.00' or '1.0000'. */
const halfDigit = (printed: string): number => 0.5 * 10 ** -(printed.split('.')[1] ?? '').length;

describe.each(PRINTED)('$name', ({ marks, exact, rows }) => {
  test('are marked as printed, without a gap', () => {
    const from = marks.indexOf(rows[0]?.[0] ?? '');
    expect(marks.slice(from, from + rows.length)).toEqual(rows.map(([mark]) => mark));
  });

  test.each(rows)('%s is %s', (mark, printed) => {
    // Printed as a fraction, the digits are those of the denominator.
    const value = printed.startsWith('1/') ? 1 / exact(mark) : exact(mark);
    const wanted = Number(printed.replace('1/', ''));
    expect(Math.abs(value - wanted)).toBeLessThanOrEqual(halfDigit(printed) * (1 + 1e-9));
  });
});

describe.each([
  ['f-numbers', F_NUMBER_MARKS],
  ['times', TIME_MARKS],
  ['ISO', ISO_MARKS],
])('%s in whole steps', (_, marks) => {
  test('are every third mark of the thirds and every second of the halves', () => {
    const { third, half, whole } = marks;
    expect(whole.filter((mark) => third.includes(mark))).toEqual(whole);
    const from = third.indexOf(whole[0] ?? '');
    expect(third.filter((__, index) => index >= from && (index - from) % 3 === 0)).toEqual(whole);
    const upToHalf = whole.slice(0, Math.ceil(half.length / 2));
    expect(half.filter((__, index) => index % 2 === 0)).toEqual(upToHalf);
  });
});
