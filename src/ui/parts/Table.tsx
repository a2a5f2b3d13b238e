import type { ComponentChildren } from 'preact';
import './Table.css';

interface Column {
  readonly key: string;
  readonly head: string;
  /** Figures stand to the right. */
  readonly figures?: boolean;
}

interface Row {
  readonly key: string;
  /** By the key of the column. The first column is the row's head. */
  readonly cells: Readonly<Record<string, ComponentChildren>>;
}

interface Props {
  readonly caption: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** A last row set apart: the sum. */
  readonly foot?: Row;
  /** 'narrow' (default) stacks each row below 30 rem of its own width; 'never' for three short columns. */
  readonly stack?: 'narrow' | 'never';
}

/** What each element is, said again: some browsers forget it once a style sheet has stacked the table. */
export const ROLES = {
  table: { role: 'table' },
  rowgroup: { role: 'rowgroup' },
  row: { role: 'row' },
  columnheader: { role: 'columnheader' },
  rowheader: { role: 'rowheader' },
  cell: { role: 'cell' },
} as const;

/**
 * A table that survives 320 px: where it is narrow, each row becomes a block of named cells.
 */
export function Table({ caption, columns, rows, foot, stack = 'narrow' }: Props) {
  const line = (row: Row) => (
    <tr key={row.key} {...ROLES.row}>
      {columns.map((column, index) => {
        const inside = (
          <>
            <span class="named" aria-hidden="true">
              {column.head}
            </span>
            <span class="cell">{row.cells[column.key]}</span>
          </>
        );
        return index === 0 ? (
          <th key={column.key} {...ROLES.rowheader} scope="row">
            {inside}
          </th>
        ) : (
          <td key={column.key} {...ROLES.cell} class={column.figures ? 'figures-cell' : undefined}>
            {inside}
          </td>
        );
      })}
    </tr>
  );
  return (
    <div class={`table ${stack}`}>
      <table {...ROLES.table}>
        <caption>{caption}</caption>
        <thead {...ROLES.rowgroup}>
          <tr {...ROLES.row}>
            {columns.map((column) => (
              <th
                key={column.key}
                {...ROLES.columnheader}
                scope="col"
                class={column.figures ? 'figures-cell' : undefined}
              >
                {column.head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody {...ROLES.rowgroup}>{rows.map(line)}</tbody>
        {foot && <tfoot {...ROLES.rowgroup}>{line(foot)}</tfoot>}
      </table>
    </div>
  );
}
