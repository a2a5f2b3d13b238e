import type { CostWeights } from './costWeights.ts';
import { leastFall, lightFrom, stepBefore } from './lightTable.ts';
import { isPair, pairDifference } from './orderCost.ts';
import type { OrderProblem, OrderSet } from './orderProblem.ts';
import type { RunState } from './orderRun.ts';
import type { OrderRig, TurnKind, TurnPart } from './orderTurn.ts';

/*
 * What an order that has got so far costs at least, however it goes on. Never more than the cheapest
 * way to go on: that is what makes the search exact.
 */

/** A pair with one turn of each, whose frames cannot come nearer than a gap. */
interface SinglePair {
  readonly gapFall: Float64Array;
}

/** What the bound needs to know beforehand. */
export interface BoundTables {
  /** By set and rig; null where the pair has no such bound. */
  readonly single: readonly (SinglePair | null)[];
  /** By set and rig: the kind of its turns; -1 = none. */
  readonly kindOf: Int32Array;
  /** By kind: from the turn's begin to the first mid-exposure that counts, without a swap. */
  readonly headS: Float64Array;
  /** By kind: from the last mid-exposure that counts to the turn's end. */
  readonly tailS: Float64Array;
  /** By kind: the part of its set's frames that one turn holds. */
  readonly share: Float64Array;
  /** Kinds by their least time, by when their set closes, and by when it opens, the latest first. */
  readonly byLeast: readonly TurnKind[];
  readonly byClose: readonly TurnKind[];
  readonly byOpen: readonly TurnKind[];
  /** Whether any set has a window. */
  readonly windows: boolean;
}

/** The instants of a turn's mid-exposures from its begin, with no dial, rest or swap. */
function midsOf(
  { parts }: TurnKind,
  rig: number,
  { settleS, writeS }: OrderProblem['allowances'],
  rigs: readonly OrderRig[],
): readonly number[] {
  const mids: number[] = [];
  let now = 0;
  const longest = Math.max(...parts.map(({ frames }) => frames.length));
  for (let place = 0; place < longest; place += 1) {
    const tap = now + settleS;
    now = tap;
    for (const part of parts) {
      const frame = part.frames[place];
      if (!frame) continue;
      const { timerS } = rigs[part.rig] as OrderRig;
      const end = tap + timerS + frame.t;
      if (part.rig === rig && !frame.capped) mids.push(end - frame.t / 2);
      now = Math.max(now, end + frame.darkS + writeS);
    }
  }
  return mids;
}

/** Works out beforehand what the bound asks for again and again. */
export function boundTables(problem: OrderProblem): BoundTables {
  const { rigs, sets, kinds, allowances, light, mounting } = problem;
  const kindOf = new Int32Array(sets.length * rigs.length).fill(-1);
  for (const { index, set, parts } of kinds) {
    for (const { rig } of parts) kindOf[set * rigs.length + rig] = index;
  }
  const mids = (kind: TurnKind, rig: number) => midsOf(kind, rig, allowances, rigs);
  const headS = Float64Array.from(kinds, (kind) =>
    Math.min(...kind.parts.flatMap(({ rig }) => mids(kind, rig))),
  );
  const single = sets.flatMap((set, index) =>
    rigs.map((_, other): SinglePair | null => {
      if (mounting === 'side-by-side' || !isPair(set, other)) return null;
      const one = kinds[kindOf[index * rigs.length + set.reference] as number];
      const two = kinds[kindOf[index * rigs.length + other] as number];
      if (one?.count !== 1 || two?.count !== 1) return null;
      const [midsOne, midsTwo] = [mids(one, set.reference), mids(two, other)];
      if (midsOne.length !== midsTwo.length) return null;
      // Frame by frame, whichever turn comes first; more rest only widens it.
      const gap = (first: TurnKind, early: readonly number[], late: readonly number[]) =>
        Math.min(
          ...early.map(
            (mid, place) =>
              first.leastS - mid + (allowances.swapS + allowances.reframeS) + (late[place] ?? 0),
          ),
        );
      const least = Math.min(gap(one, midsOne, midsTwo), gap(two, midsTwo, midsOne));
      return { gapFall: leastFall(light, least) };
    }),
  );
  const tailS = Float64Array.from(
    kinds,
    (kind) => kind.leastS - Math.max(...kind.parts.flatMap(({ rig }) => mids(kind, rig))),
  );
  const share = Float64Array.from(kinds, ({ set, parts, count }) => {
    const frames = (sets[set] as OrderSet).frames;
    const own = parts.reduce((sum, { rig }) => sum + (frames[rig] as number), 0);
    return own / count / frames.reduce((sum, each) => sum + each, 0);
  });
  const closes = ({ set }: TurnKind): number => (sets[set] as OrderSet).toS;
  const opens = ({ set }: TurnKind): number => (sets[set] as OrderSet).fromS;
  return {
    single,
    kindOf,
    headS,
    tailS,
    share,
    byLeast: kinds.toSorted((a, b) => a.leastS - b.leastS),
    byClose: kinds.toSorted((a, b) => (closes(a) < closes(b) ? -1 : 1)),
    byOpen: kinds.toSorted((a, b) => (opens(a) > opens(b) ? -1 : 1)),
    windows: sets.some(({ fromS, toS }) => Number.isFinite(fromS) || Number.isFinite(toS)),
  };
}

