import type { RigId } from '../gear/ids.ts';
import { isRefusal, type Refusal } from '../science/refusal.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import { duration, type Seconds, type Stops } from '../science/units.ts';
import type { CostWeights } from './costWeights.ts';
import type { PlannedFrame } from './frame.ts';
import type { FrameKey, SetId } from './ids.ts';
import { lightAt } from './lightTable.ts';
import { orderFrames } from './order.ts';
import {
  type OrderProblem,
  type OrderRequest,
  type OrderSet,
  orderProblem,
} from './orderProblem.ts';
import { type RunState, runOrder, startState } from './orderRun.ts';
import type { TurnKind } from './orderTurn.ts';
import { ORDERS, type OrderName } from './plan.ts';
import type { FrameTimes, Span, Timeline } from './timeline.ts';

/*
 * What an order costs, in stops: each thing is given the worth of so many stops of light by which a
 * pair is unfair. The worths are our choice and are shown; they decide what 'fairest' means.
 *
 *   cost = fade  x sum over pairs of |fade left|                 stops of light
 *        + heat  x sum over pairs of |heat left|                 stops of dark current
 *        + late  x sum over sets of minutes outside              mean over the set's frames
 *        + swap  x swaps
 *        + wall  x minutes from the first act to the last file
 */

/** The cost of an order in stops of light, and its parts, already weighed. */
export interface CostParts {
  readonly total: number;
  readonly fade: number;
  readonly heat: number;
  readonly outside: number;
  readonly swaps: number;
  readonly wall: number;
}

/** The mean of the other's frames minus the mean of the reference's, from the sums of a run. */
export function pairDifference(
  sums: Float64Array,
  rigCount: number,
  index: number,
  { frames, reference }: OrderSet,
  other: number,
): number {
  const mean = (rig: number): number =>
    (sums[index * rigCount + rig] as number) / (frames[rig] as number);
  return mean(other) - mean(reference);
}

/** Whether a rig is compared with the reference in a set. */
export const isPair = ({ frames, reference }: OrderSet, other: number): boolean =>
  other !== reference && (frames[reference] ?? 0) > 0 && (frames[other] as number) > 0;

/** What a course that has come to its end costs. */
export function costOfRun(
  { sets, rigs }: OrderProblem,
  state: RunState,
  weights: CostWeights,
): CostParts {
  let fade = 0;
  let heat = 0;
  let outside = 0;
  for (const [index, set] of sets.entries()) {
    const frames = set.frames.reduce((sum, count) => sum + count, 0);
    if (frames > 0) outside += (state.outside[index] as number) / frames;
    for (let other = 0; other < rigs.length; other += 1) {
      if (!isPair(set, other)) continue;
      if (set.fades) {
        fade += Math.abs(pairDifference(state.lightSum, rigs.length, index, set, other));
      }
      heat += Math.abs(pairDifference(state.heatSum, rigs.length, index, set, other));
    }
  }
  const parts = {
    fade: weights.fadePerStop * fade,
    heat: weights.heatPerStop * heat,
    outside: weights.outsidePerMinute * outside,
    swaps: weights.perSwap * state.swaps,
    wall: (weights.wallPerMinute * state.now) / 60,
  };
  return {
    ...parts,
    total: parts.fade + parts.heat + parts.outside + parts.swaps + parts.wall,
  };
}

/** The fade that does not cancel in a pair: + where the other got more light. */
export interface FadeLeft {
  readonly whole: Stops;
  /** Of it, what a straight line through the light at the pair's frames leaves. */
  readonly linear: Stops;
  /** The rest: what the curve of the fade leaves. */
  readonly curved: Stops;
}

/** What an order leaves of one pair. */
export interface PairLeft {
  readonly set: SetId;
  readonly reference: RigId;
  readonly other: RigId;
  /** Null where the light is not known, or is not that of the sky. */
  readonly fade: FadeLeft | null;
  /** In stops of dark current: + where the other was warmer. */
  readonly heat: Doublings;
}

/** An order with all that is to be said of it. */
export interface CostedOrder {
  /** The frames in order, visits and passes numbered as they come. */
  readonly frames: readonly PlannedFrame[];
  readonly timeline: Timeline;
  readonly cost: CostParts;
  readonly swaps: number;
  readonly wallS: Seconds;
  readonly pairs: readonly PairLeft[];
  /** Minutes outside of its window, mean over the frames of each set that has any. */
  readonly outside: readonly { readonly set: SetId; readonly minutes: number }[];
}

