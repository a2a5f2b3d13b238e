import { isRefusal, type Refusal, refuse } from '../science/refusal.ts';

const DECIMAL = /^[+\-−]?(?:\d+(?:[.,]\d+)?|[.,]\d+)$/;
const UNIT_FRACTION = /^1\/(\d+(?:[.,]\d+)?)$/;

const figure = (text: string): number => Number(text.replace(',', '.').replace('−', '-'));

/**
 * A number as a person types it: comma or point before the decimals, never a
 * mark between thousands, and `1/10` for a tenth.
 *
 * @returns a refusal ('not-a-decimal') for anything else, so that '12 800' or
 * '1.234,5' is never read as some other number.
 */
export function parseDecimal(typed: string): number | Refusal {
  const text = typed.trim();
  const denominator = UNIT_FRACTION.exec(text)?.[1];
  const value =
    denominator !== undefined
      ? 1 / figure(denominator)
      : DECIMAL.test(text)
        ? figure(text)
        : Number.NaN;
  return Number.isFinite(value) ? value : refuse('not-a-decimal');
}

/**
 * A dial mark in the one spelling that is stored: point, no idle zeros; '6,30' is
 * '6.3' and '1/8000' stays.
 *
 * @returns a refusal ('not-a-mark') unless it names a positive position.
 */
export function parseMark(typed: string): string | Refusal {
  const value = parseDecimal(typed);
  if (isRefusal(value) || value <= 0) return refuse('not-a-mark');
  const denominator = UNIT_FRACTION.exec(typed.trim())?.[1];
  const mark = denominator === undefined ? String(value) : `1/${figure(denominator)}`;
  // A figure so large or small that it needs an exponent stands on no dial.
  return mark.includes('e') ? refuse('not-a-mark') : mark;
}