/**
 * The least minutes outside of their windows of the turns to come, weighed by their share.
 *
 * Late: the turn that comes j-th cannot come before j - 1 of the shortest are done, and as many as
 * are to come are late by least if the first to close comes first. Early: the same from the latest
 * end back.
 */
function minutesOutsideToCome(
  { sets, kinds }: OrderProblem,
  tables: BoundTables,
  state: RunState,
  latest: number,
): number {
  let share = 1;
  let headS = Number.POSITIVE_INFINITY;
  let tailS = Number.POSITIVE_INFINITY;
  for (const { index, count } of kinds) {
    if ((state.done[index] as number) >= count) continue;
    share = Math.min(share, tables.share[index] as number);
    headS = Math.min(headS, tables.headS[index] as number);
    tailS = Math.min(tailS, tables.tailS[index] as number);
  }
  const overrun = (
    inOrder: readonly TurnKind[],
    over: (set: OrderSet, workS: number) => number,
  ): number => {
    let sum = 0;
    let work = 0;
    let shortest = 0;
    let shortestLeft = 0;
    for (const { index, set, count } of inOrder) {
      const left = count - (state.done[index] as number);
      for (let turn = 0; turn < left; turn += 1) {
        sum += Math.max(0, over(sets[set] as OrderSet, work));
        while (shortestLeft === 0 && shortest < tables.byLeast.length) {
          const next = tables.byLeast[shortest] as TurnKind;
          shortestLeft = next.count - (state.done[next.index] as number);
          shortest += 1;
        }
        work += (tables.byLeast[shortest - 1] as TurnKind).leastS;
        shortestLeft -= 1;
      }
    }
    return (sum * share) / 60;
  };
  const late = overrun(tables.byClose, ({ toS }, workS) => state.now + workS + headS - toS);
  const early = overrun(tables.byOpen, ({ fromS }, workS) => fromS - (latest - workS - tailS));
  return late + early;
}

/** No order that goes on from here ends later. */
function latestEndFrom({ kinds, sets }: OrderProblem, state: RunState): number {
  let opens = state.now;
  let work = 0;
  for (const { index, set, count, mostS } of kinds) {
    const left = count - (state.done[index] as number);
    if (left === 0) continue;
    work += left * mostS;
    opens = Math.max(opens, (sets[set] as OrderSet).notBeforeS);
  }
  return opens + work;
}

/** How many swaps must come. */
function swapsToCome(problem: OrderProblem, state: RunState): number {
  if (problem.mounting === 'side-by-side') return 0;
  let rigsLeft = 0;
  let seen = 0;
  for (const { index, count, parts } of problem.kinds) {
    const bit = 1 << (parts[0] as TurnPart).rig;
    if ((state.done[index] as number) >= count || (seen & bit) !== 0) continue;
    seen |= bit;
    rigsLeft += 1;
  }
  const stays = state.mounted < 0 || (seen & (1 << state.mounted)) !== 0;
  return rigsLeft === 0 ? 0 : stays ? rigsLeft - 1 : rigsLeft;
}

