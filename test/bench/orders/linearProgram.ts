import loadHighs from 'highs';

/*
 * A linear program of which some columns are whole numbers, built piece by piece, and HiGHS, a
 * general solver, to solve it. The solver knows nothing of orders, frames or light.
 */

export interface Term {
  readonly column: number;
  readonly factor: number;
}

/** What a solver came to. */
export interface Solved {
  /** Whether no solution is cheaper. */
  readonly proven: boolean;
  /** The cheapest that was found; infinite if none was. */
  readonly cost: number;
  /** The value of each column in it; empty if none was found. */
  readonly values: readonly number[];
  readonly seconds: number;
}

/** Differences of cost below this do not matter to the solver. */
const ROUNDING = 1e-7;

export class LinearProgram {
  readonly #costs: number[] = [];
  readonly #upper: number[] = [];
  readonly #whole: (0 | 1)[] = [];
  readonly #rowLower: number[] = [];
  readonly #rowUpper: number[] = [];
  readonly #rowStarts: number[] = [0];
  readonly #indices: number[] = [];
  readonly #factors: number[] = [];

  /** A new column from 0 to `upper`, by its number. */
  column(cost: number, upper: number, kind: 'whole' | 'real'): number {
    this.#upper.push(upper);
    this.#whole.push(kind === 'whole' ? 1 : 0);
    return this.#costs.push(cost) - 1;
  }

  /** lower <= sum of factor x column <= upper; each column occurs once. */
  row(lower: number, terms: readonly Term[], upper: number): void {
    this.#rowLower.push(lower);
    this.#rowUpper.push(upper);
    for (const { column, factor } of terms) {
      this.#indices.push(column);
      this.#factors.push(factor);
    }
    this.#rowStarts.push(this.#indices.length);
  }

  /** Looks for the cheapest solution for so many seconds. */
  async solve(limitSeconds: number): Promise<Solved> {
    // Anew each time: what a solver that was stopped leaves behind in its memory is gone with it.
    const highs = await loadHighs();
    const [numRows, numCols] = [this.#rowLower.length, this.#costs.length];
    const model = highs.createModel({
      numRows,
      numCols,
      colCost: this.#costs,
      colLower: this.#costs.map(() => 0),
      colUpper: this.#upper,
      integrality: Int32Array.from(this.#whole),
      rowLower: this.#rowLower,
      rowUpper: this.#rowUpper,
      matrix: {
        format: 'csr',
        numRows,
        numCols,
        starts: this.#rowStarts,
        indices: this.#indices,
        values: this.#factors,
      },
    });
    try {
      model.options.set({
        output_flag: false,
        time_limit: limitSeconds,
        mip_rel_gap: 0,
        mip_abs_gap: ROUNDING,
      });
      model.run();
      const { modelStatus, solutionStatus } = highs.constants;
      const found = model.info.get('primal_solution_status') === solutionStatus.feasible;
      return {
        proven: model.getModelStatus() === modelStatus.optimal,
        cost: found ? model.getObjectiveValue() : Number.POSITIVE_INFINITY,
        values: found ? [...model.getSolution().colValue] : [],
        seconds: model.getRunTime(),
      };
    } finally {
      model.dispose();
    }
  }
}
