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
  readonly pass: number;
  readonly openedMs: UtcMs;
  readonly t: Seconds;
  /** What the settings do to a frame, in stops: log2(t s/n²). */
  readonly exposure: Stops;
  /** A frame of the pair; false for what was spoilt, and for capped darks. */
  readonly counts: boolean;
}

/** What really sets a pair of rigs apart over a set: other minus reference, mean over passes in stops. */
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

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

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
 * What really sets two rigs apart in a set. Passes that lack a rig are left out.
 *
 * @param exposures all that was exposed that evening, in order.
 * @param switchedOn when both bodies were switched on, at rest.
 */
export function trueDifference(
  evening: Evening,
  exposures: readonly Exposed[],
  switchedOn: UtcMs,
  set: string,
  [reference, other]: readonly [string, string],
): TrueDifference | null {
  const of = (letter: string) => exposures.filter((each) => each.letter === letter);
  const [one, two] = [of(reference), of(other)];
  const counted = (own: readonly Exposed[], pass: number) =>
    own.filter((each) => each.counts && each.set === set && each.pass === pass);
  const passes = [...new Set(exposures.map(({ pass }) => pass))].filter(
    (pass) => counted(one, pass).length > 0 && counted(two, pass).length > 0,
  );
  if (passes.length === 0) return null;
  const difference = (
    ofReference: (exposed: Exposed) => number,
    ofOther: (exposed: Exposed) => number = ofReference,
  ) =>
    mean(
      passes.map(
        (pass) => mean(counted(two, pass).map(ofOther)) - mean(counted(one, pass).map(ofReference)),
      ),
    );
  const warmthOf = (body: string, own: readonly Exposed[]) => {
    const found = warmths(evening, body, own, switchedOn);
    return (exposed: Exposed): number => found.get(exposed) ?? Number.NaN;
  };
  const ofReference = warmthOf(reference, one);
  return {
    light: difference(({ openedMs, t }) => lightOver(evening, openedMs, t)) as Stops,
    exposure: difference(({ exposure }) => exposure) as Stops,
    heat: difference(ofReference, warmthOf(other, two)),
    heatByHistory: difference(ofReference, warmthOf(reference, two)),
  };
}
