import type { RigId } from '../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../gear/rig.ts';
import type { FramesOfPair } from '../light/fade.ts';
import type { Exposure } from '../light/forecast.ts';
import type { Scene } from '../light/scene.ts';
import { type CauseDifferences, causesBetween, type Levels, levelsOf } from '../plan/causes.ts';
import { type Differences, differencesFrom, type Pair } from '../plan/differences.ts';
import { fadeCause, fadeCauseWeighted } from '../plan/fade.ts';
import type { Dialled } from '../plan/frame.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import { meanCauses, meanLevels, weightedLevels } from '../plan/means.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';
import { later, type UtcMs } from '../science/units.ts';
import { type Averaged, type Averaging, averagingOf, type PairedFrame } from './averaging.ts';
import type { LogFrame } from './frames.ts';

/** A frame that was really made and counts, with what was really set and the time really open. */
export interface CountedFrame extends Dialled {
  /** Of all tries of a planned frame one counts. */
  readonly key: FrameKey;
  readonly set: SetId;
  readonly rig: RigId;
  readonly pass: number;
  /** When the shutter opened, by the wall clock. */
  readonly openedMs: UtcMs;
}

/** The frames that the ledger is made of. */
export const countedFrames = (frames: readonly LogFrame[]): readonly CountedFrame[] =>
  frames.flatMap(({ counts, planned: { key, set, pass }, rig, settings, exact, opened }) =>
    counts && settings && exact
      ? [{ key, set, rig, pass, settings, exact, openedMs: opened.wallMs as UtcMs }]
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
  /** How that mean is taken. */
  readonly averaging: Averaging;
  /** What each frame of a complete pass takes in it. */
  readonly weights: Averaged['weights'];
}

/** A frame with its level. */
interface Levelled extends Exposure {
  readonly key: FrameKey;
  readonly level: Levels;
}

/** The frames of one rig by pass. */
function turnsOf(
  frames: readonly CountedFrame[],
  assembled: Assembled,
): ReadonlyMap<number, readonly [Levelled, ...Levelled[]]> {
  const turns = new Map<number, [Levelled, ...Levelled[]]>();
  for (const { key, rig, pass, settings, exact, openedMs } of frames) {
    if (rig !== assembled.rig.id) continue;
    const level = levelsOf({ assembled, settings, exact });
    const frame: Levelled = { key, level, startMs: openedMs, t: exact.t };
    const turn = turns.get(pass);
    if (turn) turn.push(frame);
    else turns.set(pass, [frame]);
  }
  return turns;
}

const meanOfTurn = ([first, ...more]: readonly [Levelled, ...Levelled[]]): Levels =>
  meanLevels([first.level, ...more.map(({ level }) => level)]);

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
  const references = turnsOf(frames, pair.reference);
  const others = turnsOf(frames, pair.other);
  const complete: CompletePass[] = [];
  const unpaired: number[] = [];
  for (const pass of [...new Set([...references.keys(), ...others.keys()])].sort((a, b) => a - b)) {
    const [reference, other] = [references.get(pass), others.get(pass)];
    if (!reference || !other) {
      unpaired.push(pass);
      continue;
    }
    const fade = fadeCause(scene, set.kind, [{ reference, other }]);
    const causes = causesBetween(meanOfTurn(reference), meanOfTurn(other), fade);
    complete.push({ pass, causes, reference, other });
  }
  const { averaging, weights } = averagingOf(
    complete.flatMap(({ pass, reference, other }) => [
      ...reference.map((frame) => pairedFrame(frame, pass, true)),
      ...other.map((frame) => pairedFrame(frame, pass, false)),
    ]),
    set.kind,
    scene,
  );
  return {
    set: set.id,
    reference: pair.reference.rig.id,
    other: pair.other.rig.id,
    passes: complete.map(({ pass, causes }) => ({
      pass,
      differences: differencesFrom(causes, pair, set.hold),
    })),
    unpaired,
    mean: meanOver(complete, set, pair, scene, { averaging, weights }),
    averaging,
    weights,
  };
}

interface CompletePass extends FramesOfPair {
  readonly pass: number;
  readonly causes: CauseDifferences;
  readonly reference: readonly Levelled[];
  readonly other: readonly Levelled[];
}

const pairedFrame = (
  { key, startMs, t }: Levelled,
  pass: number,
  isReference: boolean,
): PairedFrame => ({ key, pass, isReference, midMs: later(startMs, t / 2) });

function meanOver(
  complete: readonly CompletePass[],
  set: PlanSet,
  pair: Pair,
  scene: Scene | null,
  { averaging, weights }: Averaged,
): Differences | null {
  const [first, ...more] = complete.map(({ causes }) => causes);
  if (!first) return null;
  if (averaging.kind !== 'weighted') {
    const fade = fadeCause(scene, set.kind, complete);
    return differencesFrom(meanCauses([first, ...more], fade), pair, set.hold);
  }
  const weighted = (frames: readonly Levelled[], sign: 1 | -1) =>
    frames.map((frame) => ({ ...frame, weight: sign * (weights.get(frame.key) ?? 0) }));
  const reference = complete.flatMap((pass) => weighted(pass.reference, -1));
  const other = complete.flatMap((pass) => weighted(pass.other, 1));
  const fade = fadeCauseWeighted(scene, set.kind, [
    ...other,
    ...reference.map((frame) => ({ ...frame, weight: -frame.weight })),
  ]);
  const causes = causesBetween(weightedLevels(reference), weightedLevels(other), fade);
  return differencesFrom(causes, pair, set.hold);
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
