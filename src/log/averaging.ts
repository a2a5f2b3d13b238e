import { fadeAt } from '../light/fade.ts';
import type { Scene } from '../light/scene.ts';
import type { FrameKey } from '../plan/ids.ts';
import type { SetKind } from '../plan/plan.ts';
import { driftFreeWeights, noisePrice, type PairSide } from '../science/drift.ts';
import { isRefusal } from '../science/refusal.ts';
import {
  duration,
  type Ratio,
  type Stops,
  type StopsPerMinute,
  stops,
  type UtcMs,
} from '../science/units.ts';

/*
 * With which weights the frames of a pair enter its figure. A plain mean over passes is right where
 * the frames were really made so that a steady fade cancels in it: a mirror order does that by its
 * times, not by its letters. A retake or a long swap shifts them. Least squares then finds weights
 * that leave nothing of a steady fade, for a little noise. Values stay in stops throughout: an order
 * that cancels the fade in stops would leave a rest of it in light.
 */

/** A frame of a pair in a complete pass. */
export interface PairedFrame {
  readonly key: FrameKey;
  readonly isReference: boolean;
  readonly pass: number;
  readonly midMs: UtcMs;
}

/** How a pair's figure is taken over its frames. */
export type Averaging =
  | { readonly kind: 'plain' }
  /** `leaves`: what a plain mean would leave of a steady fade. */
  | { readonly kind: 'weighted'; readonly price: Ratio; readonly leaves: Stops }
  /** The times do not tell a steady fade from the rigs, or only for so much noise; null = not at all. */
  | { readonly kind: 'not-separable'; readonly price: Ratio | null; readonly leaves: Stops };

/** An averaging with what each frame takes in it: on the other rig's in all 1, on the reference's -1. */
export interface Averaged {
  readonly averaging: Averaging;
  readonly weights: ReadonlyMap<FrameKey, number>;
}

/** A plain mean may leave so much of a steady fade: less than the ledger's figures tell (our choice). */
export const PLAIN_LEAVES_AT_MOST: Stops = stops(0.02);

/** From here on what the weights cancel is paid for too dearly in noise (our choice). */
export const PRICE_AT_MOST = 2;

/** Where nobody knows the sky: the dusk that the handbook of heat and noise reckons with. */
const USUAL_FADE = -0.12 as StopsPerMinute;

/**
 * The weights of a pair's frames: plain, or free of a steady fade where their real times let a plain
 * mean leave more of it than `PLAIN_LEAVES_AT_MOST`.
 *
 * @param frames of complete passes, both sides of each.
 * @param scene null where nobody knows how the light went; a fade usual at dusk then decides whether
 * weights are worth it. They cancel a steady fade also where it is not known.
 */
export function averagingOf(
  frames: readonly PairedFrame[],
  kind: SetKind,
  scene: Scene | null,
): Averaged {
  const plain = plainWeights(frames);
  if (kind !== 'light' || frames.length === 0)
    return { averaging: { kind: 'plain' }, weights: plain };
  const first = Math.min(...frames.map(({ midMs }) => midMs));
  const last = Math.max(...frames.map(({ midMs }) => midMs));
  const apartMin = frames.reduce(
    (sum, { key, midMs }) => sum + ((plain.get(key) ?? 0) * (midMs - first)) / 60_000,
    0,
  );
  const middle = ((first + last) / 2) as UtcMs;
  const fade = (scene && fadeAt(scene, middle)) ?? USUAL_FADE;
  const leaves = stops(fade * apartMin);
  if (Math.abs(leaves) <= PLAIN_LEAVES_AT_MOST) {
    return { averaging: { kind: 'plain' }, weights: plain };
  }
  const sides = frames.map(({ isReference }): PairSide => (isReference ? 'B' : 'A'));
  const found = driftFreeWeights(
    sides,
    frames.map(({ midMs }) => duration((midMs - first) / 1000)),
    1,
  );
  if (isRefusal(found)) {
    return { averaging: { kind: 'not-separable', price: null, leaves }, weights: plain };
  }
  const price = noisePrice(sides, found);
  if (price > PRICE_AT_MOST) {
    return { averaging: { kind: 'not-separable', price, leaves }, weights: plain };
  }
  return {
    averaging: { kind: 'weighted', price, leaves },
    weights: new Map(frames.map(({ key }, place) => [key, found[place] ?? 0])),
  };
}

/** Means over the repeats of each side in a pass, and their mean over the passes. */
function plainWeights(frames: readonly PairedFrame[]): ReadonlyMap<FrameKey, number> {
  const passes = new Set(frames.map(({ pass }) => pass)).size;
  const turns = new Map<string, number>();
  const turn = ({ pass, isReference }: PairedFrame): string => `${pass} ${isReference}`;
  for (const frame of frames) turns.set(turn(frame), (turns.get(turn(frame)) ?? 0) + 1);
  return new Map(
    frames.map((frame) => [
      frame.key,
      (frame.isReference ? -1 : 1) / ((turns.get(turn(frame)) ?? 1) * passes),
    ]),
  );
}
