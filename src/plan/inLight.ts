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
