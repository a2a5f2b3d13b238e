import type { Ev, Seconds, StopsPerMinute } from '../science/units.ts';

/*
 * The light of an evening in even steps, so that a search can look it up millions of times and knows
 * between which values it lies over a stretch. Between steps it is a line: of a dusk whose fade
 * changes by 0.02 stop a minute each minute, 10 s steps miss 0.00004 stop.
 */

const STEP_S = 10;

export interface LightTable {
  /** EV at 0, 10, 20 ... s. */
  readonly values: Float64Array;
  /** The lowest value from a step on to the end. */
  readonly lowestFrom: Float64Array;
  readonly highestFrom: Float64Array;
  /** From this step on the light never rises. */
  readonly fallsFrom: number;
}

/** The light from the start to a time. */
export function tabulate(light: (at: Seconds) => Ev, until: Seconds): LightTable {
  const count = Math.ceil(until / STEP_S) + 2;
  const values = Float64Array.from({ length: count }, (_, step) =>
    light((step * STEP_S) as Seconds),
  );
  const lowestFrom = values.slice();
  const highestFrom = values.slice();
  let fallsFrom = count - 1;
  for (let step = count - 2; step >= 0; step -= 1) {
    const [here, next] = [values[step] as number, values[step + 1] as number];
    lowestFrom[step] = Math.min(here, lowestFrom[step + 1] as number);
    highestFrom[step] = Math.max(here, highestFrom[step + 1] as number);
    if (fallsFrom === step + 1 && here >= next) fallsFrom = step;
  }
  return { values, lowestFrom, highestFrom, fallsFrom };
}

/** The light at an instant, EV; that at the table's end for one beyond it. */
export function lightAt({ values }: LightTable, at: number): number {
  const place = Math.min(at / STEP_S, values.length - 1);
  const step = Math.floor(place);
  const here = values[step] as number;
  const next = values[step + 1] ?? here;
  return here + (next - here) * (place - step);
}

const HALF_MINUTE_S = 30;

/** The fade at an instant over the minute around it, or as much of that as the table holds. */
export function fadeNear(table: LightTable, at: Seconds): StopsPerMinute {
  const end = (table.values.length - 1) * STEP_S;
  const from = Math.max(0, Math.min(at, end) - HALF_MINUTE_S);
  const to = Math.min(end, at + HALF_MINUTE_S);
  return ((60 * (lightAt(table, to) - lightAt(table, from))) / (to - from)) as StopsPerMinute;
}

/** The lowest and highest light from an instant on. */
export function lightFrom(
  { lowestFrom, highestFrom, values }: LightTable,
  at: number,
): { readonly lowest: number; readonly highest: number } {
  const step = Math.min(Math.floor(at / STEP_S), values.length - 1);
  return { lowest: lowestFrom[step] as number, highest: highestFrom[step] as number };
}

/**
 * For each step the least by which the light falls over a gap that begins there or later; 0 where it
 * may rise. Two frames that far apart, or farther, cannot be nearer in light.
 */
export function leastFall(table: LightTable, gapS: number): Float64Array {
  const { values, fallsFrom } = table;
  const last = values.length - 1;
  const least = new Float64Array(values.length);
  let lowest = Number.POSITIVE_INFINITY;
  for (let step = last; step >= 0; step -= 1) {
    const at = step * STEP_S;
    // The fall over the gap is a broken line, with its corners where either end meets a step.
    for (const from of [at, at - gapS + STEP_S * Math.ceil(gapS / STEP_S)]) {
      if (from + gapS <= last * STEP_S) {
        lowest = Math.min(lowest, lightAt(table, from) - lightAt(table, from + gapS));
      }
    }
    least[step] = step >= fallsFrom && Number.isFinite(lowest) ? Math.max(0, lowest) : 0;
  }
  return least;
}

/** The step at or before an instant, within the table. */
export const stepBefore = ({ values }: LightTable, at: number): number =>
  Math.min(Math.floor(at / STEP_S), values.length - 1);
