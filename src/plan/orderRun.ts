import { heatWithLeft, partLeft } from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import { coolingTime } from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Seconds } from '../science/units.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import { fadeNear, lightAt } from './lightTable.ts';
import type { OrderProblem, OrderSet } from './orderProblem.ts';
import type { OrderRig, TurnFrame, TurnKind, TurnPart } from './orderTurn.ts';
import { restOwed } from './rest.ts';
import { restWorth } from './restWorth.ts';

/*
 * The course of an order, turn by turn: the same steps as in timeline.ts (swap, dial, rest, settle,
 * self-timer, exposure, dark frame, write), with heat and light counted on the way. It changes its
 * state in place and can take a turn back, so that a search may try millions of turns.
 */

/** Where the course of an order has got to. Times in s, heat in doublings, light in EV. */
export interface RunState {
  now: number;
  /** The rig on the tripod; -1 before the first turn. */
  mounted: number;
  swaps: number;
  placed: number;
  /** Turns done of each kind. */
  readonly done: Int32Array;
  /** By rig: the heat when it was last free, and when that was. */
  readonly heat: Float64Array;
  readonly freeAt: Float64Array;
  /** By rig: when its sensor stopped working, and how long its last exposure was; below 0 = none yet. */
  readonly idleFrom: Float64Array;
  readonly exposed: Float64Array;
  readonly marks: Int32Array;
  /** By set and rig: sums over the frames that count. */
  readonly lightSum: Float64Array;
  readonly heatSum: Float64Array;
  /** By set: minutes outside of its window, summed over frames. */
  readonly outside: Float64Array;
  /** By rig, while frames that start together are made ready: heat when ready, and rest owed. */
  readonly readyHeat: Float64Array;
  readonly restOf: Float64Array;
}

/** Is told what happens, in seconds from the start. */
export interface RunWatcher {
  swap(rig: number, fromS: number, toS: number): void;
  rest(rig: number, fromS: number, toS: number): void;
  /** In the order of the frames of the kind's pass. */
  frame(rig: number, startS: number, endS: number, freeS: number, heat: number): void;
}

export function startState({ rigs, sets, kinds, head, marksBefore }: OrderProblem): RunState {
  const behind = rigs.map(({ id }) => head.behind.get(id));
  return {
    now: head.timeline.wallS,
    mounted: -1,
    swaps: 0,
    placed: 0,
    done: new Int32Array(kinds.length),
    heat: Float64Array.from(behind, (own) => own?.heat ?? 0),
    freeAt: Float64Array.from(behind, (own) => own?.freeS ?? 0),
    idleFrom: Float64Array.from(behind, (own) => own?.idleFromS ?? 0),
    exposed: Float64Array.from(behind, (own) => own?.exposed ?? -1),
    marks: Int32Array.from(marksBefore),
    lightSum: new Float64Array(sets.length * rigs.length),
    heatSum: new Float64Array(sets.length * rigs.length),
    outside: new Float64Array(sets.length),
    readyHeat: new Float64Array(rigs.length),
    restOf: new Float64Array(rigs.length),
  };
}

/** The rest in seconds that a rig owes before a frame, its heat by now known. */
function owed(
  problem: OrderProblem,
  state: RunState,
  rig: number,
  frame: TurnFrame,
  heatNow: Doublings,
): number {
  const { rest } = problem;
  const exposed = state.exposed[rig] as number;
  if (exposed < 0 || frame.capped) return 0;
  const since = Math.max(0, state.now - (state.idleFrom[rig] as number));
  const asked = Math.max(0, frame.askedS - since);
  if (rest.kind === 'none') return asked;
  return Math.max(
    asked,
    rest.kind === 'thumb'
      ? restOwed(rest.rule, exposed as Seconds, since as Seconds)
      : restInLimit(problem, rest.longestS, state, rig, frame, heatNow),
  );
}

