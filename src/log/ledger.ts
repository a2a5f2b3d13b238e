import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import type { FramesOfPair } from '../light/fade.ts';
import type { Exposure } from '../light/forecast.ts';
import type { Scene } from '../light/scene.ts';
import { type CauseDifferences, causesBetween, type Levels, levelsOf } from '../plan/causes.ts';
import { type Differences, differencesFrom, type Pair } from '../plan/differences.ts';
import { fadeCause } from '../plan/fade.ts';
import type { Dialled } from '../plan/frame.ts';
import type { SetId } from '../plan/ids.ts';
import { meanCauses, meanLevels } from '../plan/means.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';
import type { UtcMs } from '../science/units.ts';
import type { LogFrame } from './frames.ts';

/** A frame that was really made and counts, with what was really set and the time really open. */
export interface CountedFrame extends Dialled {
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
  /** When the shutter opened, by the wall clock. */
  readonly openedMs: UtcMs;
}

/** The frames that the ledger is made of. */
export const countedFrames = (frames: readonly LogFrame[]): readonly CountedFrame[] =>
  frames.flatMap(({ counts, planned: { set, pass }, rig, settings, exact, opened }) =>
    counts && settings && exact
      ? [{ set, rig, pass, settings, exact, openedMs: opened.wallMs as UtcMs }]
      : [],
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

/** One rig's frames in one pass: their mean level, and when each was exposed. */
interface Turn {
  readonly level: Levels;
  readonly exposures: readonly Exposure[];
}

/** The turns of one rig by pass. */
function turnsOf(frames: readonly CountedFrame[], assembled: Assembled): ReadonlyMap<number, Turn> {
  const found = new Map<number, { levels: [Levels, ...Levels[]]; exposures: Exposure[] }>();
  for (const { rig, pass, settings, exact, openedMs } of frames) {
    if (rig !== assembled.rig.id) continue;
    const level = levelsOf({ assembled, settings, exact });
    const exposure: Exposure = { startMs: openedMs, t: exact.t };
    const turn = found.get(pass);
    if (turn) {
      turn.levels.push(level);
      turn.exposures.push(exposure);
    } else found.set(pass, { levels: [level], exposures: [exposure] });
  }
  return new Map(
    [...found].map(([pass, { levels, exposures }]) => [
      pass,
      { level: meanLevels(levels), exposures },
    ]),
  );
}

/**
 * A pair over all passes of a set, from that set's frames. In each pass the mean over the repeats of
 * the other rig stands against that of the reference. Passes that lack one side are named and left
 * out: a mean over unlike passes would let the fade in that the order was to cancel. Each pass has
 * its own fade, and so has their mean.
 */
function setLedger(
  set: PlanSet,
  pair: Pair,
  frames: readonly CountedFrame[],
  scene: Scene | null,
): SetLedger {
  const reference = turnsOf(frames, pair.reference);
  const other = turnsOf(frames, pair.other);
  const complete: { pass: number; causes: CauseDifferences; exposures: FramesOfPair }[] = [];
  const unpaired: number[] = [];
  for (const pass of [...new Set([...reference.keys(), ...other.keys()])].sort((a, b) => a - b)) {
    const [one, two] = [reference.get(pass), other.get(pass)];
    if (!one || !two) {
      unpaired.push(pass);
      continue;
    }
    const exposures = { reference: one.exposures, other: two.exposures };
    const fade = fadeCause(scene, set.kind, [exposures]);
    complete.push({ pass, causes: causesBetween(one.level, two.level, fade), exposures });
  }
  const fade = fadeCause(
    scene,
    set.kind,
    complete.map(({ exposures }) => exposures),
  );
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
    mean: first ? differencesFrom(meanCauses([first, ...more], fade), pair, set.hold) : null,
  };
}

/**
 * The ledgers of an outing: each other rig against the reference of each set that is no capped
 * dark, in the order of the plan. A pair that lacks a rig in the gear has none.
 *
 * @param scene how the light went; null where nobody knows, and then the fade stays unknown.
 */
export function ledgersOf(
  plan: Plan,
  gear: Gear,
  frames: readonly CountedFrame[],
  scene: Scene | null,
): readonly SetLedger[] {
  const bySet = new Map<SetId, CountedFrame[]>();
  for (const frame of frames) {
    const others = bySet.get(frame.set);
    if (others) others.push(frame);
    else bySet.set(frame.set, [frame]);
  }
  return plan.sets
    .filter(({ kind }) => kind !== 'capped-dark' && kind !== 'capped-series')
    .flatMap((set) => {
      const reference = assemble(gear, set.reference);
      return plan.rigs.flatMap((id) => {
        const other = id === set.reference ? null : assemble(gear, id);
        return reference && other
          ? [setLedger(set, { reference, other }, bySet.get(set.id) ?? [], scene)]
          : [];
      });
    });
}
