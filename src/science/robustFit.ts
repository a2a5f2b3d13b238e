import { inverse } from './inverse.ts';

/** What a model says of one observation, and how that moves with each parameter. */
export interface Predicted {
  readonly value: number;
  readonly slopes: readonly number[];
}

/** A least-squares problem with few parameters, some of whose observations may be bad. */
export interface FitProblem {
  readonly observed: readonly number[];
  readonly start: readonly number[];
  readonly model: (parameters: readonly number[]) => readonly Predicted[];
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
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
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
  const residualsOf = (predicted: readonly Predicted[]) =>
    observed.map((value, i) => value - (predicted[i]?.value ?? 0));
  const scatterOf = (residuals: readonly number[]) =>
    Math.max(
      leastScatter,
      MEDIAN_TO_SIGMA * median(residuals.filter((_, i) => telling[i]).map(Math.abs)),
    );
  const weightsOf = (residuals: readonly number[], scatter: number) =>
    residuals.map((residual, i) => (doubted[i] ? standing(residual, scatter) ** 2 : 1));

  let parameters = problem.start;
  let covariance: readonly (readonly number[])[] = [];
  for (let round = 0; round < problem.mostRounds; round += 1) {
    const predicted = model(parameters);
    const residuals = residualsOf(predicted);
    const scatter = scatterOf(residuals);
    const weights = weightsOf(residuals, scatter).map((weight) => weight / scatter ** 2);
    const normal = priors.map(({ sigma }, row) =>
      priors.map((_, column) => (row === column ? sigma ** -2 : 0)),
    );
    const pull = priors.map(({ mean, sigma }, i) => (mean - (parameters[i] ?? 0)) / sigma ** 2);
    for (const [i, { slopes }] of predicted.entries()) {
      for (const [row, slope] of slopes.entries()) {
        const weighed = (weights[i] ?? 0) * slope;
        const into = normal[row];
        if (weighed === 0 || into === undefined) continue;
        pull[row] = (pull[row] ?? 0) + weighed * (residuals[i] ?? 0);
        for (const [column, other] of slopes.entries()) {
          into[column] = (into[column] ?? 0) + weighed * other;
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

  const residuals = residualsOf(model(parameters));
  const scatter = scatterOf(residuals);
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
    residuals,
    weights: weightsOf(residuals, scatter),
    scatter,
    misfit: loss + prior,
  };
}
