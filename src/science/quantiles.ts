import { type Refusal, refuse } from './refusal.ts';

/*
 * Quantiles of the chi-square, Student's t, F and normal distributions, for the intervals of noise
 * figures. Our own because no library fits: the one kept best brings 230 packages and 48 KB (gzip)
 * for three functions and had chi-square 0.975 at 9999 degrees of freedom wrong in the fifth digit;
 * the one used most has no types and 17 KB. The distributions are summed by series of positive
 * terms, so nothing cancels, and turned round by bisection. Formulas: handbooks of special functions,
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

/** Terms below this part of a sum no longer count. */
const NEGLIGIBLE = 1e-17;
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

/** 1 + r0 (1 + r1 (1 + ...)) for ratios above zero that end below 1. */
function sumOfProducts(ratio: (index: number) => number): number {
  let term = 1;
  let sum = 1;
  for (let index = 0; ; index += 1) {
    const step = ratio(index);
    term *= step;
    sum += term;
    if (step < 1 && term < NEGLIGIBLE * sum) return sum;
  }
}

/** The regularised lower incomplete gamma function P(a, x). */
const incompleteGamma = (a: number, x: number): number =>
  Math.exp(a * Math.log(x) - x - logGamma(a + 1)) * sumOfProducts((n) => x / (a + 1 + n));

/** The regularised incomplete beta function I_x(a, b). */
function incompleteBeta(a: number, b: number, x: number): number {
  // Past the mean the other tail's series settles sooner.
  if (x > a / (a + b)) return 1 - incompleteBeta(b, a, 1 - x);
  const logBeta = logGamma(a) + logGamma(b) - logGamma(a + b);
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta) / a;
  return front * sumOfProducts((n) => (x * (a + b + n)) / (a + 1 + n));
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
  const share = crossing(below, p, { low: 0, high: 1 });
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
