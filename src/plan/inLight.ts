import type { Gear } from '../gear/rig.ts';
import { fadeAt } from '../light/fade.ts';
import type { Scene } from '../light/scene.ts';
import type { Stretch } from '../light/skyTable.ts';
import { later, type UtcMs } from '../science/units.ts';
import { bestStart } from './light.ts';
import type { Plan } from './plan.ts';
import { type Prepared, preparePlan } from './prepare.ts';
import type { FadeAfter } from './timeline.ts';

/** How fast a scene's light changes, counted from the start of a list. */
export const fadeFrom =
  (scene: Scene, startMs: UtcMs): FadeAfter =>
  (at) =>
    fadeAt(scene, later(startMs, at));

/**
 * A plan worked out again with the fade of its evening, by which its rests are weighed: from its
 * stated start, else from the one worked out for the list with every rest in it.
 *
 * Once, and no further: rests that do not pay move the start by some minutes and the fade by
 * hundredths of a stop, and going round could swing between two lists without an end.
 */
export function preparedInLight(
  plan: Plan,
  gear: Gear,
  prepared: Prepared,
  scene: Scene,
  side: Stretch,
): Prepared {
  // Only the limit on heat weighs its rests.
  if (plan.rest.kind !== 'limit') return prepared;
  const startMs = plan.evening?.startMs ?? bestStart(plan, prepared, scene, side)?.startMs;
  return startMs === undefined ? prepared : preparePlan(plan, gear, fadeFrom(scene, startMs));
}

/** A plan as it will be shot on its evening: worked out in its light, and when its first act begins. */
export interface Begun {
  readonly prepared: Prepared;
  /** As stated, else as worked out; null if nobody can tell. */
  readonly startMs: UtcMs | null;
}

/** When a plan begins, with its rests weighed by the fade from there on. */
export function begunInLight(
  plan: Plan,
  gear: Gear,
  prepared: Prepared,
  scene: Scene,
  side: Stretch,
): Begun {
  const weighed = preparedInLight(plan, gear, prepared, scene, side);
  const startMs = plan.evening?.startMs ?? bestStart(plan, weighed, scene, side)?.startMs ?? null;
  return { prepared: weighed, startMs };
}
