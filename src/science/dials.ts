import {
  F_NUMBER_MARKS,
  ISO_MARKS,
  LITERAL_DOUBLING_MARKS,
  LONG_MARKS,
  OTHER_ISO_MARKS,
  OTHER_TIME_MARKS,
  type Step,
  TIME_MARKS,
} from './dialMarks.ts';
import {
  exactFNumber,
  exactIso,
  exactTime,
  markedFNumber,
  markedIso,
  markedTime,
} from './dialSeries.ts';
import { stopsBetweenTimes } from './exposure.ts';
import { isRefusal, must, type Refusal, refuse } from './refusal.ts';
import type { FNumber, Iso, Seconds } from './units.ts';

export type { Step } from './dialMarks.ts';

/** One position of a real dial. */
export interface DialPosition<U> {
  /** As the body or lens shows it: '6.3', '1/10', '0.3', '64', '12800'. */
  readonly mark: string;
  /** What is computed with. */
  readonly exact: U;
  /** Beyond the range the maker stands for; never chosen by matching. */
  readonly extended: boolean;
  /** False for an end of the dial that lies off its series and stays as marked. */
  readonly onSeries: boolean;
}

/** A position of the time dial. */
export interface TimePosition extends DialPosition<Seconds> {
  /** Nobody has measured whether the mark or the power of two is true, and it matters. */
  readonly uncertain: boolean;
}

/** A mark with the figure it shows and the value behind it. */
interface Rung<U> {
  readonly mark: string;
  readonly marked: U;
  readonly exact: U;
}

/** From here on a mark and its power of two are told apart, in stops. */
const MARK_MATTERS_FROM = 0.005;

/** '2' and '2.0', '1/2' and '0.5' are one mark. */
const sameFigure = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * b;

const rungAt = <U extends number>(ladder: readonly Rung<U>[], figure: U): Rung<U> | undefined =>
  ladder.find((rung) => sameFigure(rung.marked, figure));

/** The rungs from one figure to another; both are on the ladder or lie between two rungs. */
function span<U extends number>(ladder: readonly Rung<U>[], from: U, to: U): readonly Rung<U>[] {
  const first = rungAt(ladder, from);
  const last = rungAt(ladder, to);
  // An end off the series has no power of two behind it: a neighbour counts as past it only if
  // both its mark and its exact value are, so that the dial stays in order.
  return ladder.filter(
    (rung) =>
      (first ? rung.exact >= first.exact : rung.marked > from && rung.exact > from) &&
      (last ? rung.exact <= last.exact : rung.marked < to && rung.exact < to),
  );
}

/** Leaves out the marks a body lacks. Refuses a mark that is no figure, or a dial left empty. */
function without<U extends number, P extends DialPosition<U>>(
  positions: readonly P[],
  missing: readonly string[],
  figureOf: (mark: string) => U | Refusal,
): readonly P[] | Refusal {
  const gone: U[] = [];
  for (const mark of missing) {
    const figure = figureOf(mark);
    if (isRefusal(figure)) return figure;
    gone.push(figure);
  }
  const left = positions.filter(
    (position) => !gone.some((figure) => sameFigure(must(figureOf(position.mark)), figure)),
  );
  return left.length > 0 ? left : refuse('dial-empty');
}

/** An end of a dial that lies off its series: exact is what it says. */
const asMarked = <U>(mark: string, figure: U): DialPosition<U> => ({
  mark,
  exact: figure,
  extended: false,
  onSeries: false,
});

const onSeries = <U>(rung: Rung<U>): DialPosition<U> => ({
  mark: rung.mark,
  exact: rung.exact,
  extended: false,
  onSeries: true,
});

/**
 * The f-number positions of a lens, wide to narrow.
 *
 * An end off the series (f/0.95, a zoom's f/3.4) is a stated maximum or minimum: it stays as
 * marked and stands first or last.
 *
 * @returns a refusal if a mark is no figure ('dial-mark-not-a-number', 'f-number-not-positive'),
 * the ends are upside down ('dial-ends-upside-down') or nothing is left ('dial-empty').
 */
