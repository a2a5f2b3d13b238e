import { minutesBetween, type UtcMs } from '../science/units.ts';
import {
  LAMPS_SIGMA,
  type Level,
  levelAt,
  OFFSET_SIGMA,
  SCALE_SIGMA,
  type Scene,
} from './scene.ts';

/*
 * A sky wanders about its smooth curve: cloud drifts, haze comes and goes. What a meter reads is
 *
 *   its offset + the level of the scene + the wandering W(t) + its own error
 *
 * with W a random walk. So readings tell something of W between them, the more the nearer they stand
 * and the more the sky wanders, and never all: a reading errs by as much as a quiet sky wanders in
 * half an hour. What they tell of a difference of light is the best linear prediction from them, with
 * its variance (kriging, or Gaussian process regression: Rasmussen & Williams 2006, equations 2.25
 * and 2.26, from memory). Offsets, scale of the fade and lamps are worked out anew along with W, about
 * the fit: a fit that takes every residual for an error of the meter would take a drift of the sky for
 * a scale of the fade.
 */

/** One frame's part in a difference of light; the factors of all parts sum to 0. */
export interface Part {
  readonly factor: number;
  readonly midMs: UtcMs;
  readonly level: Level;
}

/** A difference of light in stops and the variance of its error. */
export interface Told {
  readonly stops: number;
  readonly variance: number;
}

/**
 * By how much a sky wanders in ten minutes, in stops, root of the mean square: our own assumption, the
 * same as the width of a forecast takes.
 */
const WANDER = { clear: 0.1, otherwise: 0.3 } as const;

/** The variance that a sky's wandering gathers in a minute, in stops squared, before any reading. */
export const wanderPerMinute = ({ sky }: Pick<Scene, 'sky'>): number =>
  WANDER[sky.cloud === 'clear' ? 'clear' : 'otherwise'] ** 2 / 10;

/**
 * How much one evening's sky wanders against what is usual: from an eighth to four times, each
 * doubling by the odds of a normal distribution (our own assumption). Readings sharpen them.
 */
const PACES = [-3, -2, -1, 0, 1, 2].map((doublings) => ({
  pace: 2 ** doublings,
  odds: Math.exp(-(doublings ** 2) / 2),
}));
const ODDS = PACES.reduce((sum, { odds }) => sum + odds, 0);
/** The mean square of the paces is that of the usual sky. */
const MEAN_SQUARE = PACES.reduce((sum, { pace, odds }) => sum + (odds / ODDS) * pace ** 2, 0);

/** Of a reading: steps of a third of a stop, 0.1, and the hand that holds the meter, 0.1 to 0.2. */
const READING_SIGMA = 0.2;

/**
 * A reading that the fit of the scene all but left out may be bad, or may be the one that saw the sky
 * change: the fit knows no wandering and cannot tell. Both are reckoned with, by the odds that one in
 * thirty is bad, and then off by two stops (our own assumption).
 */
const SUSPECT_BELOW = 0.1;
const BAD = { odds: 1 / 30, sigma: 2 } as const;

/**
 * A change of the sky that the fit has found, as a step somewhere between two readings: about what an
 * average cloud takes of the light, 1.6 stops (U.S. Naval Observatory, as in cloud.ts).
 */
const STEP_SIGMA = 1.6;

interface Known {
  readonly at: UtcMs;
  readonly isSuspect: boolean;
  readonly meter: string;
  /** Reading minus what the scene says of it before any reading. */
  readonly apart: number;
  readonly level: Level;
}

/** What the readings say if the sky wanders at one pace, and the suspects are bad or not. */
interface Supposed {
  readonly gathered: Gathered;
  /** How much of this is to be believed, in all 1. */
  readonly share: number;
  /** The lower triangle of the readings' covariance, and it solved for what they say. */
  readonly triangle: readonly Float64Array[];
  readonly solved: Float64Array;
}

interface Tellings {
  readonly readings: readonly Known[];
  readonly supposed: readonly Supposed[];
}

