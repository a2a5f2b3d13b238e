import { cloudStops, type SkyCondition } from '../science/cloud.ts';
import { interpolate } from '../science/interpolation.ts';
import type { Ev, UtcMs } from '../science/units.ts';

/** A stretch of time. */
export interface Stretch {
  readonly fromMs: UtcMs;
  readonly toMs: UtcMs;
}

/**
 * The light of a sky over time, without any ephemeris: an outing stores it at its start, so that it
 * needs no part that loads later and a replay does not hang on a library's version.
 */
export interface SkyTable {
  readonly startMs: UtcMs;
  /**
   * What an incident meter on level ground would read under a clear sky, EV at ISO 100, once a
   * minute from the start on; sun, moon, natural night and the ridge in it.
   */
  readonly clearEv100: readonly Ev[];
  /** What the sky is said to be like; null = nobody has said, taken as clear and less sure. */
  readonly cloud: SkyCondition | null;
  /** From civil dusk to civil dawn; the ends of the table where it does not reach as far. */
  readonly dark: readonly Stretch[];
}

export const SKY_STEP_MS = 60_000;

/** The last instant that a table knows. */
export const skyEnd = ({ startMs, clearEv100 }: SkyTable): UtcMs =>
  (startMs + Math.max(0, clearEv100.length - 1) * SKY_STEP_MS) as UtcMs;

/** What the sky gives at an instant, cloud included, in EV at ISO 100; null outside of the table. */
export function skyEv(sky: SkyTable, at: UtcMs): Ev | null {
  const clear = interpolate(
    { startMs: sky.startMs, stepMs: SKY_STEP_MS, values: sky.clearEv100 },
    at,
  );
  return clear === null ? null : ((clear + cloudStops(sky.cloud ?? 'clear')) as Ev);
}

/** Whether the sun stands more than 6 degrees below the horizon: after civil dusk, before dawn. */
export const isDark = ({ dark }: Pick<SkyTable, 'dark'>, at: UtcMs): boolean =>
  dark.some(({ fromMs, toMs }) => at >= fromMs && at < toMs);

/** The first civil dusk of a table; null if the sun does not pass 6 degrees below the horizon. */
export const civilDusk = ({ startMs, dark }: SkyTable): UtcMs | null =>
  dark.find(({ fromMs }) => fromMs > startMs)?.fromMs ?? null;

/** The same sky at another time: the practice outing's evening is brought to the real clock. */
export function movedSky(sky: SkyTable, startMs: UtcMs): SkyTable {
  const by = startMs - sky.startMs;
  const moved = (at: UtcMs): UtcMs => (at + by) as UtcMs;
  return {
    ...sky,
    startMs,
    dark: sky.dark.map(({ fromMs, toMs }) => ({ fromMs: moved(fromMs), toMs: moved(toMs) })),
  };
}

/**
 * A sky as it is, and before it begins as another table says. The same where the other does not
 * reach up to it.
 */
export function skyWithBefore(sky: SkyTable, before: SkyTable): SkyTable {
  const steps = Math.floor((sky.startMs - before.startMs) / SKY_STEP_MS);
  if (steps <= 0 || skyEnd(before) < sky.startMs) return sky;
  const startMs = (sky.startMs - steps * SKY_STEP_MS) as UtcMs;
  const clearSky = { ...before, cloud: null };
  const clearBefore = Array.from(
    { length: steps },
    (_, step) => skyEv(clearSky, (startMs + step * SKY_STEP_MS) as UtcMs) as Ev,
  );
  const darkBefore = before.dark
    .filter(({ fromMs }) => fromMs < sky.startMs)
    .map(({ fromMs, toMs }) => ({ fromMs, toMs: Math.min(toMs, sky.startMs) as UtcMs }));
  return {
    ...sky,
    startMs,
    clearEv100: [...clearBefore, ...sky.clearEv100],
    dark: [...darkBefore, ...sky.dark],
  };
}
