import { type Refusal, refuse } from './refusal.ts';
import type { Plane } from './tiles.ts';

/**
 * A plane reduced to one pixel for each square of `side` pixels, by the mean. Both frames of a
 * pair are brought to common output pixels in this way before they are compared; pixels past the
 * last whole square are left out. Refuses a side that is no whole number from 1 ('side-not-whole').
 */
export function averageAreas({ values, width }: Plane, side: number): Plane | Refusal {
  if (!Number.isInteger(side) || side < 1) return refuse('side-not-whole');
  const columns = Math.floor(width / side);
  const rows = Math.floor(values.length / width / side);
  const reduced = Float64Array.from({ length: columns * rows }, (_, index) => {
    const top = Math.floor(index / columns) * side;
    const left = (index % columns) * side;
    let sum = 0;
    for (let y = top; y < top + side; y += 1) {
      for (let x = left; x < left + side; x += 1) sum += values[y * width + x] as number;
    }
    return sum / side ** 2;
  });
  return { values: reduced, width: columns };
}
