import {
  type FramesOfPair,
  fadeOver,
  fadeWeighted,
  type PairFade,
  type WeightedExposure,
} from '../light/fade.ts';
import type { Scene } from '../light/scene.ts';
import { type KnownOrUnknown, unknown } from './causes.ts';
import type { SetKind } from './plan.ts';

/**
 * What the light's change did to a pair, as one of its causes: of one pass, or the mean over passes
 * in stops with the uncertainty of that mean.
 *
 * @param scene null where the sky is not known.
 */
export const fadeCause = (
  scene: Scene | null,
  kind: SetKind,
  passes: readonly FramesOfPair[],
): KnownOrUnknown => causeOf(kind, scene && fadeOver(scene, passes));

/** The same where frames enter the mean with weights of their own. */
export const fadeCauseWeighted = (
  scene: Scene | null,
  kind: SetKind,
  frames: readonly WeightedExposure[],
): KnownOrUnknown => causeOf(kind, scene && fadeWeighted(scene, frames));

function causeOf(kind: SetKind, fade: PairFade | null): KnownOrUnknown {
  if (kind === 'flat') return unknown('not-modelled');
  if (!fade) return unknown('no-sky');
  const { stops, sigma, from } = fade;
  return { known: true, stops, estimate: { sigma, from } };
}
