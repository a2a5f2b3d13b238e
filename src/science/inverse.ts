/**
 * The inverse of a symmetric positive definite matrix by Gauss-Jordan elimination.
 *
 * @throws RangeError for one that is singular.
 */
export function inverse(matrix: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (const [index, row] of rows.entries()) {
    const pivot = row[index] ?? 0;
    if (!(pivot > 0)) throw new RangeError('matrix-singular');
    for (let column = 0; column < 2 * size; column += 1) row[column] = (row[column] ?? 0) / pivot;
    for (const other of rows) {
      const factor = other[index] ?? 0;
      if (other === row || factor === 0) continue;
      for (let column = 0; column < 2 * size; column += 1) {
        other[column] = (other[column] ?? 0) - factor * (row[column] ?? 0);
      }
    }
  }
  return rows.map((row) => row.slice(size));
}
