import type { Ev, Seconds, Stops, StopsPerMinute } from './units.ts';

/**
 * The EV of a scene that is lit by the sky and by lamps: the two add as light, log2(2^sky +
 * 2^lamps). Lamps are taken as constant; null = none known.
 */
export const withLamps = (sky: Ev, lamps: Ev | null): Ev =>
  lamps === null
    ? sky
    : ((Math.max(sky, lamps) + Math.log2(1 + 2 ** -Math.abs(sky - lamps))) as Ev);

/**
 * By how much the mean light of an exposure exceeds that at its middle while the light fades (or
 * grows) evenly in stops: log2(sinh(a)/a), a = |fade| x minutes x ln 2 / 2. Exact; at 0.3 stop a
 * minute 0.003 stop over one minute, 0.041 over four.
 */
export function meanMinusMid(exposure: Seconds, fade: StopsPerMinute): Stops {
  const a = (Math.abs(fade) * (exposure / 60) * Math.LN2) / 2;
  // Below this the quotient is 1 + a²/6, and sinh(a)/a would be 0/0 at none.
  return (a < 1e-4 ? a ** 2 / (6 * Math.LN2) : Math.log2(Math.sinh(a) / a)) as Stops;
}
