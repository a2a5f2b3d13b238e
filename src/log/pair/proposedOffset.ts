import { offsetAt } from '../../gear/offsets.ts';
import type { Offset, Rig } from '../../gear/rig.ts';
import type { SetId } from '../../plan/ids.ts';
import {
  chiSquareQuantile,
  type DegreesOfFreedom,
  normalQuantile,
  type Probability,
} from '../../science/quantiles.ts';
import { type Stops, stops } from '../../science/units.ts';

/*
 * Leftovers that agree over sets say that a rig gives something else than its marks. The rule: at
 * least two sets; their leftovers scatter no more than their widths allow (chi-square, 95 in 100);
 * their mean lies further from zero than its own width (95 in 100). Then, and only when the user
 * says so, the other rig's offset is changed against its reference's. Weighted mean and chi-square
 * are the usual ones for values with known widths; the shares are our choice.
 */

const SURE = 0.95 as Probability;
const BOTH_SIDES = 0.975 as Probability;
/** Fewer sets agree with anything. */
const LEAST_SETS = 2;

/** One set's leftover of a pair. */
export interface SetLeftOver {
  readonly set: SetId;
  /** The ISO the other rig stood at. */
  readonly isoMark: string;
  readonly referenceIsoMark: string;
  /** Needed minus predicted. */
  readonly stops: Stops;
  /** One sigma without the offsets', which all sets share. */
  readonly sigma: Stops;
  /** What the transmissions put into the prediction, 0 if nothing: it goes once offsets are known. */
  readonly glass: Stops;
}

/** What the leftovers of one pair of rigs say together. */
export type Agreement =
  | { readonly says: 'too-few' | 'differ' | 'nothing'; readonly sets: readonly SetLeftOver[] }
  | {
      readonly says: 'offset';
      readonly sets: readonly SetLeftOver[];
      /** The mean leftover. */
      readonly mean: Stops;
      readonly sigma: Stops;
    };

/** Whether the leftovers of a pair agree over sets, by the rule above. */
export function agreementOf(sets: readonly SetLeftOver[]): Agreement {
  if (new Set(sets.map(({ set }) => set)).size < LEAST_SETS) return { says: 'too-few', sets };
  const weights = sets.map(({ sigma }) => 1 / sigma ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = sets.reduce((sum, each, i) => sum + (weights[i] ?? 0) * each.stops, 0) / total;
  const scatter = sets.reduce(
    (sum, each, i) => sum + (weights[i] ?? 0) * (each.stops - mean) ** 2,
    0,
  );
  if (scatter > chiSquareQuantile(SURE, (sets.length - 1) as DegreesOfFreedom)) {
    return { says: 'differ', sets };
  }
  const sigma = 1 / Math.sqrt(total);
  return Math.abs(mean) > normalQuantile(BOTH_SIDES) * sigma
    ? { says: 'offset', sets, mean: stops(mean), sigma: stops(sigma) }
    : { says: 'nothing', sets };
}

/** The two rigs with offsets that make the prediction what was needed. */
export interface ProposedOffsets {
  readonly other: Rig;
  /** Null where the reference's is known already; else it is taken as 0, which the user is told. */
  readonly reference: Rig | null;
}

/**
 * The offsets that leave nothing over in the mean.
 *
 * @param on the date of the outing, YYYY-MM-DD.
 * @param how in the owner's words.
 */
export function proposedOffsets(
  reference: Rig,
  other: Rig,
  { sets, mean }: Extract<Agreement, { says: 'offset' }>,
  { on, how }: { readonly on: string; readonly how: string },
): ProposedOffsets {
  const unknownReference = sets.some(
    ({ referenceIsoMark }) => offsetAt(reference, referenceIsoMark) === null,
  );
  // Where either was unknown neither was in the sum, and the glass was; with both it leaves the sum.
  const before = new Map<string | null, number[]>();
  for (const { isoMark, referenceIsoMark, glass } of sets) {
    const theirs = offsetAt(reference, referenceIsoMark);
    const ours = offsetAt(other, isoMark);
    const key = ours?.isoMark ?? null;
    const had = theirs && ours ? ours.stops : (theirs?.stops ?? 0) + glass;
    before.set(key, [...(before.get(key) ?? []), had]);
  }
  const fresh = [...before].map(([isoMark, had]): Offset => {
    const usual = had.reduce((sum, each) => sum + each, 0) / had.length;
    return { isoMark, stops: stops(usual - mean), date: on, how };
  });
  return {
    other: withOffsets(other, fresh),
    reference: unknownReference
      ? withOffsets(reference, [{ isoMark: null, stops: stops(0), date: on, how }])
      : null,
  };
}

/** What was found for the same ISO before makes room: a wall of a later date would hold instead. */
const withOffsets = (rig: Rig, fresh: readonly Offset[]): Rig => ({
  ...rig,
  offsets: [
    ...rig.offsets.filter(({ isoMark }) => fresh.every((each) => each.isoMark !== isoMark)),
    ...fresh,
  ],
});
