/*
 * Comma-separated values by RFC 4180, with what spreadsheets need besides: a byte
 * order mark, so that they take the text for UTF-8, and a guard, so that no text
 * is taken for a formula.
 */

/** What stands in one cell. Null is an empty cell: unknown, or it does not apply. */
export type Cell = string | number | boolean | null;

/** Cells under their names, row by row. */
export interface Table<C> {
  readonly header: readonly string[];
  readonly rows: readonly (readonly C[])[];
}

export const MARK = '\uFEFF';
const END = '\r\n';

/**
 * Text that a spreadsheet would run begins with one of these. An apostrophe before
 * it is guarded too, else reading would take away one that was always there.
 */
export const RUNS = /^'*[=+\-@\t\r]/;

const guarded = (text: string): string => (RUNS.test(text) ? `'${text}` : text);

const quoted = (text: string): string =>
  /[",\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** Ten digits, more than any figure here is good for, and never an exponent. */
function decimal(value: number): string {
  if (!Number.isFinite(value)) return '';
  const rounded = Number(value.toPrecision(10));
  const text = String(rounded);
  if (!text.includes('e')) return text;
  // Below a millionth: written out, and what the last bits of a sum left over is nothing.
  return rounded
    .toFixed(12)
    .replace(/\.?0+$/, '')
    .replace(/^-0$/, '0');
}

function written(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return decimal(cell);
  return typeof cell === 'boolean' ? String(cell) : quoted(guarded(cell));
}

/** A table as the text of a file. Numbers have a point before the decimals. */
export const writeCsv = ({ header, rows }: Table<Cell>): string =>
  MARK + [header, ...rows].map((row) => row.map(written).join(',') + END).join('');
