import type { Column } from './columns.ts';
import type { Row } from './rows.ts';
import { type ByEnd, byEnd, type Reading } from './sequence.ts';

/** One rig's frames beside the files that it took by one way of sharing them out. */
export interface Beside {
  readonly rows: readonly Row[];
  readonly columns: ByEnd<readonly Column[]>;
  /** Cheapest first. */
  readonly readings: readonly Reading[];
}

/** The files in the order in which a reading takes them. */
export const columnsFor = ({ columns }: Beside, { clock }: Reading): readonly Column[] =>
  byEnd(columns, clock);