/** The slope of the least-squares line through some points. */
function slope(points: readonly { readonly at: number; readonly light: number }[]): number {
  const mean = (of: (point: (typeof points)[number]) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length;
  const [at, light] = [mean((point) => point.at), mean((point) => point.light)];
  const square = points.reduce((sum, point) => sum + (point.at - at) ** 2, 0);
  const product = points.reduce((sum, point) => sum + (point.at - at) * (point.light - light), 0);
  return square > 0 ? product / square : 0;
}

/** Where each kind's turns stand: the pass of a turn is how many of its kind came before. */
function framesInOrder(
  { kinds, mounting }: OrderProblem,
  order: readonly number[],
): readonly PlannedFrame[] {
  const done = new Map<number, number>();
  let visit = 0;
  let mounted: RigId | null = null;
  return order.flatMap((index) => {
    const kind = kinds[index] as TurnKind;
    const pass = done.get(index) ?? 0;
    done.set(index, pass + 1);
    const frames = kind.passes[pass] as readonly PlannedFrame[];
    const rig = mounting === 'side-by-side' ? null : (frames[0]?.rig ?? null);
    if (visit === 0 || (rig !== null && rig !== mounted)) visit += 1;
    mounted = rig;
    return frames.map((frame) => ({ ...frame, visit }));
  });
}

/** Works an order out: frames, course, cost and what it leaves of each pair. */
export function costedOrder(
  problem: OrderProblem,
  order: readonly number[],
  weights: CostWeights,
): CostedOrder {
  const { rigs, sets, light, lightIsKnown, head } = problem;
  const frames = framesInOrder(problem, order);
  const times: FrameTimes[] = [];
  const swaps: Span[] = [];
  const rests: Span[] = [];
  const span = (rig: number, fromS: number, toS: number): Span => ({
    rig: (rigs[rig] as (typeof rigs)[number]).id,
    fromS: duration(fromS),
    toS: duration(toS),
  });
  const state = startState(problem);
  runOrder(problem, order, state, {
    swap: (rig, fromS, toS) => swaps.push(span(rig, fromS, toS)),
    rest: (rig, fromS, toS) => rests.push(span(rig, fromS, toS)),
    frame: (_, startS, endS, freeS) => {
      const { key, rig } = frames[times.length] as PlannedFrame;
      times.push({
        key,
        rig,
        startS: duration(startS),
        midS: duration((startS + endS) / 2),
        endS: duration(endS),
        freeS: duration(freeS),
      });
    },
  });
  const pairs = sets.flatMap((set, index) =>
    rigs.flatMap(({ id }, other): readonly PairLeft[] => {
      if (!isPair(set, other)) return [];
      const reference = (rigs[set.reference] as (typeof rigs)[number]).id;
      const mids = (rig: RigId): readonly number[] =>
        times.flatMap(({ midS }, place) => {
          const frame = frames[place] as PlannedFrame;
          return frame.set === set.id && frame.rig === rig ? [midS] : [];
        });
      const [own, its] = [mids(reference), mids(id)];
      const mean = (of: readonly number[]) => of.reduce((sum, at) => sum + at, 0) / of.length;
      const points = [...own, ...its].map((at) => ({ at, light: lightAt(light, at) }));
      const fade = pairDifference(state.lightSum, rigs.length, index, set, other);
      const linear = slope(points) * (mean(its) - mean(own));
      return [
        {
          set: set.id,
          reference,
          other: id,
          fade:
            lightIsKnown && set.fades
              ? {
                  whole: fade as Stops,
                  linear: linear as Stops,
                  curved: (fade - linear) as Stops,
                }
              : null,
          heat: pairDifference(state.heatSum, rigs.length, index, set, other) as Doublings,
        },
      ];
    }),
  );
  return {
    frames: [...head.frames, ...frames],
    timeline: {
      frames: [...head.timeline.frames, ...times],
      swaps,
      rests: [...head.timeline.rests, ...rests],
      wallS: duration(state.now),
    },
    cost: costOfRun(problem, state, weights),
    swaps: state.swaps,
    wallS: duration(state.now),
    pairs,
    outside: sets.flatMap(({ id, frames: counts }, index) => {
      const minutes =
        (state.outside[index] as number) / counts.reduce((sum, each) => sum + each, 0);
      return minutes > 0 ? [{ set: id, minutes }] : [];
    }),
  };
}

/** One of the named orders. */
export interface NamedOrder extends CostedOrder {
  readonly name: OrderName;
}

/** The frames of a request in one of the named orders. */
function inNamedOrder({ plan, frames }: OrderRequest, name: OrderName): readonly PlannedFrame[] {
  const dialled = new Map(
    frames.map(({ set, rig, settings, exact }) => [`${set}/${rig}`, { settings, exact }]),
  );
  const named = { ...plan, order: name, oneRigAtATime: false, arranged: null };
  return orderFrames(named, (set, rig) => dialled.get(`${set}/${rig}`) ?? null);
}

/**
 * What each of the named orders makes of the frames of a request, with the passes that its sets have;
 * its own order, mounting and locks play no part. With one pass 'forward' and 'mirror' are one.
 */
export function namedOrders(
  request: OrderRequest,
  weights: CostWeights,
): readonly NamedOrder[] | Refusal {
  const named: NamedOrder[] = [];
  for (const name of ORDERS) {
    const problem = orderProblem({
      ...request,
      frames: inNamedOrder(request, name),
      mounting: name === 'side-by-side' ? 'side-by-side' : 'swaps',
      locked: new Set(),
    });
    if (isRefusal(problem)) return problem;
    named.push({ name, ...costedOrder(problem, problem.standing, weights) });
  }
  return named;
}

/** The named orders of a request as turns of its problem, for a search to start from. */
export function namedStarts(
  request: OrderRequest,
  { kinds }: OrderProblem,
): readonly (readonly number[])[] {
  const turnOf = new Map(
    kinds.flatMap(({ index, passes }) =>
      passes.flatMap((frames, pass) =>
        frames.map(({ key }): [FrameKey, string] => [key, `${index}/${pass}`]),
      ),
    ),
  );
  return ORDERS.map((name) => {
    const turns = inNamedOrder(request, name).flatMap(({ key }) => turnOf.get(key) ?? []);
    return [...new Set(turns)].map((turn) => Number.parseInt(turn, 10));
  });
}
