import type { Step } from './dialMarks.ts';
import { isRefusal, type Refusal, refuse } from './refusal.ts';
import {
  type FNumber,
  type Iso,
  parseFNumber,
  parseIso,
  parseSeconds,
  type Seconds,
} from './units.ts';

const STEPS_PER_STOP: Readonly<Record<Step, number>> = { third: 3, half: 2, whole: 1 };

/** Reads the name of a series; refuses any but 'third', 'half' and 'whole'. */
export function parseStep(name: string): Step | Refusal {
  return name === 'third' || name === 'half' || name === 'whole'
    ? name
    : refuse('dial-series-unknown');
}

/** The nearest power of two on the series of n steps per stop. */
const onGrid = (value: number, stepsPerStop: number): number =>
  2 ** (Math.round(stepsPerStop * Math.log2(value)) / stepsPerStop);

/**
 * The f-number behind a mark: 2^(k/2n), n steps a stop.
 *
 * The same mark means two values on two series (13 is 12.70 in thirds and 13.45
 * in halves). Not for a lens maximum off the series, which stays as marked.
 * Source: powers of two; printed third-stop values in Ray (1979), secondary copy.
 */
export const exactFNumber = (mark: FNumber, step: Step): FNumber =>
  // Half the exponent: a stop is a factor of the square root of two in the f-number.
  onGrid(mark, 2 * STEPS_PER_STOP[step]) as FNumber;

/**
 * The time in seconds behind a mark: 2^(k/n), n steps a stop.
 *
 * Source: common practice, no source; whether a body keeps it is in its profile.
 */
export const exactTime = (mark: Seconds, step: Step): Seconds =>
  onGrid(mark, STEPS_PER_STOP[step]) as Seconds;

/** The speed behind an ISO mark: 100 * 2^(k/n), n steps a stop. Source: common practice. */
export const exactIso = (mark: Iso, step: Step): Iso =>
  (100 * onGrid(mark / 100, STEPS_PER_STOP[step])) as Iso;

const DECIMAL = /^\d+(\.\d+)?$/;
const UNIT_FRACTION = /^1\/(\d+(?:\.\d+)?)$/;

/** The plain figure on a dial: digits with an optional decimal point. */
function figure(mark: string): number | Refusal {
  return DECIMAL.test(mark) ? Number(mark) : refuse('dial-mark-not-a-number');
}

/** The figure of an f-number mark ('6.3'); refuses all but a positive decimal. */
export function markedFNumber(mark: string): FNumber | Refusal {
  const value = figure(mark);
  return isRefusal(value) ? value : parseFNumber(value);
}

/** The figure of a time mark ('1/10', '0.3', '64') in seconds; refuses anything else. */
export function markedTime(mark: string): Seconds | Refusal {
  const denominator = UNIT_FRACTION.exec(mark)?.[1];
  const value = denominator === undefined ? figure(mark) : 1 / Number(denominator);
  return isRefusal(value) ? value : parseSeconds(value);
}

/** The figure of an ISO mark ('12800'); refuses all but a positive decimal. */
export function markedIso(mark: string): Iso | Refusal {
  const value = figure(mark);
  return isRefusal(value) ? value : parseIso(value);
}