/** The rest that brings a frame inside the limit on heat; none that is known not to pay. */
function restInLimit(
  { rigs, light, lightIsKnown }: OrderProblem,
  longestS: Seconds,
  state: RunState,
  rig: number,
  { highest, rested, leftAtMid }: TurnFrame,
  heatNow: Doublings,
): number {
  if (heatNow <= highest) return 0;
  const { model, waits, leftSettled } = rigs[rig] as OrderRig;
  const { plateaus, tau } = model;
  const needed = coolingTime(model, heatNow, waits, highest as Doublings);
  // Where no rest is enough a rest would only cost light.
  if (isRefusal(needed)) return 0;
  const rest = Math.min(needed, longestS) as Seconds;
  if (!lightIsKnown) return rest;
  const over = (heat: Doublings): Doublings => {
    const settled = heatWithLeft(heat, plateaus.idle, leftSettled);
    return (heatWithLeft(settled, plateaus.exposing, leftAtMid) - rested) as Doublings;
  };
  const heats = {
    without: over(heatNow),
    with: over(heatWithLeft(heatNow, plateaus[waits], partLeft(rest, tau))),
  };
  return restWorth(rest, fadeNear(light, state.now as Seconds), heats, USUAL_WEIGHTS).pays
    ? rest
    : 0;
}

const minutesOutside = ({ fromS, toS }: OrderSet, mid: number): number =>
  Math.max(0, fromS - mid, mid - toS) / 60;

/** The heat of a rig after waiting, and after being dialled if it was, when others are ready too. */
function heatByNow(
  problem: OrderProblem,
  state: RunState,
  rig: number,
  dialled: boolean,
): Doublings {
  const { model, waits, leftDialled } = problem.rigs[rig] as OrderRig;
  const { tau, plateaus } = model;
  const dialS = dialled ? problem.allowances.dialChangeS : 0;
  const waited = Math.max(0, state.now - dialS - (state.freeAt[rig] as number));
  const heat = heatWithLeft(state.heat[rig] as Doublings, plateaus[waits], partLeft(waited, tau));
  return dialled ? heatWithLeft(heat, plateaus.idle, leftDialled) : heat;
}

/** The frames of one place of a turn: one, or one of each rig side by side. They start together. */
function shoot(
  problem: OrderProblem,
  state: RunState,
  kind: TurnKind,
  place: number,
  watcher: RunWatcher | null,
): void {
  const { allowances, rigs, light } = problem;
  const { parts } = kind;
  const { readyHeat, restOf } = state;
  const set = problem.sets[kind.set] as OrderSet;
  const isDialled = (rig: number, frame: TurnFrame | undefined): boolean =>
    frame !== undefined && state.marks[rig] !== frame.marks;

  for (const { rig, frames } of parts) {
    if (isDialled(rig, frames[place])) state.now += allowances.dialChangeS;
  }
  let pause = 0;
  let soonest = Number.POSITIVE_INFINITY;
  for (const { rig, frames } of parts) {
    const frame = frames[place];
    const heat = heatByNow(problem, state, rig, isDialled(rig, frame));
    readyHeat[rig] = heat;
    const rest = frame ? owed(problem, state, rig, frame, heat) : 0;
    restOf[rig] = rest;
    pause = Math.max(pause, rest);
    if (frame) soonest = Math.min(soonest, (rigs[rig] as OrderRig).timerS);
  }
  const waiting = set.notBeforeS - (state.now + pause + allowances.settleS + soonest);
  if (waiting > 0) pause += waiting;
  if (watcher) {
    for (const { rig } of parts) {
      const rest = waiting > 0 ? pause : (restOf[rig] as number);
      if (rest > 0) watcher.rest(rig, state.now, state.now + rest);
    }
  }

  const tap = state.now + pause + allowances.settleS;
  state.now = tap;
  for (const { rig, frames } of parts) {
    const frame = frames[place];
    if (!frame) continue;
    const { model, waits, timerS, leftSettled, leftWritten } = rigs[rig] as OrderRig;
    const { tau, plateaus } = model;
    const start = tap + timerS;
    const end = start + frame.t;
    const idle = end + frame.darkS;
    const free = idle + allowances.writeS;
    let heat = readyHeat[rig] as Doublings;
    if (pause > 0) heat = heatWithLeft(heat, plateaus[waits], partLeft(pause, tau));
    heat = heatWithLeft(heat, plateaus.idle, leftSettled);
    const mid = heatWithLeft(heat, plateaus.exposing, frame.leftAtMid);
    heat = heatWithLeft(heat, plateaus.exposing, frame.leftAtEnd);
    state.heat[rig] = heatWithLeft(heat, plateaus.idle, leftWritten);
    state.freeAt[rig] = free;
    state.idleFrom[rig] = idle;
    state.exposed[rig] = frame.t;
    state.marks[rig] = frame.marks;
    if (!frame.capped) {
      const cell = kind.set * rigs.length + rig;
      const at = (start + end) / 2;
      state.lightSum[cell] = (state.lightSum[cell] as number) + lightAt(light, at);
      state.heatSum[cell] = (state.heatSum[cell] as number) + mid;
      state.outside[kind.set] = (state.outside[kind.set] as number) + minutesOutside(set, at);
    }
    watcher?.frame(rig, start, end, free, mid);
    state.now = Math.max(state.now, free);
  }
}

