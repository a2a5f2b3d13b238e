import { type Night, nightOf } from '../light/night.ts';
import type { Site } from '../light/site.ts';
import type { SkyCondition } from '../science/cloud.ts';

/*
 * The nights that were worked out last, for all who ask. Needs the ephemeris: loads later than the
 * first script.
 */

const MOST_NIGHTS = 12;
const nights = new Map<string, Night>();

/** The night of a site on a date (YYYY-MM-DD), as `nightOf` gives it. */
export function nightAt(of: Site, date: string, cloud: SkyCondition | null): Night {
  const { latDeg, lonDeg, heightM, ridgeDeg, zone } = of;
  const key = JSON.stringify([date, latDeg, lonDeg, heightM, ridgeDeg, zone]);
  // Without its cloud, which is said later and changes no position.
  const night = nights.get(key) ?? nightOf(of, date, null);
  const [oldest] = nights.keys();
  if (!nights.has(key) && nights.size >= MOST_NIGHTS && oldest !== undefined) nights.delete(oldest);
  nights.set(key, night);
  return { ...night, sky: { ...night.sky, cloud } };
}
