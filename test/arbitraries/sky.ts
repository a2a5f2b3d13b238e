import fc, { type Arbitrary } from 'fast-check';
import type { Site, SiteId } from '../../src/light/site.ts';
import type { SkyTable } from '../../src/light/skyTable.ts';
import type { Zone } from '../../src/light/zones.ts';
import type { SkyCondition } from '../../src/science/cloud.ts';
import {
  degrees,
  type Ev,
  ev,
  later,
  metres,
  minutesEast,
  type UtcMs,
  utc,
} from '../../src/science/units.ts';
import { anyId, anyLine, anyText } from './gear.ts';

/*
 * Skies and sites made up for tests, with no ephemeris behind them: so a result can be worked out
 * by hand.
 */

/** When a made-up sky starts. */
export const DUSK: UtcMs = utc(Date.UTC(2027, 1, 12, 17, 0));

export const minutesOn = (minutes: number): UtcMs => later(DUSK, 60 * minutes);

/** A sky whose clear EV is a function of the minutes since DUSK. */
export const skyOf = (
  evAfter: (minutes: number) => number,
  minutes: number,
  cloud: SkyCondition | null = 'clear',
): SkyTable => ({
  startMs: DUSK,
  clearEv100: Array.from({ length: minutes + 1 }, (_, minute) => ev(evAfter(minute))),
  cloud,
  dark: [{ fromMs: minutesOn(40), toMs: minutesOn(minutes) }],
});

/** Falls evenly from EV 8 by 0.2 stop a minute for two hours. */
export const EVEN_DUSK: SkyTable = skyOf((minutes) => 8 - 0.2 * minutes, 120);

/** Falls like a real dusk: slowly, fast, and then not at all. */
export const CURVED_DUSK: SkyTable = skyOf(
  (minutes) => -2 - 10 * Math.tanh((minutes - 45) / 35),
  180,
);

const zone: Arbitrary<Zone> = fc.oneof(
  fc
    .constantFrom('Europe/London', 'Asia/Kathmandu', 'Pacific/Chatham', 'America/St_Johns')
    .map((name) => ({ kind: 'iana', name }) as const),
  fc
    .integer({ min: -14 * 60, max: 14 * 60 })
    .map((minutes) => ({ kind: 'fixed', offsetMin: minutesEast(minutes) }) as const),
);

const within = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => (value === 0 ? 0 : value));

export const anySite: Arbitrary<Site> = fc.record({
  id: anyId<SiteId>(),
  name: anyLine(60).map((line) => (line.trim() === '' ? 'x' : line)),
  latDeg: within(-90, 90).map(degrees),
  lonDeg: within(-180, 180).map(degrees),
  heightM: within(-400, 8000).map(metres),
  zone,
  ridgeDeg: within(0, 40).map(degrees),
  note: anyText(200),
  invented: fc.boolean(),
});

const anyEv: Arbitrary<Ev> = within(-12, 16).map((value) => ev(Math.round(value * 1e4) / 1e4 || 0));

export const anySkyTable: Arbitrary<SkyTable> = fc.record({
  startMs: fc.integer({ min: 0, max: 4e12 }).map(utc),
  clearEv100: fc.array(anyEv, { maxLength: 50 }),
  cloud: fc.option(fc.constantFrom('clear', 'average-cloud', 'dark-stratus')),
  dark: fc.array(
    fc
      .tuple(fc.integer({ min: 0, max: 4e12 }), fc.nat(1e8))
      .map(([from, long]) => ({ fromMs: utc(from), toMs: utc(from + long) })),
    { maxLength: 4 },
  ),
});