function knownOf(scene: Scene): readonly Known[] {
  const since = changeOf(scene)?.since ?? Number.NEGATIVE_INFINITY;
  const placed = scene.readings.flatMap((reading) => {
    const level = levelAt(scene, reading.at);
    return level ? [{ ...reading, level }] : [];
  });
  const centre = (meter: string): number => {
    const own = placed.filter((each) => each.meter === meter);
    return own.reduce((sum, { ev100, level }) => sum + ev100 - level.ev, 0) / own.length;
  };
  const centres = new Map(
    [...new Set(placed.map(({ meter }) => meter))].map((m) => [m, centre(m)]),
  );
  return placed.map(({ at, meter, ev100, weight, level }) => ({
    at,
    // What was left out because the sky changed since tells of the change itself.
    isSuspect: weight < SUSPECT_BELOW && at >= since,
    meter,
    apart: ev100 - (centres.get(meter) ?? 0) - level.ev - level.byScale * (1 - scene.scale),
    level,
  }));
}

function changeOf({ contradictions }: Scene) {
  const change = contradictions.find(({ code }) => code === 'sky-changed');
  return change?.code === 'sky-changed' ? change : null;
}

/** The variance that a walk has gathered by an instant, in stops squared; below zero before its origin. */
type Gathered = (at: UtcMs) => number;

function gatheredFrom(scene: Scene, origin: UtcMs, perMinute: number): Gathered {
  const change = changeOf(scene);
  if (!change) return (at) => perMinute * minutesBetween(origin, at);
  const { lastBefore, since } = change;
  return (at) => {
    const gone = Math.max(0, Math.min(1, (at - lastBefore) / (since - lastBefore)));
    return perMinute * minutesBetween(origin, at) + STEP_SIGMA ** 2 * gone;
  };
}

/** The covariance of a walk by what it has gathered; readings stand at its origin or later. */
const walked = (a: number, b: number): number => Math.max(0, Math.min(a, b));

/** The covariance of two levels through what is unknown of the scene's law. */
const byLaw = (scene: Scene, a: Omit<Level, 'ev'>, b: Omit<Level, 'ev'>): number =>
  SCALE_SIGMA ** 2 * a.byScale * b.byScale +
  (scene.lamps === null ? 0 : LAMPS_SIGMA ** 2 * a.byLamps * b.byLamps);

/** The lower triangle whose square is a positive definite matrix (Cholesky). */
function triangleOf(size: number, entry: (row: number, column: number) => number): Float64Array[] {
  const rows: Float64Array[] = [];
  for (let i = 0; i < size; i += 1) {
    const row = new Float64Array(i + 1);
    rows.push(row);
    for (let j = 0; j <= i; j += 1) {
      const other = rows[j] as Float64Array;
      let left = entry(i, j);
      for (let k = 0; k < j; k += 1) left -= (row[k] as number) * (other[k] as number);
      row[j] = i === j ? Math.sqrt(left) : left / (other[j] as number);
    }
  }
  return rows;
}

/** Solves by a lower triangle, forwards. */
function halfSolved(triangle: readonly Float64Array[], right: readonly number[]): Float64Array {
  const out = new Float64Array(right.length);
  for (const [i, row] of triangle.entries()) {
    let left = right[i] as number;
    for (let k = 0; k < i; k += 1) left -= (row[k] as number) * (out[k] as number);
    out[i] = left / (row[i] as number);
  }
  return out;
}

const tellings = new WeakMap<Scene, Tellings>();

/** What the readings of a scene say of its sky's wandering, worked out once for each scene. */
function tellingsOf(scene: Scene): Tellings {
  const found = tellings.get(scene) ?? newTellings(scene);
  tellings.set(scene, found);
  return found;
}

