import { isRefusal, type Refusal, refuse } from './refusal.ts';
import type { Ratio, Seconds, Stops, StopsPerMinute } from './units.ts';

/*
 * What a drift leaves in the difference of a pair, and weights that are free of it. A pair's
 * estimate is mean(A) - mean(B), in stops: dusk fades nearly evenly in stops, and means of light
 * would leave a part that means of stops cancel. An order that is a mirror about its middle cancels
 * every odd power of the time, equal spacing or not; A B B A B A A B also the quadratic (found by
 * search), its continuation to 16 the cubic. Source of A B B A cycles: OIML R 111-1:2004 (clause not
 * seen). What no order cancels: heat, which each sensor has of its own frames.
 */

/** Which of the two rigs a frame belongs to. */
export type PairSide = 'A' | 'B';

/** Means of something over the two sides; refuses an order without one of them ('one-sided'). */
function meansOf(
  order: readonly PairSide[],
  value: (index: number) => number,
): Readonly<Record<PairSide, number>> | Refusal {
  const mean = (side: PairSide): number => {
    const own = order.flatMap((each, index) => (each === side ? [value(index)] : []));
    return own.reduce((sum, each) => sum + each, 0) / own.length;
  };
  const means = { A: mean('A'), B: mean('B') };
  return Number.isNaN(means.A + means.B) ? refuse('one-sided') : means;
}

/** What a drift leaves of mean(A) - mean(B), in stops. */
export function orderResidual(
  order: readonly PairSide[],
  mids: readonly Seconds[],
  drift: (at: Seconds) => Stops,
): Stops | Refusal {
  if (order.length !== mids.length) return refuse('times-missing');
  const means = meansOf(order, (index) => drift(mids[index] as Seconds));
  return isRefusal(means) ? means : ((means.A - means.B) as Stops);
}

/**
 * The same for evenly spaced frames and a drift that settles, D (1 - exp(-t / tau)): A B leaves -D (1
 * - q), A B B A -(D/2) (1 - q) (1 - q²).
 *
 * @param amount D, in stops.
 * @param q exp(-spacing / tau), the part of the drift to come that is left after a spacing.
 */
export function settlingResidual(
  order: readonly PairSide[],
  amount: Stops,
  q: Ratio,
): Stops | Refusal {
  const means = meansOf(order, (index) => q ** index);
  return isRefusal(means) ? means : ((-amount * (means.A - means.B)) as Stops);
}

/**
 * What means of light in place of means of stops would leave at a steady fade, in stops: 0.043 for
 * A B B A at a quarter of a stop a frame.
 *
 * @param step the change from frame to frame.
 */
export function linearAverageResidual(order: readonly PairSide[], step: Stops): Stops | Refusal {
  const means = meansOf(order, (index) => 2 ** (index * step));
  return isRefusal(means) ? means : (Math.log2(means.A / means.B) as Stops);
}

/**
 * By how much the mean light of a frame exceeds that at mid-exposure while it fades evenly in stops,
 * sinh(x)/x: 0.0017 stop for two minutes at 0.12 stop a minute. It cancels between equal times.
 */
export function fadeWithinFrame(fade: StopsPerMinute, t: Seconds): Ratio {
  const x = (Math.abs(fade) * (t / 60) * Math.LN2) / 2;
  return (x === 0 ? 1 : Math.sinh(x) / x) as Ratio;
}

/** Below this part of what it was, an order's own part is rounding: the drift explains it all. */
const NOTHING_LEFT = 1e-12;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * (b[index] as number), 0);

/** What is left of a vector when its part along each of some orthogonal ones is taken away. */
function apartFrom(vector: readonly number[], others: readonly (readonly number[])[]): number[] {
  let left = [...vector];
  // Twice is enough to be orthogonal to the last bits.
  for (const other of [...others, ...others]) {
    const along = dot(left, other) / dot(other, other);
    left = left.map((value, index) => value - along * (other[index] as number));
  }
  return left;
}

/**
 * The weights of the least-squares difference A - B free of a polynomial drift: on A they sum to 1,
 * on B to -1, and all moments up to the degree are 0. For frames really shot at other times than
 * planned. Refuses an order that the drift could explain by itself ('drift-not-separable').
 *
 * @param degree 1 for a steady fade, 2 if it bends.
 */
export function driftFreeWeights(
  order: readonly PairSide[],
  mids: readonly Seconds[],
  degree: number,
): readonly number[] | Refusal {
  if (order.length !== mids.length) return refuse('times-missing');
  const means = meansOf(order, () => 0);
  if (isRefusal(means)) return means;
  const first = Math.min(...mids);
  const half = (Math.max(...mids) - first) / 2 || 1;
  const scaled = mids.map((mid) => (mid - first) / half - 1);
  const drifts: number[][] = [];
  for (let power = 0; power <= degree; power += 1) {
    const column = scaled.map((at) => at ** power);
    const own = apartFrom(column, drifts);
    if (dot(own, own) > NOTHING_LEFT * dot(column, column)) drifts.push(own);
  }
  const side = order.map((each) => (each === 'A' ? 1 : 0));
  const own = apartFrom(side, drifts);
  const square = dot(own, own);
  if (square <= NOTHING_LEFT * order.length) return refuse('drift-not-separable');
  return own.map((value) => value / square);
}

/** The noise of a weighted difference over that of the plain one, sqrt(sum w²) against 1/nA + 1/nB. */
export function noisePrice(order: readonly PairSide[], weights: readonly number[]): Ratio {
  const count = (side: PairSide): number => order.filter((each) => each === side).length;
  return Math.sqrt(dot(weights, weights) / (1 / count('A') + 1 / count('B'))) as Ratio;
}
