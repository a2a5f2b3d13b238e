import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import { type CauseDifferences, causesBetween, type Levels, levelsOf } from '../plan/causes.ts';
import { type Differences, differencesFrom, type Pair } from '../plan/differences.ts';
import type { Dialled } from '../plan/frame.ts';
import type { SetId } from '../plan/ids.ts';
import { meanCauses, meanLevels } from '../plan/means.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';
import type { LogFrame } from './frames.ts';

/** A frame that was really made and counts, with what was really set and the time really open. */
export interface CountedFrame extends Dialled {
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
}

/** The frames that the ledger is made of. */
export const countedFrames = (frames: readonly LogFrame[]): readonly CountedFrame[] =>
  frames.flatMap(({ counts, planned: { set, pass }, rig, settings, exact }) =>
    counts && settings && exact ? [{ set, rig, pass, settings, exact }] : [],
  );

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

/** The mean level of one rig's frames in each pass. */
function levelsByPass(
  frames: readonly CountedFrame[],
  assembled: Assembled,
): ReadonlyMap<number, Levels> {
  const found = new Map<number, [Levels, ...Levels[]]>();
  for (const { rig, pass, settings, exact } of frames) {
    if (rig !== assembled.rig.id) continue;
    const level = levelsOf({ assembled, settings, exact });
    const others = found.get(pass);
    if (others) others.push(level);
    else found.set(pass, [level]);
  }
  return new Map([...found].map(([pass, levels]) => [pass, meanLevels(levels)]));
}

/**
 * A pair over all passes of a set, from that set's frames. In each pass the mean over the repeats of
 * the other rig stands against that of the reference. Passes that lack one side are named and left
 * out: a mean over unlike passes would let the fade in that the order was to cancel.
 */
function setLedger(set: PlanSet, pair: Pair, frames: readonly CountedFrame[]): SetLedger {
  const reference = levelsByPass(frames, pair.reference);
  const other = levelsByPass(frames, pair.other);
  const complete: { pass: number; causes: CauseDifferences }[] = [];
  const unpaired: number[] = [];
  for (const pass of [...new Set([...reference.keys(), ...other.keys()])].sort((a, b) => a - b)) {
    const [one, two] = [reference.get(pass), other.get(pass)];
    if (one && two) complete.push({ pass, causes: causesBetween(one, two) });
    else unpaired.push(pass);
  }
  const [first, ...more] = complete.map(({ causes }) => causes);
  return {
    set: set.id,
    reference: pair.reference.rig.id,
    other: pair.other.rig.id,
    passes: complete.map(({ pass, causes }) => ({
      pass,
      differences: differencesFrom(causes, pair, set.hold),
    })),
    unpaired,
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
  const bySet = new Map<SetId, CountedFrame[]>();
  for (const frame of frames) {
    const others = bySet.get(frame.set);
    if (others) others.push(frame);
    else bySet.set(frame.set, [frame]);
  }
  return plan.sets
    .filter((set) => set.kind !== 'capped-dark')
    .flatMap((set) => {
      const reference = assemble(gear, set.reference);
      return plan.rigs.flatMap((id) => {
        const other = id === set.reference ? null : assemble(gear, id);
        return reference && other
          ? [setLedger(set, { reference, other }, bySet.get(set.id) ?? [])]
          : [];
      });
    });
}