function newTellings(scene: Scene): Tellings {
  const origin = scene.readings[0]?.at ?? (0 as UtcMs);
  const readings = knownOf(scene);
  const usual = wanderPerMinute(scene) / MEAN_SQUARE;
  const suspects = readings.filter(({ isSuspect }) => isSuspect).length;
  const reckoned = (suspects > 0 ? [false, true] : [false]).flatMap((areBad) =>
    PACES.map(({ pace, odds }) => {
      const gathered = gatheredFrom(scene, origin, usual * pace ** 2);
      const places = readings.map(({ at }) => gathered(at));
      const triangle = triangleOf(readings.length, (i, j) => {
        const [a, b] = [readings[i] as Known, readings[j] as Known];
        const sigma = areBad && a.isSuspect ? BAD.sigma : READING_SIGMA;
        return (
          byLaw(scene, a.level, b.level) +
          (a.meter === b.meter ? OFFSET_SIGMA ** 2 : 0) +
          walked(places[i] as number, places[j] as number) +
          (i === j ? sigma ** 2 : 0)
        );
      });
      const solved = halfSolved(
        triangle,
        readings.map(({ apart }) => apart),
      );
      const before = Math.log(odds) + (areBad ? suspects * Math.log(BAD.odds) : 0);
      const logOdds = solved.reduce(
        (sum, each, i) => sum - each ** 2 / 2 - Math.log(triangle[i]?.[i] as number),
        before,
      );
      return { gathered, triangle, solved, logOdds };
    }),
  );
  const most = Math.max(...reckoned.map(({ logOdds }) => logOdds));
  const all = reckoned.reduce((sum, { logOdds }) => sum + Math.exp(logOdds - most), 0);
  const supposed = reckoned.map(({ logOdds, ...each }) => ({
    ...each,
    share: Math.exp(logOdds - most) / all,
  }));
  return { readings, supposed };
}

/**
 * What is known of a difference of light: the scene's curve, bent by what the readings say of the sky's
 * wandering, and how sure that is. What an order of frames cancels does not count.
 */
export function differenceOf(scene: Scene, parts: readonly Part[]): Told {
  const { readings, supposed } = tellingsOf(scene);
  const sum = (of: (part: Part) => number): number =>
    parts.reduce((total, part) => total + part.factor * of(part), 0);
  const slopes = {
    byScale: sum(({ level }) => level.byScale),
    byLamps: sum(({ level }) => level.byLamps),
  };
  const before = sum(({ level }) => level.ev) + slopes.byScale * (1 - scene.scale);
  const law = readings.map(({ level }) => byLaw(scene, slopes, level));
  const told = supposed.map(({ gathered, share, triangle, solved }) => {
    const places = parts.map(({ midMs }) => gathered(midMs));
    const together = readings.map(({ at }, i) => {
      const place = gathered(at);
      const walk = parts.reduce(
        (total, { factor }, j) => total + factor * walked(places[j] as number, place),
        0,
      );
      return (law[i] as number) + walk;
    });
    const half = halfSolved(triangle, together);
    return {
      share,
      stops: half.reduce((total, each, i) => total + each * (solved[i] as number), before),
      variance: half.reduce(
        (left, each) => left - each ** 2,
        byLaw(scene, slopes, slopes) + exposedTo(parts, places),
      ),
    };
  });
  const stops = told.reduce((total, each) => total + each.share * each.stops, 0);
  const variance = told.reduce(
    (total, each) => total + each.share * (each.variance + (each.stops - stops) ** 2),
    0,
  );
  // Rounding may leave a hair below zero where nothing is unknown.
  return { stops, variance: Math.max(0, variance) };
}

/**
 * The variance that a walk brings into a difference: each gap counts by the square of what stands
 * before it, so that the frames of a mirror are exposed to less than those of a pair.
 */
function exposedTo(parts: readonly Part[], places: readonly number[]): number {
  const inOrder = parts
    .map(({ factor }, i) => ({ factor, place: places[i] as number }))
    .sort((a, b) => a.place - b.place);
  let standing = 0;
  let variance = 0;
  for (const [i, { factor, place }] of inOrder.entries()) {
    const next = inOrder[i + 1];
    standing += factor;
    if (next) variance += standing ** 2 * (next.place - place);
  }
  return variance;
}
