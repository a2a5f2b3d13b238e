import { isRefusal } from '../../src/science/refusal.ts';
import { type Outcome, sameUnit, sheetNumber } from './adapter.ts';
import { type Expected, expectsRefusal } from './entry.ts';

const INSTANT = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?Z$/;

/** What is wrong with one value; null if it is as expected. */
function valueFault(expected: unknown, got: Outcome, tolerance: number): string | null {
  const fault = `expected ${JSON.stringify(expected)}, got ${String(got)}`;
  if (Array.isArray(expected)) {
    if (!Array.isArray(got) || got.length !== expected.length) return fault;
    for (const [index, element] of expected.entries()) {
      const wrong = valueFault(element, got[index] as Outcome, tolerance);
      if (wrong !== null) return `element ${index}: ${wrong}`;
    }
    return null;
  }
  if (expected === null || typeof expected === 'boolean') return got === expected ? null : fault;
  if (typeof expected === 'string' && INSTANT.test(expected)) {
    if (typeof got !== 'string') return fault;
    const apart = Math.abs(Date.parse(got) - Date.parse(expected)) / 1000;
    return apart <= tolerance ? null : `${fault}, ${apart} s apart, allowed ${tolerance}`;
  }
  if (typeof got === 'string') return got === expected ? null : fault;
  if (typeof got !== 'number') return fault;
  const wanted = sheetNumber(expected);
  if (!Number.isFinite(wanted)) return Object.is(got, wanted) ? null : fault;
  const apart = Math.abs(got - wanted);
  // A value exactly on the edge (0.3125 printed as 0.313) must not fall to binary rounding.
  const rounding = 2 * Number.EPSILON * Math.abs(wanted);
  return apart <= tolerance + rounding ? null : `${fault}, ${apart} apart, allowed ${tolerance}`;
}

/** What is wrong with the outcome of a check; null if it is as expected. */
export function fault(
  expected: Expected,
  got: Outcome,
  unit: string,
  tolerance: number,
): string | null {
  if (expectsRefusal(expected)) {
    return isRefusal(got) ? null : `expected a refusal (${expected.reason}), got ${String(got)}`;
  }
  if (isRefusal(got)) return `refused by ${got.rule}`;
  if (sameUnit(expected.unit) !== sameUnit(unit)) {
    return `expected in ${expected.unit}, the adapter gives ${unit}`;
  }
  const fields =
    typeof got === 'object' && got !== null && 'value' in got ? got : ({ value: got } as const);
  for (const [name, value] of Object.entries(expected)) {
    if (name === 'unit') continue;
    if (!Object.hasOwn(fields, name)) return `the adapter gives no ${name}`;
    const wrong = valueFault(
      value,
      (fields as Record<string, Outcome>)[name] as Outcome,
      tolerance,
    );
    if (wrong !== null) return `${name}: ${wrong}`;
  }
  return null;
}
