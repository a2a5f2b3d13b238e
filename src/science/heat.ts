import { type Refusal, refuse } from './refusal.ts';
import type { Doublings } from './sensorUnits.ts';
import type { Ratio, Seconds, Share } from './units.ts';

/*
 * The heat of one sensor: one store, counted in doublings of dark current over the rested body. In
 * each mode it goes to a plateau of that mode:
 *
 *   y(t + dt) = Y + (y - Y) exp(-dt / tau)
 *
 * Real bodies have at least two time constants, the chip's and the shell's; one is enough until a
 * body has been calibrated. Derived.
 */

/** What a body is doing: switched off; on with a dark screen; exposing, its own dark frame too; on
 * with live view or a lit rear screen. */
export const HEAT_MODES = ['off', 'idle', 'exposing', 'live-view'] as const;
export type HeatMode = (typeof HEAT_MODES)[number];

/** How one body warms and cools. */
export interface ThermalModel {
  readonly tau: Seconds;
  /** Where the heat goes if a mode lasts. */
  readonly plateaus: Readonly<Record<HeatMode, Doublings>>;
}

/** A stretch of time in one mode. */
export interface HeatSegment {
  readonly mode: HeatMode;
  readonly lasts: Seconds;
}

/** The part of a distance to a plateau that is left after a time. */
export const partLeft = (dt: number, tau: Seconds): number => Math.exp(-dt / tau);

/** The heat on the way to a plateau when a part of the distance is left. */
export const heatWithLeft = (start: Doublings, plateau: Doublings, left: number): Doublings =>
  (plateau + (start - plateau) * left) as Doublings;

/**
 * The heat after a time on the way to a plateau. Exact, so that steps compose; with a time below
 * zero it gives the heat before.
 */
export const heatAfter = (
  start: Doublings,
  plateau: Doublings,
  dt: number,
  tau: Seconds,
): Doublings => heatWithLeft(start, plateau, partLeft(dt, tau));

/** The heat in the middle of an exposure that starts at a heat. */
export const midExposureHeat = (
  start: Doublings,
  plateau: Doublings,
  t: Seconds,
  tau: Seconds,
): Doublings => heatAfter(start, plateau, t / 2, tau);

/** The heat at the end of some segments, and in the middle of each exposure among them. */
export function heatThrough(
  model: ThermalModel,
  start: Doublings,
  segments: readonly HeatSegment[],
): { readonly mids: readonly Doublings[]; readonly end: Doublings } {
  const mids: Doublings[] = [];
  let heat = start;
  for (const { mode, lasts } of segments) {
    const plateau = model.plateaus[mode];
    if (mode === 'exposing') mids.push(midExposureHeat(heat, plateau, lasts, model.tau));
    heat = heatAfter(heat, plateau, lasts, model.tau);
  }
  return { mids, end: heat };
}

/** How many times the rested body's dark current a heat makes, 2^y. */
export const heatFactor = (heat: Doublings): Ratio => (2 ** heat) as Ratio;

/** Terms below this part of the sum no longer count. */
const NEGLIGIBLE = 1e-16;

/**
 * The mean heat factor over an exposure, exact: 2^Y (1 + (tau/t) sum of a^k (1 - e^(-k t/tau)) /
 * (k k!)) with a = (y - Y) ln 2. Derived.
 */
export function meanHeatFactor(
  start: Doublings,
  plateau: Doublings,
  t: Seconds,
  tau: Seconds,
): Ratio {
  const a = (start - plateau) * Math.LN2;
  let sum = 1;
  let power = 1;
  for (let k = 1; ; k += 1) {
    power *= a / k;
    const term = (power * (-Math.expm1((-k * t) / tau) * tau)) / (k * t);
    sum += term;
    if (k > Math.abs(a) && Math.abs(term) <= NEGLIGIBLE * Math.abs(sum)) break;
  }
  return (heatFactor(plateau) * sum) as Ratio;
}

/**
 * The same by Simpson's rule on start, middle and end: within 0.002 % for a 240 s frame of a rested
 * body, 0.6 % in the worst corner of the stated ranges.
 */
export function meanHeatFactorBySimpson(
  start: Doublings,
  plateau: Doublings,
  t: Seconds,
  tau: Seconds,
): Ratio {
  const mid = midExposureHeat(start, plateau, t, tau);
  const end = heatAfter(start, plateau, t, tau);
  return ((heatFactor(start) + 4 * heatFactor(mid) + heatFactor(end)) / 6) as Ratio;
}

/** The time constant of something of which a share is left after a time. */
export const settlingTimeConstant = (after: Seconds, remaining: Share): Seconds | Refusal =>
  remaining < 1 ? ((after / Math.log(1 / remaining)) as Seconds) : refuse('nothing-settled');

/** Frames of one length with a wait of one length between them, over and over. */
export interface Rhythm {
  readonly exposing: Doublings;
  readonly t: Seconds;
  readonly resting: Doublings;
  readonly rest: Seconds;
  readonly tau: Seconds;
}

/**
 * The heat at the start of each frame that an unbroken rhythm comes to, after some three time
 * constants. Refuses a rhythm that takes no time ('rhythm-takes-no-time').
 */
export function cyclicStartHeat(rhythm: Rhythm): Doublings | Refusal {
  const { exposing, t, resting, rest, tau } = rhythm;
  const a = Math.exp(-t / tau);
  const b = Math.exp(-rest / tau);
  if (a * b === 1) return refuse('rhythm-takes-no-time');
  return ((exposing * (1 - a) * b + resting * (1 - b)) / (1 - a * b)) as Doublings;
}

/**
 * How much more dark current the settled frame of a rhythm has than its first, taken by a rested
 * body: 'rest as long as you exposed' does not bring a sensor back to rested.
 */
export function firstToSettled(rhythm: Rhythm): Doublings | Refusal {
  const start = cyclicStartHeat(rhythm);
  if (typeof start !== 'number') return start;
  const rested = midExposureHeat(0 as Doublings, rhythm.exposing, rhythm.t, rhythm.tau);
  return (midExposureHeat(start, rhythm.exposing, rhythm.t, rhythm.tau) - rested) as Doublings;
}

/** The mean heat of some frames; refuses none ('no-frames'). */
export const meanHeat = (heats: readonly Doublings[]): Doublings | Refusal =>
  heats.length === 0
    ? refuse('no-frames')
    : ((heats.reduce((sum, heat) => sum + heat, 0) / heats.length) as Doublings);

/**
 * The heat line of a pair in stops of dark current: mean of the other's frames minus mean of the
 * reference's, each over its own rested state; positive where the other was warmer.
 */
export function pairHeat(
  reference: readonly Doublings[],
  other: readonly Doublings[],
): Doublings | Refusal {
  const mean = meanHeat(reference);
  const otherMean = meanHeat(other);
  if (typeof mean !== 'number') return mean;
  if (typeof otherMean !== 'number') return otherMean;
  return (otherMean - mean) as Doublings;
}
