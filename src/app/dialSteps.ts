import type { IsoDial, TimeDial } from '../gear/body.ts';
import { parseDecimal } from '../gear/decimal.ts';
import type { FNumberDial } from '../gear/lens.ts';
import { ISO_MARKS, type Step, TIME_MARKS } from '../science/dialMarks.ts';
import { isRefusal } from '../science/refusal.ts';

/*
 * A dial keeps its reach when its step is changed: an end that the new series lacks moves to the
 * nearest mark, and missing positions of the old series are forgotten.
 */

const nearestMark = (marks: readonly string[], mark: string): string => {
  const wanted = parseDecimal(mark);
  if (isRefusal(wanted)) return mark;
  const distance = (candidate: string): number => {
    const figure = parseDecimal(candidate);
    return isRefusal(figure) ? Number.POSITIVE_INFINITY : Math.abs(Math.log2(figure / wanted));
  };
  return marks.reduce(
    (best, next) => (distance(next) < distance(best) ? next : best),
    marks[0] ?? mark,
  );
};

/** The ISO dial with another step. */
export function isoOnStep(dial: IsoDial, step: Step): IsoDial {
  const near = (mark: string) => nearestMark(ISO_MARKS[step], mark);
  return {
    step,
    lowest: near(dial.lowest),
    highest: near(dial.highest),
    extendedLowest: dial.extendedLowest === null ? null : near(dial.extendedLowest),
    extendedHighest: dial.extendedHighest === null ? null : near(dial.extendedHighest),
    missing: [],
  };
}

/** The time dial with another step below one second. The longest time may stand off any series. */
export const timeOnStep = (dial: TimeDial, step: Step): TimeDial => ({
  ...dial,
  step,
  shortest: nearestMark(
    TIME_MARKS[step].filter((mark) => mark.startsWith('1/')),
    dial.shortest,
  ),
  missing: [],
});

/** The f-number dial with another step; both ends may stand off the series. */
export const fNumberOnStep = (dial: FNumberDial, step: Step): FNumberDial => ({
  ...dial,
  step,
  missing: [],
});