export function fNumberPositions(dial: {
  readonly widest: string;
  readonly narrowest: string;
  readonly step: Step;
  readonly missing: readonly string[];
}): readonly DialPosition<FNumber>[] | Refusal {
  const widest = markedFNumber(dial.widest);
  const narrowest = markedFNumber(dial.narrowest);
  if (isRefusal(widest)) return widest;
  if (isRefusal(narrowest)) return narrowest;
  if (widest > narrowest) return refuse('dial-ends-upside-down');
  const ladder = F_NUMBER_MARKS[dial.step].map((mark): Rung<FNumber> => {
    const marked = must(markedFNumber(mark));
    return { mark, marked, exact: exactFNumber(marked, dial.step) };
  });
  const positions = span(ladder, widest, narrowest).map(onSeries);
  if (!rungAt(ladder, widest)) positions.unshift(asMarked(dial.widest, widest));
  if (!rungAt(ladder, narrowest) && narrowest > widest) {
    positions.push(asMarked(dial.narrowest, narrowest));
  }
  return without(positions, dial.missing, markedFNumber);
}

/**
 * The ISO positions of a body, low to high. Positions outside lowest..highest but inside the
 * extended range are flagged.
 *
 * @returns a refusal if a mark is no figure ('dial-mark-not-a-number', 'iso-not-positive'), an
 * end is not on the series ('dial-end-off-series'), the four ends are not in order
 * ('dial-ends-upside-down') or nothing is left ('dial-empty').
 */
export function isoPositions(dial: {
  readonly lowest: string;
  readonly highest: string;
  readonly step: Step;
  readonly extendedLowest: string | null;
  readonly extendedHighest: string | null;
  readonly missing: readonly string[];
}): readonly DialPosition<Iso>[] | Refusal {
  const figureOf = (mark: string): Iso | Refusal => {
    const figure = markedIso(mark);
    return isRefusal(figure) ? figure : markedIso(OTHER_ISO_MARKS[dial.step][mark] ?? mark);
  };
  const ladder = ISO_MARKS[dial.step].map((mark): Rung<Iso> => {
    const marked = must(markedIso(mark));
    return { mark, marked, exact: exactIso(marked, dial.step) };
  });
  const end = (mark: string): Iso | Refusal => {
    const figure = figureOf(mark);
    if (isRefusal(figure)) return figure;
    return rungAt(ladder, figure)?.exact ?? refuse('dial-end-off-series');
  };
  const lowest = end(dial.lowest);
  const highest = end(dial.highest);
  const extendedLowest = end(dial.extendedLowest ?? dial.lowest);
  const extendedHighest = end(dial.extendedHighest ?? dial.highest);
  if (isRefusal(lowest)) return lowest;
  if (isRefusal(highest)) return highest;
  if (isRefusal(extendedLowest)) return extendedLowest;
  if (isRefusal(extendedHighest)) return extendedHighest;
  if (lowest > highest || extendedLowest > lowest || extendedHighest < highest) {
    return refuse('dial-ends-upside-down');
  }
  const positions = ladder
    .filter((rung) => rung.exact >= extendedLowest && rung.exact <= extendedHighest)
    .map((rung) => ({
      ...onSeries(rung),
      extended: rung.exact < lowest || rung.exact > highest,
    }));
  return without(positions, dial.missing, figureOf);
}

