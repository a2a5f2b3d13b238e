import type { Column } from './columns.ts';
import {
  clockCost,
  FRAME_LEFT,
  GAIN_SIGMA_S_PER_HOUR,
  settingCost,
  timeWeight,
} from './evidence.ts';
import type { Row } from './rows.ts';

/** How a body's clock runs against the phone's, and what it writes as a picture's time. */
export interface Clock {
  /** Shown minus local time, in seconds, at `centreS`. */
  readonly aheadS: number;
  readonly gainsSPerHour: number;
  /** Local time at which `aheadS` holds. */
  readonly centreS: number;
  /** Whether a picture's time is the end of its exposure. */
  readonly writesEnd: boolean;
  /** One standard deviation of `aheadS`. */
  readonly sigmaS: number;
}

/** A frame and the instant by the body's clock at which its file says that it opened. */
export interface Pair {
  readonly row: Row;
  readonly openedS: number;
}

/** What the body's clock shows as a row opens. */
export const shownFor = (row: Row, clock: Clock): number =>
  row.localS + clock.aheadS + (clock.gainsSPerHour * (row.localS - clock.centreS)) / 3600;

/** What the clock itself costs: how far it is off, and how much it gains. */
export const costOfClock = (clock: Clock): number =>
  clockCost(clock.aheadS) + (clock.gainsSPerHour / GAIN_SIGMA_S_PER_HOUR) ** 2;

/** More rows than this need not vote for a clock. */
const MOST_VOTERS = 100;
/** Votes so near together are for one clock: two taps' scatter and some drift. */
const TOGETHER_S = 8;
const MOST_CANDIDATES = 10;
/** A frame and a file that agree in number as well vote so much more. */
const NUMBER_VOTES = 3;
const PAIR_VOTES = 5;
/** Frames and files exposed so unlike do not vote. */
const MUTE_COST = 16;

/** How alike a row and a column are exposed, as a cost. */
export const exposureCost = (row: Row, column: Column): number =>
  settingCost(row.exposure.time - column.exposure.time, row.recorded) +
  settingCost(row.exposure.aperture - column.exposure.aperture, row.recorded) +
  settingCost(row.exposure.iso - column.exposure.iso, row.recorded);

/**
 * Where the clock may stand: every file votes for the offset to every frame, as far as they are
 * exposed alike. The true offset gathers as many votes as there are pairs; in a regular series so do
 * its neighbours, and all of them are handed on.
 */
export function candidateClocks(
  rows: readonly Row[],
  columns: readonly Column[],
  pairs: readonly Pair[],
  writesEnd: boolean,
): readonly Clock[] {
  const votes = new Votes();
  const stride = Math.max(1, rows.length / MOST_VOTERS);
  for (let next = 0; next < rows.length; next += stride) {
    const row = rows[Math.floor(next)] as Row;
    for (const column of columns) {
      if (column.file === null || !Number.isFinite(column.fromS)) continue;
      const cost = exposureCost(row, column);
      if (cost > MUTE_COST) continue;
      const same = row.number !== null && row.number === column.number;
      votes.cast(column.fromS - row.localS, (same ? NUMBER_VOTES : 1) * Math.exp(-cost / 2));
    }
  }
  for (const { row, openedS } of pairs) votes.cast(openedS - row.localS, PAIR_VOTES);
  const centreS = centreOf(rows, pairs);
  return votes.peaks().map((aheadS) => ({
    aheadS,
    gainsSPerHour: 0,
    centreS,
    writesEnd,
    sigmaS: TOGETHER_S / 2,
  }));
}

const centreOf = (rows: readonly Row[], pairs: readonly Pair[]): number => {
  const times = [...rows, ...pairs.map(({ row }) => row)].map(({ localS }) => localS);
  return times.length === 0 ? 0 : (Math.min(...times) + Math.max(...times)) / 2;
};

/** Votes for offsets, gathered in steps of half of what is near together. */
class Votes {
  readonly #steps = new Map<number, { weight: number; moment: number }>();

  cast(aheadS: number, weight: number): void {
    const at = Math.floor((2 * aheadS) / TOGETHER_S);
    const step = this.#steps.get(at);
    if (step) {
      step.weight += weight;
      step.moment += weight * aheadS;
    } else this.#steps.set(at, { weight, moment: weight * aheadS });
  }

  /** The offsets with the most votes around them, each far enough from a better one. */
  peaks(): readonly number[] {
    const found = [...this.#steps].map(([at, step]) => {
      const next = this.#steps.get(at + 1);
      const weight = step.weight + (next?.weight ?? 0);
      const aheadS = (step.moment + (next?.moment ?? 0)) / weight;
      return { aheadS, worth: FRAME_LEFT * weight - clockCost(aheadS) };
    });
    const chosen: number[] = [];
    for (const { aheadS } of found.sort((a, b) => b.worth - a.worth)) {
      if (chosen.every((other) => Math.abs(other - aheadS) > TOGETHER_S / 2)) chosen.push(aheadS);
      if (chosen.length === MOST_CANDIDATES) break;
    }
    return chosen;
  }
}

const ROUNDS = 6;
/** No clock is known better: half a second is how a file's time is written. */
const LEAST_SIGMA_S = 0.3;

/**
 * The offset and gain that fit pairs best, later taps counting less (iterated weighted least
 * squares, the gain held by its prior).
 */
export function fitClock(pairs: readonly Pair[], start: Clock): Clock {
  if (pairs.length === 0) return start;
  let { aheadS, gainsSPerHour } = start;
  let sigmaS = start.sigmaS;
  for (let round = 0; round < ROUNDS; round += 1) {
    let [w0, w1, w2, v0, v1] = [0, 0, 1 / GAIN_SIGMA_S_PER_HOUR ** 2, 0, 0];
    for (const { row, openedS } of pairs) {
      const hours = (row.localS - start.centreS) / 3600;
      const off = openedS - row.localS;
      const residual = off - aheadS - gainsSPerHour * hours;
      const weight = timeWeight(residual / row.sigmaS) / row.sigmaS ** 2;
      w0 += weight;
      w1 += weight * hours;
      w2 += weight * hours * hours;
      v0 += weight * off;
      v1 += weight * off * hours;
    }
    const det = w0 * w2 - w1 * w1;
    aheadS = (v0 * w2 - v1 * w1) / det;
    gainsSPerHour = (v1 * w0 - v0 * w1) / det;
    sigmaS = Math.sqrt(w2 / det);
  }
  return { ...start, aheadS, gainsSPerHour, sigmaS: Math.max(LEAST_SIGMA_S, sigmaS) };
}
