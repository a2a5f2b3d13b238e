/*
 * The marks that dials carry, in order from wide to narrow, short to long and
 * low to high. A mark is the body's rounding of a power of two; the value
 * behind it is computed in dialSeries.ts, never from the rounded figure.
 *
 * Which marks a body shows is common practice, no source. The tables run a
 * little past both ends of the usual ones (f/51 to f/64, times shorter than
 * 1/8000 s, ISO above 102400), from memory.
 */

/** The size of one step of a dial, as a part of a stop. */
export type Step = 'third' | 'half' | 'whole';

type Marks = Readonly<Record<Step, readonly string[]>>;

const list = (marks: string): readonly string[] => marks.trim().split(/\s+/);

/** F-number marks, f/1 to f/64. */
export const F_NUMBER_MARKS: Marks = {
  third: list(`
    1 1.1 1.2 1.4 1.6 1.8 2 2.2 2.5 2.8 3.2 3.5 4 4.5 5 5.6 6.3 7.1
    8 9 10 11 13 14 16 18 20 22 25 29 32 36 40 45 51 57 64`),
  half: list(`
    1 1.2 1.4 1.7 2 2.4 2.8 3.3 4 4.8 5.6 6.7 8 9.5 11 13 16 19 22 27 32 38 45 54 64`),
  whole: list('1 1.4 2 2.8 4 5.6 8 11 16 22 32 45 64'),
};

/** Time marks in seconds, 1/32000 s to 30 s. */
export const TIME_MARKS: Marks = {
  third: list(`
    1/32000 1/25600 1/20000 1/16000 1/12800 1/10000 1/8000 1/6400 1/5000 1/4000 1/3200 1/2500
    1/2000 1/1600 1/1250 1/1000 1/800 1/640 1/500 1/400 1/320 1/250 1/200 1/160 1/125 1/100 1/80
    1/60 1/50 1/40 1/30 1/25 1/20 1/15 1/13 1/10 1/8 1/6 1/5 1/4 0.3 0.4 0.5 0.6 0.8
    1 1.3 1.6 2 2.5 3.2 4 5 6 8 10 13 15 20 25 30`),
  half: list(`
    1/32000 1/24000 1/16000 1/12000 1/8000 1/6000 1/4000 1/3000 1/2000 1/1500 1/1000 1/750 1/500
    1/350 1/250 1/180 1/125 1/90 1/60 1/45 1/30 1/20 1/15 1/10 1/8 1/6 1/4 0.3 0.5 0.7
    1 1.5 2 3 4 6 8 10 15 20 30`),
  whole: list(`
    1/32000 1/16000 1/8000 1/4000 1/2000 1/1000 1/500 1/250 1/125 1/60 1/30 1/15 1/8 1/4 0.5
    1 2 4 8 15 30`),
};

/** ISO marks, 25 to 819200 (half steps to 102400). */
export const ISO_MARKS: Marks = {
  third: list(`
    25 32 40 50 64 80 100 125 160 200 250 320 400 500 640 800 1000 1250 1600 2000 2500
    3200 4000 5000 6400 8000 10000 12800 16000 20000 25600 32000 40000 51200 64000 80000 102400
    128000 160000 204800 256000 320000 409600 512000 640000 819200`),
  half: list(`
    25 35 50 70 100 140 200 280 400 560 800 1100 1600 2200 3200 4500 6400 9000 12800 18000
    25600 36000 51200 72000 102400`),
  whole: list(`
    25 50 100 200 400 800 1600 3200 6400 12800 25600 51200 102400 204800 409600 819200`),
};

/** What a dial in whole steps shows from 1 s to 30 s if it goes on doubling; runs as marked. */
export const LITERAL_DOUBLING_MARKS: readonly string[] = list('1 2 4 8 16 32');

/** The marks past 30 s by the body's habit; they run as marked. */
export const LONG_MARKS: Readonly<Record<'doubling' | 'minutes', readonly string[]>> = {
  doubling: list('64 128 256 512 1024 2048 4096'),
  minutes: list('60 120 240 480 900 1800'),
};

/** Other ways of writing a time mark, by step; common practice, no source. */
export const OTHER_TIME_MARKS: Readonly<Record<Step, Readonly<Record<string, string>>>> = {
  third: { '1/3': '0.3', '1/1.6': '0.6', '1/1.3': '0.8', '3': '3.2' },
  half: { '1/3': '0.3' },
  whole: {},
};

/** Other ways of writing an ISO mark, by step; common practice, no source. */
export const OTHER_ISO_MARKS: Readonly<Record<Step, Readonly<Record<string, string>>>> = {
  third: {},
  half: { '1200': '1100', '2400': '2200', '4800': '4500', '9600': '9000' },
  whole: {},
};
