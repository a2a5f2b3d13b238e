import type { Offset, Rig } from './rig.ts';

/**
 * The offset that holds for a rig at an ISO: one found at that ISO before one
 * taken for every ISO, and of two alike the one found later.
 *
 * @returns null if none was ever found: unknown, which is not zero.
 */
export function offsetAt(rig: Rig, isoMark: string): Offset | null {
  return (
    latest(rig.offsets.filter((offset) => offset.isoMark === isoMark)) ??
    latest(rig.offsets.filter((offset) => offset.isoMark === null))
  );
}

/** Calendar dates compare as text; of two on one day the one entered later holds. */
const latest = (offsets: readonly Offset[]): Offset | null =>
  offsets.reduce<Offset | null>(
    (best, offset) => (best !== null && best.date > offset.date ? best : offset),
    null,
  );
