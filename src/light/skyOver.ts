import type { SkyCondition } from '../science/cloud.ts';
import { crossings } from '../science/crossings.ts';
import { solarNoonAfter } from '../science/ephemeris.ts';
import { incidentEv, naturalLight } from '../science/naturalLight.ts';
import { SUN_LIMITS } from '../science/skyEvents.ts';
import { type SkyPath, skyPath } from '../science/skyPath.ts';
import { degrees, type Ev, later, type UtcMs } from '../science/units.ts';
import { placeOf, type Site } from './site.ts';
import { SKY_STEP_MS, type SkyTable, type Stretch } from './skyTable.ts';

const MINUTE_S = 60;
const LEVEL = degrees(0);

/** Finer than any meter, and short in a journal. */
const rounded = (value: Ev): Ev => (Math.round(value * 1e4) / 1e4) as Ev;

/**
 * The table of a sky whose sun and moon have been followed. The ridge counts while the sun sinks:
 * what stands toward the morning sun is unknown.
 */
export function skyTableOf(site: Site, path: SkyPath, cloud: SkyCondition | null): SkyTable {
  const count = Math.floor((path.to - path.from) / SKY_STEP_MS) + 1;
  const clearEv100 = Array.from({ length: count }, (_, minute) => {
    const at = later(path.from, minute * MINUTE_S);
    const sinks = path.sunAltitude(later(at, MINUTE_S)) < path.sunAltitude(at);
    return rounded(incidentEv(naturalLight(path, at, sinks ? site.ridgeDeg : LEVEL)));
  });
  return { startMs: path.from, clearEv100, cloud, dark: darkStretches(path) };
}

function darkStretches({ from, to, sunAltitude }: SkyPath): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let fromMs = sunAltitude(from) < SUN_LIMITS.civil ? from : null;
  for (const { at, rising } of crossings(sunAltitude, SUN_LIMITS.civil, from, to)) {
    if (rising && fromMs !== null) stretches.push({ fromMs, toMs: at });
    fromMs = rising ? null : at;
  }
  return fromMs === null ? stretches : [...stretches, { fromMs, toMs: to }];
}

/** Follows sun and moon over a site between two instants, widened to whole minutes. */
export const pathOver = (site: Site, from: UtcMs, to: UtcMs): SkyPath =>
  skyPath(
    placeOf(site),
    (Math.floor(from / SKY_STEP_MS) * SKY_STEP_MS) as UtcMs,
    (Math.ceil(to / SKY_STEP_MS) * SKY_STEP_MS) as UtcMs,
  );

/** The sky over a site between two instants, widened to whole minutes. */
export const skyOver = (site: Site, from: UtcMs, to: UtcMs, cloud: SkyCondition | null): SkyTable =>
  skyTableOf(site, pathOver(site, from, to), cloud);

const HALF_DAY_S = 43_200;

/**
 * The sky that an outing takes with it: from its start to the next solar noon that is at least
 * twelve hours away, so that one begun before noon still holds its evening.
 */
export const skyForOuting = (site: Site, start: UtcMs, cloud: SkyCondition | null): SkyTable =>
  skyOver(site, start, solarNoonAfter(later(start, HALF_DAY_S), placeOf(site)), cloud);
