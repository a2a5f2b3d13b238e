/**
 * Two figures of one run, to be read as a ratio. Each was taken as often as it has samples, turn by
 * turn with the other where both need the machine for themselves.
 */
export interface Ratio {
  /** What is compared with what. */
  readonly name: string;
  readonly unit: string;
  readonly measured: readonly number[];
  readonly against: readonly number[];
  /** The largest ratio wanted; left out where the figures only inform. */
  readonly aim?: number;
}

/**
 * A file's one export. Progress is of no use to anybody: a bench is silent until its figures are in.
 *
 * @param app the folder of the production build that all benches share
 */
export type Bench = (app: string) => Promise<readonly Ratio[]>;
