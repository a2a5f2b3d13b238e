import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inverse } from './inverse.ts';
import { type FitProblem, median, robustFit } from './robustFit.ts';

const line =
  (xs: readonly number[]): FitProblem['model'] =>
  ([level = 0, slope = 0], { values, slopes }) => {
    for (const [i, x] of xs.entries()) {
      values[i] = level + slope * x;
      slopes.set([1, x], 2 * i);
    }
  };

const xs = [0, 1, 2, 3, 4, 5, 6, 7];
const fitLine = (observed: readonly number[]) =>
  robustFit({
    observed,
    start: [median(observed), 0],
    model: line(xs),
    priors: [
      { mean: 0, sigma: 1e3 },
      { mean: 0, sigma: 1e3 },
    ],
    leastScatter: 0.1,
    telling: xs.map(() => true),
    doubted: xs.map(() => true),
    mostRounds: 50,
  });

const anyCoefficient = fc.double({ min: -2, max: 2, noNaN: true });

test('a line is found whatever one wild observation says', () => {
  fc.assert(
    fc.property(
      anyCoefficient,
      fc.double({ min: -0.1, max: 0.1, noNaN: true }),
      fc.nat(7),
      fc.double({ min: 3, max: 50, noNaN: true }),
      (a, b, bad, by) => {
        const observed = xs.map((x, i) => a + b * x + (i === bad ? by : 0));
        const { parameters, weights } = fitLine(observed);
        expect(parameters[0]).toBeCloseTo(a, 4);
        expect(parameters[1]).toBeCloseTo(b, 4);
        expect(weights[bad]).toBe(0);
      },
    ),
  );
});

test('without doubt it is plain least squares, worked out by hand', () => {
  const observed = [1, 3, 2, 5];
  const four = [0, 1, 2, 3];
  const { parameters, covariance } = robustFit({
    observed,
    start: [0, 0],
    model: line(four),
    priors: [
      { mean: 0, sigma: 1e6 },
      { mean: 0, sigma: 1e6 },
    ],
    leastScatter: 10,
    telling: four.map(() => true),
    doubted: four.map(() => false),
    mostRounds: 50,
  });
  // Means 1.5 and 2.75, slope 5.5/5, intercept 2.75 - 1.1 x 1.5.
  expect(parameters[1]).toBeCloseTo(1.1, 9);
  expect(parameters[0]).toBeCloseTo(1.1, 9);
  // Variance of the slope: 10² over the sum of squares about the mean.
  expect(covariance[1]?.[1]).toBeCloseTo(100 / 5, 6);
});

test('a parameter that nothing tells about keeps what was known before', () => {
  const { parameters, covariance } = robustFit({
    observed: [4, 4],
    start: [0, 0.7],
    model: ([level = 0], { values, slopes }) => {
      values.fill(level);
      slopes.set([1, 0, 1, 0]);
    },
    priors: [
      { mean: 0, sigma: 1e6 },
      { mean: 0.7, sigma: 0.2 },
    ],
    leastScatter: 0.1,
    telling: [true, true],
    doubted: [false, false],
    mostRounds: 50,
  });
  expect(parameters[0]).toBeCloseTo(4, 9);
  expect(parameters[1]).toBe(0.7);
  expect(covariance[1]?.[1]).toBeCloseTo(0.04, 12);
});

test('a matrix times its inverse is one, and a singular one is refused', () => {
  const matrix = [
    [4, 1, 0.5],
    [1, 3, 0.2],
    [0.5, 0.2, 2],
  ];
  const inverted = inverse(matrix);
  for (const [i, row] of matrix.entries()) {
    for (const j of matrix.keys()) {
      const product = row.reduce((sum, value, k) => sum + value * (inverted[k]?.[j] ?? 0), 0);
      expect(product).toBeCloseTo(i === j ? 1 : 0, 12);
    }
  }
  expect(() =>
    inverse([
      [1, 1],
      [1, 1],
    ]),
  ).toThrow('matrix-singular');
});

test.each([
  [[], 0],
  [[3], 3],
  [[5, 1], 3],
  [[9, 1, 2], 2],
])('the median of %j is %d', (values, wanted) => {
  expect(median(values)).toBe(wanted);
});
