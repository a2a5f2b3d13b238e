import { later, type Stops, type StopsPerMinute, type UtcMs } from '../science/units.ts';
import { type Exposure, meanLevel } from './forecast.ts';
import { levelAt, type Scene } from './scene.ts';
import { type Stretch, skyEnd } from './skyTable.ts';
import { differenceOf, type Part } from './wander.ts';

const HALF_MINUTE_S = 30;

/**
 * The fade at an instant, as a central difference over one minute; negative while it gets darker.
 *
 * @returns null where the sky is not known.
 */
export function fadeAt(scene: Scene, at: UtcMs): StopsPerMinute | null {
  const before = levelAt(scene, later(at, -HALF_MINUTE_S));
  const after = levelAt(scene, later(at, HALF_MINUTE_S));
  return before && after && ((after.ev - before.ev) as StopsPerMinute);
}

/** The minute within a stretch in which the light falls fastest; null if it never falls. */
export function fastestFade(
  scene: Scene,
  { fromMs, toMs }: Stretch,
): { readonly at: UtcMs; readonly rate: StopsPerMinute } | null {
  let fastest: { at: UtcMs; rate: StopsPerMinute } | null = null;
  const end = Math.min(toMs, skyEnd(scene.sky));
  for (let at = fromMs; at <= end; at = later(at, 60)) {
    const rate = fadeAt(scene, at);
    if (rate !== null && rate < (fastest?.rate ?? 0)) fastest = { at, rate };
  }
  return fastest;
}

/** The frames of a pair of rigs that are compared, of one pass. */
export interface FramesOfPair {
  readonly reference: readonly Exposure[];
  readonly other: readonly Exposure[];
}

/** What the light's change did to a pair, with its uncertainty and where it comes from. */
export interface PairFade {
  /** Other minus reference: negative where the other's frames came later at dusk. */
  readonly stops: Stops;
  /** One sigma. */
  readonly sigma: Stops;
  readonly from: 'readings' | 'model';
}

/** A frame with the part it takes in a pair's difference: above zero for the other rig, in all 1. */
export interface WeightedExposure extends Exposure {
  readonly weight: number;
}

/**
 * The fade between the frames of a pair: the mean, over passes, of the mean level of the other's
 * frames minus that of the reference's, each frame with the mean light over its exposure. No meter's
 * offset enters.
 *
 * @returns null if a pass lacks frames of a rig, there is no pass, or the sky is not known
 * throughout.
 */
export function fadeOver(scene: Scene, passes: readonly FramesOfPair[]): PairFade | null {
  if (passes.some(({ reference, other }) => reference.length === 0 || other.length === 0)) {
    return null;
  }
  const weighted = (frames: readonly Exposure[], sign: 1 | -1): readonly WeightedExposure[] =>
    frames.map((frame) => ({ ...frame, weight: sign / (frames.length * passes.length) }));
  const frames = passes.flatMap(({ reference, other }) => [
    ...weighted(other, 1),
    ...weighted(reference, -1),
  ]);
  return fadeWeighted(scene, frames);
}

/**
 * The fade in a difference to which frames add with any weights.
 *
 * The uncertainty follows the whole difference: what an order of frames cancels (a wrong scale in a
 * mirror) does not count. It holds what is unknown of the scene's law and of the sky's wandering
 * between the frames, after what the readings tell of both.
 *
 * @returns null if there is no frame, or the sky is not known throughout.
 */
export function fadeWeighted(scene: Scene, frames: readonly WeightedExposure[]): PairFade | null {
  const parts: Part[] = [];
  for (const frame of frames) {
    const level = meanLevel(scene, frame);
    if (!level) return null;
    parts.push({ factor: frame.weight, midMs: later(frame.startMs, frame.t / 2), level });
  }
  if (parts.length === 0) return null;
  const { stops, variance } = differenceOf(scene, parts);
  return { stops: stops as Stops, sigma: Math.sqrt(variance) as Stops, from: scene.from };
}

/** The fade from one exposure to another. */
export const fadeBetween = (scene: Scene, first: Exposure, second: Exposure): PairFade | null =>
  fadeOver(scene, [{ reference: [first], other: [second] }]);
