import type { RigId } from '../gear/ids.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { type CauseDifferences, causesBetween, type Levels, levelsOf } from '../plan/causes.ts';
import { type Differences, differencesFrom, type Pair } from '../plan/differences.ts';
import type { Dialled } from '../plan/frame.ts';
import type { SetId } from '../plan/ids.ts';
import { meanCauses, meanLevels } from '../plan/means.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';

/** A frame that was really made and counts, with what was really set and the time really open. */
export interface CountedFrame extends Dialled {
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
}

/** A pair in one pass. */
export interface PassLedger {
  readonly pass: number;
  /** Of the means over the repeats on either side, in stops. */
  readonly differences: Differences;
}

/** A pair over a set. */
export interface SetLedger {
  readonly set: SetId;
  readonly reference: RigId;
  readonly other: RigId;
  readonly passes: readonly PassLedger[];
  /** Passes in which only one of the two rigs has a frame that counts. */
  readonly unpaired: readonly number[];
  /** The mean over the passes in stops; null if there is no complete pass. */
  readonly mean: Differences | null;
}

/** The level of one rig in one pass; null if none of its frames counts. */
function levelIn(
  frames: readonly CountedFrame[],
  assembled: Pair['reference'],
  pass: number,
): Levels | null {
  const [first, ...more] = frames
    .filter((frame) => frame.pass === pass && frame.rig === assembled.rig.id)
    .map(({ settings, exact }) => levelsOf({ assembled, settings, exact }));
  return first ? meanLevels([first, ...more]) : null;
}

/** A pair in one pass of a set, by cause; null if either rig has no frame that counts. */
function causesIn(
  set: PlanSet,
  pair: Pair,
  pass: number,
  frames: readonly CountedFrame[],
): CauseDifferences | null {
  const inSet = frames.filter((frame) => frame.set === set.id);
  const reference = levelIn(inSet, pair.reference, pass);
  const other = levelIn(inSet, pair.other, pass);
  return reference && other && causesBetween(reference, other);
}

/**
 * A pair over all passes of a set. Passes that lack one side are named and left out: a mean over
 * unlike passes would let the fade in that the order was to cancel.
 */
export function setLedger(set: PlanSet, pair: Pair, frames: readonly CountedFrame[]): SetLedger {
  const rigs = [pair.reference.rig.id, pair.other.rig.id];
  const numbers = frames
    .filter((frame) => frame.set === set.id && rigs.includes(frame.rig))
    .map(({ pass }) => pass);
  const found = [...new Set(numbers)]
    .sort((a, b) => a - b)
    .map((pass) => ({ pass, causes: causesIn(set, pair, pass, frames) }));
  const complete = found.flatMap(({ pass, causes }) => (causes ? [{ pass, causes }] : []));
  const [first, ...more] = complete.map(({ causes }) => causes);
  return {
    set: set.id,
    reference: pair.reference.rig.id,
    other: pair.other.rig.id,
    passes: complete.map(({ pass, causes }) => ({
      pass,
      differences: differencesFrom(causes, pair, set.hold),
    })),
    unpaired: found.flatMap(({ pass, causes }) => (causes ? [] : [pass])),
    mean: first ? differencesFrom(meanCauses([first, ...more]), pair, set.hold) : null,
  };
}

/**
 * The ledgers of an outing: each other rig against the reference of each set that is no capped
 * dark, in the order of the plan. A pair that lacks a rig in the gear has none.
 */
export function ledgersOf(
  plan: Plan,
  gear: Gear,
  frames: readonly CountedFrame[],
): readonly SetLedger[] {
  return plan.sets
    .filter((set) => set.kind !== 'capped-dark')
    .flatMap((set) => {
      const reference = assemble(gear, set.reference);
      return plan.rigs.flatMap((id) => {
        const other = id === set.reference ? null : assemble(gear, id);
        return reference && other ? [setLedger(set, { reference, other }, frames)] : [];
      });
    });
}