/** The rungs from 1 s up that a body's habits give. */
function longRungs(
  stepFrom1s: Step,
  beyond30s: 'doubling' | 'minutes',
  longMarks: 'exact' | 'as-marked' | 'unknown',
): readonly Rung<Seconds>[] {
  const literal = (mark: string): Rung<Seconds> => {
    const marked = must(markedTime(mark));
    return { mark, marked, exact: marked };
  };
  const rounded = TIME_MARKS[stepFrom1s].map(literal).filter((rung) => rung.marked >= 1);
  const upTo30 =
    stepFrom1s === 'whole' && beyond30s === 'doubling'
      ? LITERAL_DOUBLING_MARKS.map(literal)
      : longMarks === 'as-marked'
        ? rounded
        : rounded.map((rung) => ({ ...rung, exact: exactTime(rung.marked, stepFrom1s) }));
  return [...upTo30, ...LONG_MARKS[beyond30s].map(literal)];
}

/**
 * The timed positions of a body in seconds, short to long.
 *
 * Below 1 s the marks follow `step`, from 1 s to 30 s `stepFrom1s`, beyond 30 s the habit:
 * 'doubling' goes on with powers of two (a dial in whole steps then reads 1 2 4 8 16 32 64),
 * 'minutes' with 60 120 240 480 900 1800, literally true. `longMarks` says what runs behind
 * rounded marks from 1 s to 30 s: the power of two, the mark, or nobody knows; then the power of
 * two is computed with and the position is `uncertain` where the two differ by more than 0.005
 * stop. A longest time off the series stays as marked and stands last.
 *
 * @returns a refusal if a mark is no figure ('dial-mark-not-a-number', 'time-not-positive'), the
 * shortest is not on the series ('dial-end-off-series'), the ends are upside down
 * ('dial-ends-upside-down') or nothing is left ('dial-empty').
 */
export function timePositions(dial: {
  readonly shortest: string;
  readonly longest: string;
  readonly step: Step;
  readonly stepFrom1s: Step;
  readonly beyond30s: 'doubling' | 'minutes';
  readonly longMarks: 'exact' | 'as-marked' | 'unknown';
  readonly missing: readonly string[];
}): readonly TimePosition[] | Refusal {
  const figureOf = (mark: string): Seconds | Refusal => {
    const figure = markedTime(mark);
    if (isRefusal(figure)) return figure;
    return markedTime(OTHER_TIME_MARKS[figure < 1 ? dial.step : dial.stepFrom1s][mark] ?? mark);
  };
  const shortest = figureOf(dial.shortest);
  const longest = figureOf(dial.longest);
  if (isRefusal(shortest)) return shortest;
  if (isRefusal(longest)) return longest;
  if (shortest > longest) return refuse('dial-ends-upside-down');
  const short = TIME_MARKS[dial.step]
    .map((mark): Rung<Seconds> => {
      const marked = must(markedTime(mark));
      return { mark, marked, exact: exactTime(marked, dial.step) };
    })
    .filter((rung) => rung.marked < 1);
  const ladder = [...short, ...longRungs(dial.stepFrom1s, dial.beyond30s, dial.longMarks)];
  if (!rungAt(ladder, shortest)) return refuse('dial-end-off-series');
  const positions = span(ladder, shortest, longest).map((rung): TimePosition => {
    const gap = Math.abs(stopsBetweenTimes(rung.marked, rung.exact));
    const unmeasured = dial.longMarks === 'unknown' && rung.marked >= 1;
    return { ...onSeries(rung), uncertain: unmeasured && gap > MARK_MATTERS_FROM };
  });
  if (!rungAt(ladder, longest)) {
    positions.push({ ...asMarked(dial.longest, longest), uncertain: false });
  }
  return without(positions, dial.missing, figureOf);
}

/** The position whose exact value lies nearest in stops; of two alike the first; null for none. */
export const nearestPosition = <U extends number, P extends DialPosition<U>>(
  positions: readonly P[],
  wanted: U,
): P | null => {
  // F-numbers count double in stops, which does not change which one is nearest.
  const distance = (position: P): number => Math.abs(Math.log2(position.exact / wanted));
  let nearest: P | null = null;
  for (const position of positions) {
    if (nearest === null || distance(position) < distance(nearest)) nearest = position;
  }
  return nearest;
};
