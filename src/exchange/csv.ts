import { type Fault, fault, isFault } from '../gear/read.ts';

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

const MARK = '\uFEFF';
const END = '\r\n';

/**
 * Text that a spreadsheet would run begins with one of these. An apostrophe before
 * it is guarded too, else reading would take away one that was always there.
 */
const RUNS = /^'*[=+\-@\t\r]/;

const guarded = (text: string): string => (RUNS.test(text) ? `'${text}` : text);
const unguarded = (text: string): string =>
  text.startsWith("'") && RUNS.test(text) ? text.slice(1) : text;

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

/**
 * The table of a file, every cell as text, guards removed; lines may end either way.
 *
 * @returns a fault with the line from 1: 'csv-quote-open' (the file breaks off inside quotes),
 *   'csv-quote-stray' (text beside a quoted cell), 'csv-row-length' (a row that does not fit the
 *   header), or 'file-empty'.
 */
export function readCsv(file: string): Table<string> | Fault {
  const records = recordsOf(file.startsWith(MARK) ? file.slice(1) : file);
  if (isFault(records)) return records;
  const [header, ...rows] = records;
  if (header === undefined) return fault('file-empty');
  for (const { line, cells } of rows) {
    if (cells.length !== header.cells.length) {
      const expected = header.cells.length;
      return fault('csv-row-length', { line, expected, found: cells.length });
    }
  }
  return { header: header.cells, rows: rows.map(({ cells }) => cells) };
}

interface Row {
  readonly line: number;
  readonly cells: string[];
}

/** One cell and what ends it: quoted with its quotes doubled, or bare. */
const CELL = /(?:"([^"]*(?:""[^"]*)*)"|([^",\r\n]*))(,|\r\n|\n|$)/y;

function recordsOf(text: string): readonly Row[] | Fault {
  const rows: Row[] = [];
  let line = 1;
  let row: Row = { line, cells: [] };
  let at = 0;
  while (at < text.length || row.cells.length > 0) {
    CELL.lastIndex = at;
    const found = CELL.exec(text);
    if (found === null) {
      const open = text[at] === '"' && !/^"[^"]*(?:""[^"]*)*"/.test(text.slice(at));
      return fault(open ? 'csv-quote-open' : 'csv-quote-stray', { line });
    }
    const [whole, inQuotes, bare = '', end] = found;
    row.cells.push(unguarded(inQuotes?.replaceAll('""', '"') ?? bare));
    line += whole.split('\n').length - 1;
    at += whole.length;
    if (end === ',') continue;
    rows.push(row);
    row = { line, cells: [] };
  }
  return rows;
}
