import {
  later,
  minutesBetween,
  type Stops,
  type StopsPerMinute,
  type UtcMs,
} from '../science/units.ts';
import {
  type Exposure,
  meanLevel,
  minutesToReading,
  READING_EVERY_MIN,
  variance,
  wandering,
} from './forecast.ts';
import { type Level, levelAt, type Scene } from './scene.ts';
import { type Stretch, skyEnd } from './skyTable.ts';

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

/** What no smooth curve follows, between two frames of a pair, in stops: our own assumption. */
const UNEVEN = 0.05;

/** One exposure's part in a difference. */
interface Term {
  readonly factor: number;
  readonly midMs: UtcMs;
  readonly level: Level;
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
  return fadeWeighted(scene, frames, passes.length);
}

/**
 * The fade in a difference to which frames add with any weights.
 *
 * The uncertainty follows the whole difference: what an order of frames cancels (a wrong scale in a
 * mirror) does not count. It holds the fit's, unevenness of 0.05 stop a pass, and, unless every
 * frame has a reading within ten minutes, the sky's wandering between the frames. A change of the
 * sky between them adds its whole size.
 *
 * @param passes how many passes' unevenness it is the mean of.
 * @returns null if there is no frame, or the sky is not known throughout.
 */
export function fadeWeighted(
  scene: Scene,
  frames: readonly WeightedExposure[],
  passes: number,
): PairFade | null {
  const terms: Term[] = [];
  for (const frame of frames) {
    const level = meanLevel(scene, frame);
    if (!level) return null;
    terms.push({ factor: frame.weight, midMs: later(frame.startMs, frame.t / 2), level });
  }
  if (terms.length === 0) return null;
  const sum = (part: (level: Level) => number): number =>
    terms.reduce((total, { factor, level }) => total + factor * part(level), 0);
  const slopes = [
    ...scene.offsets.map(() => 0),
    sum(({ byScale }) => byScale),
    sum(({ byLamps }) => byLamps),
  ];
  const pinned = terms.every(
    ({ midMs }) =>
      (minutesToReading(scene, midMs) ?? Number.POSITIVE_INFINITY) <= READING_EVERY_MIN,
  );
  const sigma = Math.sqrt(
    variance(scene.covariance, slopes) +
      UNEVEN ** 2 / passes +
      (pinned ? 0 : wandering(scene, wanderMinutes(terms))) +
      changeBetween(scene, terms),
  );
  return { stops: sum(({ ev }) => ev) as Stops, sigma: sigma as Stops, from: scene.from };
}

/** The fade from one exposure to another. */
export const fadeBetween = (scene: Scene, first: Exposure, second: Exposure): PairFade | null =>
  fadeOver(scene, [{ reference: [first], other: [second] }]);

/**
 * How many minutes of a wandering sky a difference is exposed to: each gap counts by the square of
 * what stands before it, so that the frames of a mirror are exposed to less than those of a pair.
 */
function wanderMinutes(terms: readonly Term[]): number {
  const inOrder = [...terms].sort((a, b) => a.midMs - b.midMs);
  let standing = 0;
  let minutes = 0;
  for (const [i, { factor, midMs }] of inOrder.entries()) {
    const next = inOrder[i + 1];
    standing += factor;
    if (next) minutes += standing ** 2 * minutesBetween(midMs, next.midMs);
  }
  return minutes;
}

/** The square of a change of the sky that came between the frames, in stops squared. */
function changeBetween({ contradictions }: Scene, terms: readonly Term[]): number {
  const mids = terms.map(({ midMs }) => midMs);
  const change = contradictions.find(({ code }) => code === 'sky-changed');
  if (change?.code !== 'sky-changed') return 0;
  const apart = Math.min(...mids) < change.since && Math.max(...mids) > change.lastBefore;
  return apart ? change.stops ** 2 : 0;
}
