import { type Crossing, crossings } from './crossings.ts';
import type { SkyPath } from './skyPath.ts';
import type { Degrees, UtcMs } from './units.ts';

/** The altitudes of the sun's centre that bound day, the three twilights and night, airless. */
export const SUN_LIMITS = {
  /** The upper limb on a sea horizon: 34' of refraction and 16' of radius (USNO). */
  horizon: (-50 / 60) as Degrees,
  civil: -6 as Degrees,
  nautical: -12 as Degrees,
  astronomical: -18 as Degrees,
} as const;

const SUN_EVENTS = [
  { event: 'sunset', limit: SUN_LIMITS.horizon, rising: false },
  { event: 'civil-dusk', limit: SUN_LIMITS.civil, rising: false },
  { event: 'nautical-dusk', limit: SUN_LIMITS.nautical, rising: false },
  { event: 'astronomical-dusk', limit: SUN_LIMITS.astronomical, rising: false },
  { event: 'astronomical-dawn', limit: SUN_LIMITS.astronomical, rising: true },
  { event: 'nautical-dawn', limit: SUN_LIMITS.nautical, rising: true },
  { event: 'civil-dawn', limit: SUN_LIMITS.civil, rising: true },
  { event: 'sunrise', limit: SUN_LIMITS.horizon, rising: true },
] as const;

export type SunEventName = (typeof SUN_EVENTS)[number]['event'];
export type MoonEventName = 'moonrise' | 'moonset';
export type SkyEventName = SunEventName | MoonEventName;

export const SUN_EVENT_NAMES: readonly SunEventName[] = SUN_EVENTS.map(({ event }) => event);
export const MOON_EVENT_NAMES: readonly MoonEventName[] = ['moonrise', 'moonset'];

/** Something that happens in the sky at an instant. */
export interface SkyEvent<Name extends SkyEventName = SkyEventName> {
  readonly event: Name;
  readonly at: UtcMs;
}

/**
 * Every sunset, dusk, dawn and sunrise of a path, in order; there may be none of a kind and, near
 * the poles, several. Twilights within a second of the library's own search; sunset and sunrise by
 * the fixed limit of the USNO tables, so that a real one differs by the weather's refraction.
 */
export function sunEvents({ from, to, sunAltitude }: SkyPath): readonly SkyEvent<SunEventName>[] {
  const passages = new Map<Degrees, readonly Crossing[]>(
    Object.values(SUN_LIMITS).map((limit) => [limit, crossings(sunAltitude, limit, from, to)]),
  );
  return SUN_EVENTS.flatMap(({ event, limit, rising }) =>
    (passages.get(limit) ?? [])
      .filter((crossing) => crossing.rising === rising)
      .map(({ at }) => ({ event, at })),
  ).sort((a, b) => a.at - b.at);
}

/** The moon's radius over its distance, in earth radii: 0.2725 (from memory). */
const MOON_RADIUS = 0.2725;

/** Every moonrise and moonset of a path, upper limb on a sea horizon under 34' of refraction. */
export function moonEvents({
  from,
  to,
  moonAltitude,
  moonParallax,
}: SkyPath): readonly SkyEvent<MoonEventName>[] {
  const upperLimb = (at: UtcMs) => moonAltitude(at) + MOON_RADIUS * moonParallax(at);
  return crossings(upperLimb, -34 / 60, from, to).map(({ at, rising }) => ({
    event: rising ? 'moonrise' : 'moonset',
    at,
  }));
}

/** The first event of a name; null if the path has none. */
export const firstEvent = <Name extends SkyEventName>(
  events: readonly SkyEvent<Name>[],
  name: Name,
): UtcMs | null => events.find(({ event }) => event === name)?.at ?? null;
