import type { Exact } from '../gear/settings.ts';
import { crossings } from '../science/crossings.ts';
import { ev100 } from '../science/exposure.ts';
import type { Ev, Stops, UtcMs } from '../science/units.ts';
import { meanLevel } from './forecast.ts';
import { levelAt, type Scene, seenEv } from './scene.ts';
import type { Stretch } from './skyTable.ts';

/** An exposure with where it should lie against the metered one: -2 = two stops under. */
export interface Aim {
  readonly exact: Exact;
  readonly targetOffset: Stops;
}

/**
 * By how much an exposure that starts at an instant comes out brighter than it is meant to, in
 * stops: the mean EV of the scene over the exposure, less the EV that the settings are made for,
 * less the offset that is meant. Two stops under at EV 8 is an exposure for EV 10.
 *
 * @returns null where the sky is not known throughout the exposure.
 */
export function missAt(scene: Scene, { exact, targetOffset }: Aim, startMs: UtcMs): Stops | null {
  const level = meanLevel(scene, { startMs, t: exact.t });
  const madeFor = ev100(exact.n, exact.t, exact.s);
  return level && ((seenEv(scene, level) - madeFor - targetOffset) as Stops);
}

/** A stretch in which an exposure may start and comes out right within a tolerance. */
export interface RightStretch extends Stretch {
  /** When it comes out exactly as meant; null if only within the tolerance. */
  readonly rightMs: UtcMs | null;
}

/**
 * The stretches of time in which an exposure comes out within a tolerance (stops, either way) of
 * what is meant, by when it starts. There may be none, or two and more: dusk and dawn, moonrise.
 */
export function rightStretches(
  scene: Scene,
  aim: Aim,
  tolerance: Stops,
  { fromMs, toMs }: Stretch,
): readonly RightStretch[] {
  const miss = (at: UtcMs): Stops | null => missAt(scene, aim, at);
  const passing = (value: number): UtcMs[] =>
    crossings(miss, value, fromMs, toMs).map(({ at }) => at);
  const edges = [fromMs, ...passing(tolerance), ...passing(-tolerance), toMs].sort((a, b) => a - b);
  const exact = passing(0);
  return edges.slice(1).flatMap((end, i) => {
    const start = edges[i] ?? end;
    const middle = miss(((start + end) / 2) as UtcMs);
    if (middle === null || Math.abs(middle) > tolerance) return [];
    const rightMs = exact.find((at) => at >= start && at <= end) ?? null;
    return [{ fromMs: start, toMs: end, rightMs }];
  });
}

/** The first time within a stretch that a scene's EV falls through a value; null if it never does. */
export function whenFallsTo(scene: Scene, value: Ev, { fromMs, toMs }: Stretch): UtcMs | null {
  const evAt = (at: UtcMs): Ev | null => {
    const level = levelAt(scene, at);
    return level && seenEv(scene, level);
  };
  return crossings(evAt, value, fromMs, toMs).find(({ rising }) => !rising)?.at ?? null;
}
