import type { RigId } from '../gear/ids.ts';
import {
  type Heats,
  heatsBetween,
  heatsInside,
  historyOf,
  rangeOf,
  type WhyNoHeat,
} from '../outing/heat.ts';
import type { MadeId } from '../outing/ids.ts';
import type { RunState } from '../outing/state.ts';
import type { FrameKey } from '../plan/ids.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Ranged } from '../science/thermalRange.ts';
import type { LogFrame } from './frames.ts';
import type { SetLedger } from './ledger.ts';

/*
 * Heat in the ledger, in stops of dark current, never to be added to stops of exposure. It says how
 * much more dark current the one rig's frames had for what it went through; how much dark current
 * either has when rested, nobody has measured.
 */

/** How warm a sensor was in the middle of one frame, over its own rested state. */
export type FrameHeat =
  | { readonly known: true; readonly heat: Ranged<Doublings> }
  | { readonly known: false; readonly why: WhyNoHeat };

/** The heat line of one pair; + where the other was warmer. */
export type HeatLine =
  | {
      readonly known: true;
      /** What the two histories make of it, were both bodies in one corner of what is known. */
      readonly byHistory: Ranged<Doublings>;
      /**
       * The same where each body may lie in another: how far apart two bodies may be that nobody
       * has measured. A body that warms more is a result, not an unfairness.
       */
      readonly withBodies: Ranged<Doublings>;
    }
  /** `rig`: the one of which nobody knows. */
  | { readonly known: false; readonly why: WhyNoHeat; readonly rig: RigId };

/** How warm a sensor was in the middle of a frame. */
export function frameHeat(state: RunState, { rig, id }: Pick<LogFrame, 'rig' | 'id'>): FrameHeat {
  const heats = heatsInside(historyOf(state), rig, id);
  return 'why' in heats ? { known: false, why: heats.why } : { known: true, heat: rangeOf(heats) };
}

/** Heats added up with weights that sum to 1. */
function mean(frames: readonly { readonly heats: Heats; readonly weight: number }[]): Heats {
  const over = (of: (heats: Heats) => Doublings | undefined): Doublings =>
    frames.reduce((sum, { heats, weight }) => sum + weight * (of(heats) ?? 0), 0) as Doublings;
  return {
    usual: over(({ usual }) => usual),
    corners: (frames[0]?.heats.corners ?? []).map((_, place) =>
      over(({ corners }) => corners[place]),
    ),
  };
}

/** The frames of an outing that count, by their planned frame. */
export type CountedByKey = ReadonlyMap<FrameKey, MadeId>;

export const countedByKey = (frames: readonly LogFrame[]): CountedByKey =>
  new Map(
    frames.flatMap(({ counts, planned, id }) => (counts ? [[planned.key, id] as const] : [])),
  );

type PairWeights = Pick<SetLedger, 'reference' | 'other' | 'weights'>;

/**
 * The heat line of a pair over a set, its frames weighted as in the set's figure.
 *
 * @returns null if there is no complete pass.
 */
export function heatLine(
  state: RunState,
  { reference, other, weights }: PairWeights,
  counted: CountedByKey,
): HeatLine | null {
  const history = historyOf(state);
  const frames = new Map<RigId, { heats: Heats; weight: number }[]>();
  for (const [key, weight] of weights) {
    const planned = state.planned.get(key);
    const made = counted.get(key);
    if (!planned || made === undefined) continue;
    const { rig } = planned;
    const heats = heatsInside(history, rig, made);
    if ('why' in heats) return { known: false, why: heats.why, rig };
    const own = frames.get(rig) ?? [];
    own.push({ heats, weight: rig === reference ? -weight : weight });
    frames.set(rig, own);
  }
  const [one, two] = [frames.get(reference), frames.get(other)];
  if (!one || !two) return null;
  const [ours, theirs] = [mean(one), mean(two)];
  const [a, b] = [rangeOf(ours), rangeOf(theirs)];
  return {
    known: true,
    byHistory: rangeOf(heatsBetween(ours, theirs)),
    withBodies: {
      usual: (b.usual - a.usual) as Doublings,
      least: (b.least - a.most) as Doublings,
      most: (b.most - a.least) as Doublings,
    },
  };
}

/** The same of one pass alone: the mean over the repeats on either side. */
export function heatOfPass(
  state: RunState,
  ledger: PairWeights,
  counted: CountedByKey,
  pass: number,
): HeatLine | null {
  const keys = [...ledger.weights.keys()].filter((key) => state.planned.get(key)?.pass === pass);
  const isReference = (key: FrameKey) => state.planned.get(key)?.rig === ledger.reference;
  const references = keys.filter(isReference).length;
  const weights = new Map(
    keys.map((key) => [key, isReference(key) ? -1 / references : 1 / (keys.length - references)]),
  );
  return heatLine(state, { ...ledger, weights }, counted);
}
