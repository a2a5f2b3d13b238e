import { type Fault, fault, isFault } from '../gear/read.ts';
import { MARK, RUNS, type Table } from './csv.ts';

const unguarded = (text: string): string =>
  text.startsWith("'") && RUNS.test(text) ? text.slice(1) : text;

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
