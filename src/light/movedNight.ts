import type { UtcMs } from '../science/units.ts';
import type { Night } from './night.ts';
import { movedSky, type Stretch } from './skyTable.ts';
import { localTime, type Zone } from './zones.ts';

/**
 * The same night at another time, so that it ends at `nextNoonMs`: the practice outing's evening is
 * brought to the real clock. Its date is then that of the calendar there.
 */
export function movedNight(night: Night, nextNoonMs: UtcMs, zone: Zone): Night {
  const by = nextNoonMs - night.nextNoonMs;
  const moved = (at: UtcMs): UtcMs => (at + by) as UtcMs;
  const over = <Part extends Stretch>(part: Part): Part => ({
    ...part,
    fromMs: moved(part.fromMs),
    toMs: moved(part.toMs),
  });
  const noonMs = moved(night.noonMs);
  return {
    ...night,
    date: localTime(zone, noonMs).date,
    noonMs,
    nextNoonMs,
    sky: movedSky(night.sky, moved(night.sky.startMs)),
    events: night.events.map((event) => ({ ...event, at: moved(event.at) })),
    behindRidgeMs: night.behindRidgeMs === null ? null : moved(night.behindRidgeMs),
    bands: night.bands.map(over),
    lowestSun: { ...night.lowestSun, at: moved(night.lowestSun.at) },
    moon: { ...night.moon, up: night.moon.up.map(over) },
  };
}
