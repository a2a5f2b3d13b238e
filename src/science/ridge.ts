import { apparentAltitude, USUAL_PRESSURE, USUAL_TEMPERATURE } from './refraction.ts';
import type { Degrees, Share } from './units.ts';

/** Half of the sun's disc, in degrees. */
const SUN_RADIUS = 0.267;

/** How many times its own depth the air's curve measures. */
const EARTH_OVER_AIR = 753.66156;

/**
 * The part of the light on level ground that comes straight from the sun, by its airless altitude
 * in degrees: 3 % at 2, 31 % at 5, 64 % at 10, 81 % at 20, nothing at or below the horizon.
 * Source: Janiczek & DeYoung, USNO Circular 171, 1987, whose formula keeps the two apart.
 */
export function directShare(sunAltitude: Degrees): number {
  if (sunAltitude <= 0) return 0;
  const h = (sunAltitude * Math.PI) / 180;
  const sine = Math.sin(h);
  const s = Math.asin((EARTH_OVER_AIR * Math.cos(h)) / (EARTH_OVER_AIR + 1));
  const airMass = EARTH_OVER_AIR * (Math.cos(s) - sine) + Math.cos(s);
  const direct = Math.exp(-0.21 * airMass) * sine;
  const scattered =
    0.0289 * Math.exp(-0.042 * airMass) * (1 + ((sunAltitude + 90) * sine * Math.PI) / 180);
  return direct / (direct + scattered);
}

/** How far the sun's disc stands above a ridge: 0 = gone, 1 = free; in between in proportion. */
export function discAboveRidge(sunAltitude: Degrees, ridge: Degrees): number {
  if (sunAltitude < -1) return 0;
  const seen = apparentAltitude(sunAltitude, USUAL_PRESSURE, USUAL_TEMPERATURE);
  return Math.min(1, Math.max(0, (seen + SUN_RADIUS - ridge) / (2 * SUN_RADIUS)));
}

/**
 * The part of the light that is left where a ridge of this height (degrees above level) stands
 * toward the sun. Only the direct light is cut: 0.2 stop at 3 degrees, 1.1 at 8, 2.4 at 20. How
 * much of the glow the ridge hides as well is unknown and left to the meter.
 */
export const lightPastRidge = (sunAltitude: Degrees, ridge: Degrees): Share =>
  (1 - directShare(sunAltitude) * (1 - discAboveRidge(sunAltitude, ridge))) as Share;
