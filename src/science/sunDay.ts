import { SUN_LIMITS } from './skyEvents.ts';
import type { SkyPath } from './skyPath.ts';
import { type Degrees, later, type UtcMs } from './units.ts';

/** Whether the sun crosses the horizon between two noons: midnight sun, polar night, or neither. */
export type DayState = 'always-up' | 'always-down' | 'rises-and-sets';

/** An altitude and when it is reached. */
export interface Extreme {
  readonly altitude: Degrees;
  readonly at: UtcMs;
}

/** The lowest and the highest sun of a path, to the minute. */
export function sunExtremes({ from, to, sunAltitude }: SkyPath): {
  readonly lowest: Extreme;
  readonly highest: Extreme;
} {
  let lowest: Extreme = { altitude: sunAltitude(from), at: from };
  let highest = lowest;
  for (let at = from; at <= to; at = later(at, 60)) {
    const altitude = sunAltitude(at);
    if (altitude < lowest.altitude) lowest = { altitude, at };
    if (altitude > highest.altitude) highest = { altitude, at };
  }
  return { lowest, highest };
}

/** What the lowest and the highest sun between two noons make of the day. */
export function dayState(lowest: Degrees, highest: Degrees): DayState {
  if (lowest >= SUN_LIMITS.horizon) return 'always-up';
  return highest < SUN_LIMITS.horizon ? 'always-down' : 'rises-and-sets';
}

const DATE = /^\d{4}-\d\d-\d\d$/;

/**
 * Twelve o'clock by the sun's mean time at a longitude on a calendar date (YYYY-MM-DD): solar noon
 * falls within 17 minutes of it.
 *
 * @throws RangeError for a text that is no date.
 */
export function localMeanNoon(date: string, lon: Degrees): UtcMs {
  const noonUtc = DATE.test(date) ? Date.parse(`${date}T12:00:00Z`) : Number.NaN;
  if (Number.isNaN(noonUtc)) throw new RangeError('not-a-date');
  return (noonUtc - (lon / 15) * 3_600_000) as UtcMs;
}
