import {
  minutesBetween,
  type Seconds,
  type Stops,
  type UtcMs,
} from '../../../src/science/units.ts';
import { type Evening, lightOver } from './evening.ts';
import { warmthsOf } from './warmth.ts';

/** An exposure as it really ran. */
export interface Exposed {
  readonly set: string;
  readonly letter: string;
  readonly openedMs: UtcMs;
  readonly t: Seconds;
  /** What the settings do to a frame, in stops: log2(t s/n²). */
  readonly exposure: Stops;
}

/** What each exposure takes in a pair's figure: on the other rig's in all 1, on the reference's -1. */
export type Weights = ReadonlyMap<Exposed, number>;

/** What really sets a pair of rigs apart over a set: other minus reference, means in stops. */
export interface TrueDifference {
  /** The light that fell on the scene while they exposed. */
  readonly light: Stops;
  /** Settings and times. */
  readonly exposure: Stops;
  /** Stops of dark current, each body with its own warming. */
  readonly heat: number;
  /** The same as if both had the reference's body: what their histories alone make of it. */
  readonly heatByHistory: number;
}

/** The warmth of each exposure of a rig, by a body of the evening. */
function warmths(
  evening: Evening,
  body: string,
  own: readonly Exposed[],
  switchedOn: UtcMs,
): ReadonlyMap<Exposed, number> {
  const work = own.map(({ openedMs, t }) => {
    const fromS = 60 * minutesBetween(switchedOn, openedMs);
    return { fromS, toS: fromS + t };
  });
  const found = warmthsOf(evening.warming(body), work);
  return new Map(own.map((exposed, i) => [exposed, found[i] ?? Number.NaN]));
}

/**
 * What really sets two rigs apart, by the frames that a figure is made of.
 *
 * @param exposures all that was exposed that evening, in order.
 * @param switchedOn when both bodies were switched on, at rest.
 */
export function trueDifference(
  evening: Evening,
  exposures: readonly Exposed[],
  switchedOn: UtcMs,
  weights: Weights,
  [reference, other]: readonly [string, string],
): TrueDifference {
  const sum = (of: (exposed: Exposed) => number): number =>
    [...weights].reduce((total, [exposed, weight]) => total + weight * of(exposed), 0);
  const histories = (bodyOf: (letter: string) => string) => {
    const warm = new Map(
      [reference, other].flatMap((letter) => {
        const own = exposures.filter((each) => each.letter === letter);
        return [...warmths(evening, bodyOf(letter), own, switchedOn)];
      }),
    );
    return sum((exposed) => warm.get(exposed) ?? Number.NaN);
  };
  return {
    light: sum(({ openedMs, t }) => lightOver(evening, openedMs, t)) as Stops,
    exposure: sum(({ exposure }) => exposure) as Stops,
    heat: histories((letter) => letter),
    heatByHistory: histories(() => reference),
  };
}
