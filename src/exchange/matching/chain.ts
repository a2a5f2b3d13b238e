/*
 * Two sequences in the order of time are paired so that pairs never cross. What a pairing is worth
 * is the sum of its pairs' worths; leaving things out is worth nothing. Exact, by dynamic
 * programming over the two sequences, and so is what every other choice would lose.
 */

/** Rows and columns that may be paired, and what their pairs are worth. */
export interface ChainProblem {
  readonly rows: number;
  readonly columns: number;
  /** First and last column that each row may be paired with; none where the last is before the first. */
  readonly first: Int32Array;
  readonly last: Int32Array;
  /** Below zero: the pair is never taken, and yet a choice. */
  readonly worth: (row: number, column: number) => number;
}

/** A choice of a row, -1 for no column, and what the best pairing with it loses against the best. */
export interface RowChoice {
  readonly column: number;
  readonly loss: number;
}

export interface Chain {
  readonly worth: number;
  /** The column of each row, -1 for none. */
  readonly taken: Int32Array;
  /** Each row's choices, those that lose at most `within`, least loss first; none if it was null. */
  readonly choices: readonly (readonly RowChoice[])[];
}

/**
 * For each row the columns that matter to it and its neighbours: both bounds widened until neither
 * falls from row to row. Outside of them the best worth does not change with the column.
 */
function widened({ rows, columns, first, last }: ChainProblem): {
  readonly low: Int32Array;
  readonly high: Int32Array;
} {
  const low = new Int32Array(rows);
  const high = new Int32Array(rows);
  let least = columns;
  for (let row = rows - 1; row >= 0; row -= 1) {
    if (at(last, row) >= at(first, row)) least = Math.min(least, at(first, row));
    low[row] = least;
  }
  let most = -1;
  for (let row = 0; row < rows; row += 1) {
    if (at(last, row) >= at(first, row)) most = Math.max(most, at(last, row));
    high[row] = Math.max(most, at(low, row) - 1);
  }
  return { low, high };
}

const at = (array: Int32Array | Float64Array, index: number): number => array[index] as number;

/**
 * The pairing that is worth most, and every row's other choices that lose at most `within`;
 * none are looked for where that is null, which takes half the time.
 *
 * The time it takes grows with the number of pairs that may be.
 */
export function bestChain(problem: ChainProblem, within: number | null): Chain {
  const { rows, first, last } = problem;
  const { low, high } = widened(problem);
  const worths: Float64Array[] = [];
  // Entry k of a row: the most that rows up to it are worth with columns up to low - 1 + k.
  const upTo: Float64Array[] = [];
  const before = (row: number, column: number): number => {
    const found = row < 0 ? undefined : upTo[row];
    if (!found) return 0;
    const place = Math.min(column - at(low, row) + 1, found.length - 1);
    return place < 0 ? before(row - 1, column) : at(found, place);
  };
  for (let row = 0; row < rows; row += 1) {
    const from = at(low, row);
    const worth = new Float64Array(Math.max(0, at(last, row) - at(first, row) + 1));
    for (let k = 0; k < worth.length; k += 1) worth[k] = problem.worth(row, at(first, row) + k);
    worths.push(worth);
    const best = new Float64Array(at(high, row) - from + 2);
    best[0] = before(row - 1, from - 1);
    for (let column = from; column <= at(high, row); column += 1) {
      const k = column - from + 1;
      const without = Math.max(before(row - 1, column), at(best, k - 1));
      const pair = worthAt(worth, column - at(first, row));
      best[k] = Math.max(without, before(row - 1, column - 1) + pair);
    }
    upTo.push(best);
  }
  const total = before(rows - 1, problem.columns - 1);
  const choices =
    within === null ? [] : otherChoices(problem, { low, high, worths, before, total }, within);
  return { worth: total, taken: trace(problem, worths, before), choices };
}

/** A row may not be paired with what lies out of its bounds. */
const worthAt = (worth: Float64Array, place: number): number =>
  worth[place] ?? Number.NEGATIVE_INFINITY;

interface Swept {
  readonly low: Int32Array;
  readonly high: Int32Array;
  readonly worths: readonly Float64Array[];
  /** The most that rows up to `row` are worth with columns up to `column`. */
  readonly before: (row: number, column: number) => number;
  readonly total: number;
}

/** One pairing that is worth most: from the end, a row is left out wherever that loses nothing. */
function trace(
  { rows, columns, first }: ChainProblem,
  worths: readonly Float64Array[],
  before: Swept['before'],
): Int32Array {
  const taken = new Int32Array(rows).fill(-1);
  let column = columns - 1;
  for (let row = rows - 1; row >= 0; row -= 1) {
    const reached = before(row, column);
    if (before(row - 1, column) === reached) continue;
    // The first column by which this much is reached is the one that the row takes.
    const from = at(first, row);
    let found = Math.min(column, from + (worths[row]?.length ?? 0) - 1);
    while (found > from && before(row, found - 1) === reached) found -= 1;
    taken[row] = found;
    column = found - 1;
  }
  return taken;
}

/** Sweeps from the end, so that what lies before and after a choice is known at once. */
function otherChoices(
  { rows, columns, first }: ChainProblem,
  { low, high, worths, before, total }: Swept,
  within: number,
): readonly (readonly RowChoice[])[] {
  const choices: RowChoice[][] = Array.from({ length: rows }, () => []);
  // Entry k: the most that the rows after this one are worth with columns from `start` + k on.
  let after: Float64Array = new Float64Array(1);
  let start = columns;
  const afterFrom = (column: number): number =>
    column - start >= after.length ? 0 : at(after, Math.max(0, column - start));
  for (let row = rows - 1; row >= 0; row -= 1) {
    const worth = worths[row] as Float64Array;
    const found: RowChoice[] = [];
    const keep = (column: number, reached: number): void => {
      if (total - reached <= within) found.push({ column, loss: Math.max(0, total - reached) });
    };
    keep(-1, splitBest(row));
    for (let k = 0; k < worth.length; k += 1) {
      const column = at(first, row) + k;
      const pair = at(worth, k);
      keep(column, before(row - 1, column - 1) + pair + afterFrom(column + 1));
    }
    choices[row] = found.sort((a, b) => a.loss - b.loss);
    const from = at(low, row);
    const next = new Float64Array(at(high, row) - from + 2);
    for (let column = at(high, row) + 1; column >= from; column -= 1) {
      const without = Math.max(
        afterFrom(column),
        column <= at(high, row) ? at(next, column - from + 1) : 0,
      );
      const pair = worthAt(worth, column - at(first, row));
      next[column - from] = Math.max(without, pair + afterFrom(column + 1));
    }
    after = next;
    start = from;
  }
  return choices;

  /** The most without this row: columns up to one for what is before it, the rest for what is after. */
  function splitBest(row: number): number {
    const from = Math.max(-1, start - 1);
    const to = row > 0 ? at(high, row - 1) : -1;
    let best = before(row - 1, from) + afterFrom(from + 1);
    for (let column = from + 1; column <= to; column += 1) {
      best = Math.max(best, before(row - 1, column) + afterFrom(column + 1));
    }
    return best;
  }
}