/** The rig that a kind puts on the tripod; none where all stand side by side. */
const comesOn = ({ mounting }: OrderProblem, { parts }: TurnKind): number =>
  mounting === 'side-by-side' ? -1 : (parts[0] as TurnPart).rig;

/** Runs one turn of a kind. */
export function takeTurn(
  problem: OrderProblem,
  state: RunState,
  kind: TurnKind,
  watcher: RunWatcher | null = null,
): void {
  const rig = comesOn(problem, kind);
  if (state.mounted >= 0 && rig !== state.mounted) {
    const { swapS, reframeS } = problem.allowances;
    watcher?.swap(rig, state.now, state.now + swapS + reframeS);
    state.now += swapS + reframeS;
    state.swaps += 1;
  }
  state.mounted = rig;
  for (let place = 0; place < kind.places; place += 1) shoot(problem, state, kind, place, watcher);
  state.done[kind.index] = (state.done[kind.index] as number) + 1;
  state.placed += 1;
}

/** What a turn may change, so that it can be taken back. */
export type Saved = Float64Array;

/** Room for as many turns as a problem has. */
export const roomToSave = ({ turns, rigs }: OrderProblem): readonly Saved[] =>
  Array.from({ length: turns + 1 }, () => new Float64Array(4 + 7 * rigs.length));

/** Notes what a turn of a kind may change. */
export function save(state: RunState, kind: TurnKind, rigCount: number, into: Saved): void {
  let at = 0;
  into[at++] = state.now;
  into[at++] = state.mounted;
  into[at++] = state.swaps;
  into[at++] = state.outside[kind.set] as number;
  for (const { rig } of kind.parts) {
    const cell = kind.set * rigCount + rig;
    into[at++] = state.heat[rig] as number;
    into[at++] = state.freeAt[rig] as number;
    into[at++] = state.idleFrom[rig] as number;
    into[at++] = state.exposed[rig] as number;
    into[at++] = state.marks[rig] as number;
    into[at++] = state.lightSum[cell] as number;
    into[at++] = state.heatSum[cell] as number;
  }
}

/** Takes the last turn back, which was of this kind. */
export function takeBack(state: RunState, kind: TurnKind, rigCount: number, from: Saved): void {
  let at = 0;
  state.now = from[at++] as number;
  state.mounted = from[at++] as number;
  state.swaps = from[at++] as number;
  state.outside[kind.set] = from[at++] as number;
  for (const { rig } of kind.parts) {
    const cell = kind.set * rigCount + rig;
    state.heat[rig] = from[at++] as number;
    state.freeAt[rig] = from[at++] as number;
    state.idleFrom[rig] = from[at++] as number;
    state.exposed[rig] = from[at++] as number;
    state.marks[rig] = from[at++] as number;
    state.lightSum[cell] = from[at++] as number;
    state.heatSum[cell] = from[at++] as number;
  }
  state.done[kind.index] = (state.done[kind.index] as number) - 1;
  state.placed -= 1;
}

/** Makes one state what another is; both are of one problem. */
export function copyState(from: RunState, to: RunState): void {
  to.now = from.now;
  to.mounted = from.mounted;
  to.swaps = from.swaps;
  to.placed = from.placed;
  to.done.set(from.done);
  to.heat.set(from.heat);
  to.freeAt.set(from.freeAt);
  to.idleFrom.set(from.idleFrom);
  to.exposed.set(from.exposed);
  to.marks.set(from.marks);
  to.lightSum.set(from.lightSum);
  to.heatSum.set(from.heatSum);
  to.outside.set(from.outside);
}

/** Runs an order on from the turns that a state has behind it. */
export function runOrder(
  problem: OrderProblem,
  order: readonly number[],
  state: RunState,
  watcher: RunWatcher | null = null,
): void {
  for (let place = state.placed; place < order.length; place += 1) {
    takeTurn(problem, state, problem.kinds[order[place] as number] as TurnKind, watcher);
  }
}
