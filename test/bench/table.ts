/** Figures that belong side by side and are no ratios: one line of cells under their heads. */
export interface Table {
  /** What the figures are of. */
  readonly name: string;
  readonly heads: readonly string[];
  readonly lines: readonly (readonly (string | number)[])[];
}

/** The middle of some figures; between the two middle ones where they are even in number. */
export function median(of: readonly number[]): number {
  const sorted = of.toSorted((a, b) => a - b);
  const [below, above] = [(sorted.length - 1) >> 1, sorted.length >> 1];
  return ((sorted[below] ?? Number.NaN) + (sorted[above] ?? Number.NaN)) / 2;
}

/** By how much a figure is above another, as '+0.0 %' of that other. */
export const above = (figure: number, other: number): string => {
  const percent = (100 * (figure - other)) / other;
  return `${percent < 0 ? '' : '+'}${percent.toFixed(2)} %`;
};
