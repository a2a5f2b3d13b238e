import { type Refusal, refuse } from './refusal.ts';
import type { Degrees, Metres } from './units.ts';

/** A spot on the earth. */
export interface Place {
  /** North positive, -90 to 90. */
  readonly lat: Degrees;
  /** East positive, -180 to 180. */
  readonly lon: Degrees;
  /** Above the sea. */
  readonly height: Metres;
}

/** A latitude from -90 to 90, else a refusal. */
export const parseLatitude = (value: number): Degrees | Refusal =>
  Math.abs(value) <= 90 ? (value as Degrees) : refuse('latitude-out-of-range');

/**
 * A longitude from -180 to 180. One counted from 0 to 360 eastward is taken too and comes back in
 * that range; anything else is refused.
 */
export function parseLongitude(value: number): Degrees | Refusal {
  if (!(value >= -180 && value <= 360)) return refuse('longitude-out-of-range');
  return (value > 180 ? value - 360 : value) as Degrees;
}
