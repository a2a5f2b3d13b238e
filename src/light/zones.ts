import { type Refusal, refuse } from '../science/refusal.ts';
import { later, type MinutesEast, minutesEast, type UtcMs } from '../science/units.ts';

/*
 * Clock and calendar of a place. The rules of the IANA zones come with the browser and are as old
 * as it is, hence the fixed offset by hand. Instants are kept in UTC; a zone is kept by its name,
 * never as the offset of one day.
 */

/** What a clock at a site shows: a zone with its history and its summer time, or a fixed offset. */
export type Zone =
  | { readonly kind: 'iana'; readonly name: string }
  | { readonly kind: 'fixed'; readonly offsetMin: MinutesEast };

/** Whether two zones are named alike. */
export const sameZone = (a: Zone, b: Zone): boolean =>
  a.kind === 'iana'
    ? b.kind === 'iana' && a.name === b.name
    : b.kind === 'fixed' && a.offsetMin === b.offsetMin;

/** What a clock shows. */
export interface ClockTime {
  /** Calendar date, YYYY-MM-DD. */
  readonly date: string;
  /** 0 to 23. */
  readonly hour: number;
  readonly minute: number;
}

/** A clock time with its seconds and how far that clock is ahead of UTC. */
export interface LocalTime extends ClockTime {
  readonly second: number;
  readonly offsetMin: MinutesEast;
}

/** When a clock shows a time: once; twice in the hour that autumn repeats; never in the spring gap. */
export type ClockInstant =
  | { readonly kind: 'once'; readonly at: UtcMs }
  | { readonly kind: 'twice'; readonly first: UtcMs; readonly second: UtcMs }
  /** `at` = as if the clock had not been put forward yet: as much later as the gap is long. */
  | { readonly kind: 'skipped'; readonly at: UtcMs };

/** Making a formatter costs more than a thousand uses of it. */
const formatters = new Map<string, Intl.DateTimeFormat>();

function formatterOf(name: string): Intl.DateTimeFormat {
  const known = formatters.get(name);
  if (known) return known;
  const formatter = new Intl.DateTimeFormat('en-US', {
    timeZone: name,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  });
  formatters.set(name, formatter);
  return formatter;
}

/** An IANA zone that this browser knows, by name, else a refusal ('zone-unknown'). */
export function parseZoneName(name: string): Zone | Refusal {
  // Newer browsers also take a bare offset as a name: that is our fixed zone.
  if (!/^[A-Za-z]/.test(name)) return refuse('zone-unknown');
  try {
    formatterOf(name);
  } catch (problem) {
    if (problem instanceof RangeError) return refuse('zone-unknown');
    throw problem;
  }
  return { kind: 'iana', name };
}

const MINUTE_MS = 60_000;

/** Wall-clock figures counted in milliseconds as if the clock stood at UTC. */
function asIfUtc(zone: Zone, at: UtcMs): number {
  if (zone.kind === 'fixed') return at + zone.offsetMin * MINUTE_MS;
  const parts = new Map(
    formatterOf(zone.name)
      .formatToParts(at)
      .map(({ type, value }) => [type, Number(value)]),
  );
  const part = (type: Intl.DateTimeFormatPartTypes): number => parts.get(type) ?? Number.NaN;
  const wholeSeconds = Date.UTC(
    part('year'),
    part('month') - 1,
    part('day'),
    part('hour'),
    part('minute'),
    part('second'),
  );
  return wholeSeconds + (((at % 1000) + 1000) % 1000);
}

/** How far a zone's clock is ahead of UTC at an instant, in whole minutes. */
export const offsetAt = (zone: Zone, at: UtcMs): MinutesEast =>
  zone.kind === 'fixed'
    ? zone.offsetMin
    : minutesEast(Math.round((asIfUtc(zone, at) - at) / MINUTE_MS));

/** What a zone's clock and calendar show at an instant. */
export function localTime(zone: Zone, at: UtcMs): LocalTime {
  const wall = new Date(asIfUtc(zone, at));
  return {
    date: wall.toISOString().slice(0, 10),
    hour: wall.getUTCHours(),
    minute: wall.getUTCMinutes(),
    second: wall.getUTCSeconds(),
    offsetMin: offsetAt(zone, at),
  };
}

/** No zone changes its clock twice within this long on either side. */
const DAY_AND_HALF_S = 36 * 3600;

/** When a zone's clock shows a time. There is no such rule to ask for, so both offsets are tried. */
export function instantOf(zone: Zone, { date, hour, minute }: ClockTime): ClockInstant {
  const wall = (Date.parse(`${date}T00:00:00Z`) + (hour * 60 + minute) * MINUTE_MS) as UtcMs;
  const before = offsetAt(zone, later(wall, -DAY_AND_HALF_S));
  const after = offsetAt(zone, later(wall, DAY_AND_HALF_S));
  const under = (offsetMin: MinutesEast): UtcMs => later(wall, -offsetMin * 60);
  const shown = [...new Set([before, after])]
    .filter((offsetMin) => offsetAt(zone, under(offsetMin)) === offsetMin)
    .map(under)
    .sort((a, b) => a - b);
  const [first, second] = shown;
  if (first === undefined) return { kind: 'skipped', at: under(before) };
  return second === undefined ? { kind: 'once', at: first } : { kind: 'twice', first, second };
}

/** Twelve by a zone's clock on a date; the first one where it comes twice. */
export function clockNoon(zone: Zone, date: string): UtcMs {
  const noon = instantOf(zone, { date, hour: 12, minute: 0 });
  return noon.kind === 'twice' ? noon.first : noon.at;
}

/** A calendar date so many days later. */
export const daysLater = (date: string, days: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
