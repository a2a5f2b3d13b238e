import { inverse } from './inverse.ts';

/** What a model says of the observations, in their order. */
export interface Predictions {
  readonly values: Float64Array;
  /** How each value moves with each parameter: a row for each observation; zero where not set. */
  readonly slopes: Float64Array;
}

/** A least-squares problem with few parameters, some of whose observations may be bad. */
export interface FitProblem {
  readonly observed: readonly number[];
  readonly start: readonly number[];
  /** Writes over what it said before: a fit asks often. */
  readonly model: (parameters: readonly number[], into: Predictions) => void;
  /** What is known of each parameter beforehand, as a normal distribution. */
  readonly priors: readonly { readonly mean: number; readonly sigma: number }[];
  /** The scatter is never taken for less: the noise that is known to be there. */
  readonly leastScatter: number;
  /** Observations that tell something about the scatter. */
  readonly telling: readonly boolean[];
  /** Observations that may be found to be bad. */
  readonly doubted: readonly boolean[];
  /** Where it stops if it has not settled; 50 settles nearly anything, 8 tells models apart. */
  readonly mostRounds: number;
}

export interface RobustFit {
  readonly parameters: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  /** Observed minus model. */
  readonly residuals: readonly number[];
  /** From 1 = counts in full to 0 = left out as bad. */
  readonly weights: readonly number[];
  readonly scatter: number;
  /** Twice the bounded loss at the least scatter plus what the priors cost: compares models. */
  readonly misfit: number;
}

/** Tukey's constant: a residual of so many scatters and more counts for nothing. */
const TUKEY = 4.685;
/** Makes the median of absolute residuals a standard deviation, for a normal distribution. */
const MEDIAN_TO_SIGMA = 1.4826;
const SETTLED = 1e-10;
/** In any parameter and round; a model that bends must not be overshot. */
const LONGEST_STEP = 1;

/** The median of some values; 0 for none. */
export function median(values: Iterable<number>): number {
  const sorted = Float64Array.from(values).sort();
  const middle = (sorted.length - 1) / 2;
  return ((sorted[Math.floor(middle)] ?? 0) + (sorted[Math.ceil(middle)] ?? 0)) / 2;
}

/** What is left of a residual's standing: 1 at none, 0 from TUKEY scatters on. */
const standing = (residual: number, scatter: number): number =>
  Math.max(0, 1 - (residual / (TUKEY * scatter)) ** 2);

const clamped = (step: number): number => Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step));

/**
 * Fits a model by iterated least squares with Tukey's weights and normal priors (Gauss-Newton). A bad observation beyond 4.7 scatters does not pull at all. A parameter whose
 * slopes are all zero keeps its prior.
 */
export function robustFit(problem: FitProblem): RobustFit {
  const { observed, model, priors, leastScatter, telling, doubted } = problem;
  const width = priors.length;
  const predicted: Predictions = {
    values: new Float64Array(observed.length),
    slopes: new Float64Array(observed.length * width),
  };
  const residuals = new Float64Array(observed.length);
  const compare = (parameters: readonly number[]): void => {
    model(parameters, predicted);
    for (let i = 0; i < residuals.length; i += 1) {
      residuals[i] = (observed[i] ?? 0) - (predicted.values[i] ?? 0);
    }
  };
  const told = observed.flatMap((_, i) => (telling[i] ? [i] : []));
  const sizes = new Float64Array(told.length);
  const scatterNow = (): number => {
    for (let i = 0; i < told.length; i += 1) sizes[i] = Math.abs(residuals[told[i] ?? 0] ?? 0);
    return Math.max(leastScatter, MEDIAN_TO_SIGMA * median(sizes));
  };
  const weightOf = (i: number, scatter: number): number =>
    doubted[i] ? standing(residuals[i] ?? 0, scatter) ** 2 : 1;

  let parameters = problem.start;
  let covariance: readonly (readonly number[])[] = [];
  for (let round = 0; round < problem.mostRounds; round += 1) {
    compare(parameters);
    const scatter = scatterNow();
    const normal = priors.map(({ sigma }, row) =>
      priors.map((_, column) => (row === column ? sigma ** -2 : 0)),
    );
    const pull = priors.map(({ mean, sigma }, i) => (mean - (parameters[i] ?? 0)) / sigma ** 2);
    for (let i = 0; i < observed.length; i += 1) {
      const weight = weightOf(i, scatter) / scatter ** 2;
      const residual = residuals[i] ?? 0;
      const first = i * width;
      for (let row = 0; row < width; row += 1) {
        const weighed = weight * (predicted.slopes[first + row] ?? 0);
        const into = normal[row];
        if (weighed === 0 || into === undefined) continue;
        pull[row] = (pull[row] ?? 0) + weighed * residual;
        for (let column = 0; column < width; column += 1) {
          into[column] = (into[column] ?? 0) + weighed * (predicted.slopes[first + column] ?? 0);
        }
      }
    }
    covariance = inverse(normal);
    const step = covariance.map((row) =>
      clamped(row.reduce((sum, each, i) => sum + each * (pull[i] ?? 0), 0)),
    );
    parameters = parameters.map((value, i) => value + (step[i] ?? 0));
    if (step.every((each) => Math.abs(each) < SETTLED)) break;
  }

  compare(parameters);
  const scatter = scatterNow();
  const prior = priors.reduce(
    (sum, { mean, sigma }, i) => sum + (((parameters[i] ?? 0) - mean) / sigma) ** 2,
    0,
  );
  const loss = residuals.reduce(
    (sum, residual) => sum + (TUKEY ** 2 / 3) * (1 - standing(residual, leastScatter) ** 3),
    0,
  );
  return {
    parameters,
    covariance,
    residuals: Array.from(residuals),
    weights: observed.map((_, i) => weightOf(i, scatter)),
    scatter,
    misfit: loss + prior,
  };
}
