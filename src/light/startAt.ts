import { later, type Seconds, type Stops, type UtcMs } from '../science/units.ts';
import type { Scene } from './scene.ts';
import type { Stretch } from './skyTable.ts';
import { type Aim, missAt } from './windows.ts';

/** An exposure in its place in a list. */
export interface PlacedAim extends Aim {
  /** From the start of the list to the opening of the shutter. */
  readonly afterS: Seconds;
}

/** The exposures of one set by which it is judged: its reference rig's. */
export interface SetAims<Id extends string> {
  readonly set: Id;
  readonly aims: readonly PlacedAim[];
}

/** How far a set lies outside of its tolerance. */
export interface SetMiss<Id extends string> {
  readonly set: Id;
  /** Of its worst exposure; positive = too bright. Zero within the tolerance. */
  readonly beyond: Stops;
}

export interface Start<Id extends string> {
  readonly startMs: UtcMs;
  /** Every set comes out right within the tolerance. */
  readonly fits: boolean;
  readonly misses: readonly SetMiss<Id>[];
}

const MINUTE_S = 60;

/** How each set comes out if the list starts at an instant; null where the sky is not known. */
export function missesFrom<Id extends string>(
  scene: Scene,
  sets: readonly SetAims<Id>[],
  tolerance: Stops,
  startMs: UtcMs,
): readonly SetMiss<Id>[] | null {
  const misses: SetMiss<Id>[] = [];
  for (const { set, aims } of sets) {
    let beyond = 0;
    for (const aim of aims) {
      const miss = missAt(scene, aim, later(startMs, aim.afterS));
      if (miss === null) return null;
      const outside = Math.sign(miss) * Math.max(0, Math.abs(miss) - tolerance);
      if (Math.abs(outside) > Math.abs(beyond)) beyond = outside;
    }
    misses.push({ set, beyond: beyond as Stops });
  }
  return misses;
}

/**
 * When to start a list of sets: the latest minute within a stretch at which every set still comes
 * out within the tolerance; if there is none, the one with the smallest sum of misses, and of those
 * the latest. Give the stretch one side of the night: at dawn the same exposures are right again.
 *
 * @returns null if there is nothing to judge by, or the sky is known for no start.
 */
export function startAt<Id extends string>(
  scene: Scene,
  sets: readonly SetAims<Id>[],
  tolerance: Stops,
  { fromMs, toMs }: Stretch,
): Start<Id> | null {
  if (sets.every(({ aims }) => aims.length === 0)) return null;
  let best: { start: Start<Id>; total: number } | null = null;
  for (let startMs = fromMs; startMs <= toMs; startMs = later(startMs, MINUTE_S)) {
    const misses = missesFrom(scene, sets, tolerance, startMs);
    if (!misses) continue;
    const total = misses.reduce((sum, { beyond }) => sum + Math.abs(beyond), 0);
    if (best && total > best.total) continue;
    best = { start: { startMs, fits: total === 0, misses }, total };
  }
  return best?.start ?? null;
}
