import type { Night } from '../../../light/night.ts';
import type { Site } from '../../../light/site.ts';
import { daysLater, localTime, offsetAt, type Zone } from '../../../light/zones.ts';
import type { UtcMs } from '../../../science/units.ts';
import type { LightWords } from '../../words/light.ts';

/** An offset as it is written: UTC+5:45. */
export function offsetWords(offsetMin: number, { light }: LightWords): string {
  const size = Math.abs(offsetMin);
  const mins = String(size % 60).padStart(2, '0');
  return light.utc(offsetMin < 0 ? '−' : '+', Math.floor(size / 60), mins);
}

/** A zone as it is called: its name, or its offset. */
export const zoneWords = (zone: Zone, words: LightWords): string =>
  zone.kind === 'iana' ? zone.name : offsetWords(zone.offsetMin, words);

/** How the clock and the calendar of a site write an instant of one night. */
export interface SiteClock {
  /** '18:42'. */
  readonly time: (at: UtcMs) => string;
  /** With the date where it is no longer that of the evening, and the offset where it changes. */
  readonly dated: (at: UtcMs) => string;
  /** The zone with its offset that evening. */
  readonly zone: string;
}

export function siteClock(site: Site, night: Night, words: LightWords): SiteClock {
  const { format, light } = words;
  const atNoon = offsetAt(site.zone, night.noonMs);
  const time = (at: UtcMs): string => format.time(at, offsetAt(site.zone, at));
  const offset = offsetWords(atNoon, words);
  return {
    time,
    dated(at) {
      const { date, offsetMin } = localTime(site.zone, at);
      const changed = offsetMin === atNoon ? '' : ` (${offsetWords(offsetMin, words)})`;
      const written = time(at) + changed;
      if (date === night.date) return written;
      return date === daysLater(night.date, 1)
        ? light.nextDay(written)
        : light.onDate(written, format.calendarDate(date));
    },
    zone: site.zone.kind === 'iana' ? light.zoneWithOffset(site.zone.name, offset) : offset,
  };
}
