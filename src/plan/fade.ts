import { type FramesOfPair, fadeOver } from '../light/fade.ts';
import type { Scene } from '../light/scene.ts';
import { type KnownOrUnknown, unknown } from './causes.ts';
import type { SetKind } from './plan.ts';

/**
 * What the light's change did to a pair, as one of its causes: of one pass, or the mean over passes
 * in stops with the uncertainty of that mean.
 *
 * @param scene null where the sky is not known.
 */
export function fadeCause(
  scene: Scene | null,
  kind: SetKind,
  passes: readonly FramesOfPair[],
): KnownOrUnknown {
  if (kind === 'flat') return unknown('not-modelled');
  const fade = scene && fadeOver(scene, passes);
  if (!fade) return unknown('no-sky');
  const { stops, sigma, from } = fade;
  return { known: true, stops, estimate: { sigma, from } };
}
