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
 */
export type Bench = (app: string) => Promise<readonly Ratio[]>;