/**
 * The least cost of any order that begins as this state has, in stops.
 *
 * - Swaps: each rig that still has turns and is not on the tripod comes onto it once.
 * - Time: what is left takes its least time, and those swaps.
 * - Windows: no frame comes sooner than its turn could begin now, nor later than all could end, and
 *   only one turn comes at a time.
 * - Fade of a pair: its frames to come lie between the lowest and the highest light from now on; with
 *   one turn of each to come, they are a gap apart in time, and the light falls over it by some least.
 * - Heat of a pair: as it is once both have all their frames; nothing before.
 */
export function leastCost(
  problem: OrderProblem,
  tables: BoundTables,
  weights: CostWeights,
  state: RunState,
): number {
  const { rigs, sets, kinds, light, allowances, mounting } = problem;
  const rigCount = rigs.length;
  const swaps = swapsToCome(problem, state);
  let work = 0;
  for (const { index, count, leastS } of kinds) {
    work += (count - (state.done[index] as number)) * leastS;
  }
  const wall = state.now + work + swaps * (allowances.swapS + allowances.reframeS);
  let cost = weights.perSwap * (state.swaps + swaps) + (weights.wallPerMinute * wall) / 60;

  const soonestOf = (kind: TurnKind): number => {
    const swap =
      mounting !== 'side-by-side' &&
      state.mounted >= 0 &&
      (kind.parts[0] as TurnPart).rig !== state.mounted
        ? allowances.swapS + allowances.reframeS
        : 0;
    return state.now + swap + (tables.headS[kind.index] as number);
  };

  let outside = 0;
  let toCome = 0;
  for (const [index, set] of sets.entries()) {
    let all = 0;
    for (let rig = 0; rig < rigCount; rig += 1) all += set.frames[rig] as number;
    if (all > 0) outside += (state.outside[index] as number) / all;
  }
  if (tables.windows) {
    const latest = latestEndFrom(problem, state);
    for (const kind of kinds) {
      const { fromS, toS } = sets[kind.set] as OrderSet;
      const left = kind.count - (state.done[kind.index] as number);
      if (left === 0) continue;
      const late = soonestOf(kind) - toS;
      const early = fromS - (latest - (tables.tailS[kind.index] as number));
      toCome += left * (tables.share[kind.index] as number) * (Math.max(0, late, early) / 60);
    }
    toCome = Math.max(toCome, minutesOutsideToCome(problem, tables, state, latest));
  }
  cost += weights.outsidePerMinute * (outside + toCome);

  for (const [index, set] of sets.entries()) {
    for (let other = 0; other < rigCount; other += 1) {
      if (!isPair(set, other)) continue;
      const one = kinds[tables.kindOf[index * rigCount + set.reference] as number] as TurnKind;
      const two = kinds[tables.kindOf[index * rigCount + other] as number] as TurnKind;
      const leftOf = (kind: TurnKind, rig: number): number =>
        ((set.frames[rig] as number) * (kind.count - (state.done[kind.index] as number))) /
        kind.count;
      const [leftOne, leftTwo] = [leftOf(one, set.reference), leftOf(two, other)];
      const soFar = pairDifference(state.lightSum, rigCount, index, set, other);
      const fadePerStop = set.fades ? weights.fadePerStop : 0;
      if (leftOne === 0 && leftTwo === 0) {
        cost += fadePerStop * Math.abs(soFar);
        const heat = pairDifference(state.heatSum, rigCount, index, set, other);
        cost += weights.heatPerStop * Math.abs(heat);
        continue;
      }
      const single = tables.single[index * rigCount + other];
      if (single && leftOne > 0 && leftTwo > 0) {
        cost += fadePerStop * (single.gapFall[stepBefore(light, state.now)] as number);
        continue;
      }
      const shareOne = leftOne / (set.frames[set.reference] as number);
      const shareTwo = leftTwo / (set.frames[other] as number);
      const fromOne = lightFrom(light, leftOne > 0 ? soonestOf(one) : state.now);
      const fromTwo = lightFrom(light, leftTwo > 0 ? soonestOf(two) : state.now);
      const lowest = soFar + shareTwo * fromTwo.lowest - shareOne * fromOne.highest;
      const highest = soFar + shareTwo * fromTwo.highest - shareOne * fromOne.lowest;
      cost += fadePerStop * Math.max(0, lowest, -highest);
    }
  }
  return cost;
}
