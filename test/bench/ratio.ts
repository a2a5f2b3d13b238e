/** Two figures of one run, to be read as a ratio. */
export interface Ratio {
  /** What is compared with what. */
  readonly name: string;
  readonly measured: number;
  readonly against: number;
  readonly unit: string;
}
