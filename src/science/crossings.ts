import { later, type UtcMs } from './units.ts';

/** A passage through a value. */
export interface Crossing {
  readonly at: UtcMs;
  readonly rising: boolean;
}

const STEP_S = 60;
const PRECISION_MS = 20;

/**
 * Every passage of a quantity through a value between two instants, in order. Looks once a minute,
 * then halves down to 0.02 s: an excursion shorter than a minute is not found. Where the quantity
 * is unknown (null) nothing is found.
 */
export function crossings(
  quantity: (at: UtcMs) => number | null,
  value: number,
  from: UtcMs,
  to: UtcMs,
): readonly Crossing[] {
  const above = (at: UtcMs): boolean | null => {
    const found = quantity(at);
    return found === null ? null : found >= value;
  };
  const found: Crossing[] = [];
  let before = from;
  let wasAbove = above(before);
  while (before < to) {
    const after = Math.min(to, later(before, STEP_S)) as UtcMs;
    const isAbove = above(after);
    if (wasAbove !== null && isAbove !== null && wasAbove !== isAbove) {
      found.push({ at: passage(above, before, after, isAbove), rising: isAbove });
    }
    before = after;
    wasAbove = isAbove;
  }
  return found;
}

function passage(
  above: (at: UtcMs) => boolean | null,
  before: UtcMs,
  after: UtcMs,
  endsAbove: boolean,
): UtcMs {
  let low = before;
  let high = after;
  while (high - low > PRECISION_MS) {
    const middle = ((low + high) / 2) as UtcMs;
    if (above(middle) === endsAbove) high = middle;
    else low = middle;
  }
  return Math.round((low + high) / 2) as UtcMs;
}
