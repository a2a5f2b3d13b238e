import type { Table } from './table.ts';

/** A figure, or each figure of those that were taken one after the other. */
type Samples = number | readonly number[];

/**
 * Two figures of one run, to be read as a ratio; many samples are taken turn by turn with those they
 * stand against.
 */
export interface Ratio {
  /** What is compared with what. */
  readonly name: string;
  readonly unit: string;
  readonly measured: Samples;
  readonly against: Samples;
  /** The largest ratio wanted; left out where the figures only inform. */
  readonly aim?: number;
}

/**
 * A bench file's one export.
 *
 * @param app the folder of the production build that all benches share
 * @param brief whether it is enough to see that it runs: a few cases then, whose figures say little
 */
export type Bench = (app: string, brief: boolean) => Promise<readonly (Ratio | Table)[]>;
