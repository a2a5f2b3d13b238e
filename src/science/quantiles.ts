import { type Refusal, refuse } from './refusal.ts';

/*
 * Quantiles of the chi-square, Student's t, F and normal distributions, for the intervals of noise
 * figures. Our own because no library fits: the one kept best brings 230 packages and 48 KB (gzip)
 * for three functions and had chi-square 0.975 at 9999 degrees of freedom wrong in the fifth digit;
 * the one used most has no types and 17 KB. The distributions are turned round by
 * bisection. Formulas: handbooks of special functions,
 * from memory; held to printed tables and to a statistics library's values by the checks.
 */

declare const probabilityUnit: unique symbol;
declare const dofUnit: unique symbol;

/** A probability strictly between 0 and 1. */
export type Probability = number & { readonly [probabilityUnit]: true };
/** Degrees of freedom, above zero. */
export type DegreesOfFreedom = number & { readonly [dofUnit]: true };

/** A probability strictly between 0 and 1, else a refusal. */
export const parseProbability = (value: number): Probability | Refusal =>
  value > 0 && value < 1 ? (value as Probability) : refuse('probability-out-of-range');
/** Degrees of freedom above zero, else a refusal. */
export const parseDegreesOfFreedom = (value: number): DegreesOfFreedom | Refusal =>
  Number.isFinite(value) && value > 0
    ? (value as DegreesOfFreedom)
    : refuse('degrees-of-freedom-not-positive');

/** Steps that change a sum or fraction by less than this part no longer count. */
const NEGLIGIBLE = 1e-16;
/** The fraction settles in some multiple of the root of the larger parameter. */
const MOST_STEPS = 100_000;
/** From here on Stirling's series with the terms below is exact to a double. */
const STIRLING_FROM = 20;

/** The logarithm of the gamma function for x > 0, by recurrence and Stirling's series. */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  for (; z < STIRLING_FROM; z += 1) shift += Math.log(z);
  const square = z ** -2;
  const series = (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square / 1680))) / z;
  return (z - 0.5) * Math.log(z) - z + Math.log(2 * Math.PI) / 2 + series - shift;
}

/** The regularised lower incomplete gamma function P(a, x), by its series of positive terms. */
function incompleteGamma(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > NEGLIGIBLE * sum || n < x - a; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return Math.exp(a * Math.log(x) - x - logGamma(a + 1)) * sum;
}

/** The regularised incomplete beta function I_x(a, b), by Lentz's way through its fraction. */
function incompleteBeta(a: number, b: number, x: number): number {
  // Past the mean the fraction of the other tail settles, and this one does not.
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(b, a, 1 - x);
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta) / a;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let fraction = d;
  for (let m = 1; m < MOST_STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    const before = fraction;
    for (const part of [even, odd]) {
      d = 1 / (1 + part * d);
      c = 1 + part / c;
      fraction *= c * d;
    }
    if (Math.abs(fraction - before) <= NEGLIGIBLE * Math.abs(fraction)) break;
  }
  return front * fraction;
}

/** Where a rising function passes a level, to the last bits. */
function crossing(
  rising: (x: number) => number,
  level: number,
  between: { readonly low: number; readonly high: number },
): number {
  let { low, high } = between;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (rising(middle) < level) low = middle;
    else high = middle;
  }
}

/** The value below which a chi-square variable lies with a probability. */
export function chiSquareQuantile(p: Probability, dof: DegreesOfFreedom): number {
  const below = (x: number): number => incompleteGamma(dof / 2, x / 2);
  let step = Math.sqrt(2 * dof);
  while (below(dof + step) < p) step *= 2;
  return crossing(below, p, { low: 0, high: dof + step });
}

/** The value below which an F variable lies with a probability. */
export function fQuantile(p: Probability, dof1: DegreesOfFreedom, dof2: DegreesOfFreedom): number {
  const below = (x: number): number => incompleteBeta(dof1 / 2, dof2 / 2, x);
  // A share near 1 would lose its last digits in 1 - share: turned round it is near 0.
  if (below(0.5) < p) return 1 / fQuantile((1 - p) as Probability, dof2, dof1);
  const share = crossing(below, p, { low: 0, high: 0.5 });
  return (dof2 * share) / (dof1 * (1 - share));
}

/** The value of a symmetric variable from that of its square. */
const signedRoot = (p: Probability, quantileOfSquare: (p: Probability) => number): number =>
  p === 0.5
    ? 0
    : Math.sign(p - 0.5) * Math.sqrt(quantileOfSquare(Math.abs(2 * p - 1) as Probability));

/** The value below which a Student's t variable lies with a probability. */
export const tQuantile = (p: Probability, dof: DegreesOfFreedom): number =>
  signedRoot(p, (of) => fQuantile(of, 1 as DegreesOfFreedom, dof));

/** The value below which a standard normal variable lies with a probability. */
export const normalQuantile = (p: Probability): number =>
  signedRoot(p, (of) => chiSquareQuantile(of, 1 as DegreesOfFreedom));
