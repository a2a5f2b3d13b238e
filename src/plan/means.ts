import { addStops, type Stops } from '../science/units.ts';
import {
  CAUSES,
  type Cause,
  type CauseDifferences,
  type KnownOrUnknown,
  known,
  type Levels,
} from './causes.ts';

/*
 * Means are taken in stops, not in light: dusk fades nearly evenly in stops, and an order that
 * cancels the fade in stops would leave a rest of it in light.
 */

const meanOf = (values: readonly Stops[]): Stops => (addStops(...values) / values.length) as Stops;

/** The mean level of one rig's frames of one turn; unknown where it is unknown for any of them. */
export const meanLevels = (frames: readonly [Levels, ...Levels[]]): Levels =>
  weightedLevels(frames.map((level) => ({ level, weight: 1 / frames.length })));

/** The same with weights of their own, which sum to 1. */
export function weightedLevels(
  frames: readonly { readonly level: Levels; readonly weight: number }[],
): Levels {
  const sum = (of: (level: Levels) => Stops): Stops =>
    frames.reduce((total, { level, weight }) => total + weight * of(level), 0) as Stops;
  const ifAll = (of: (level: Levels) => Stops | null): Stops | null =>
    frames.some(({ level }) => of(level) === null) ? null : sum((level) => of(level) as Stops);
  return {
    time: sum(({ time }) => time),
    aperture: sum(({ aperture }) => aperture),
    iso: sum(({ iso }) => iso),
    offset: ifAll(({ offset }) => offset),
    transmission: ifAll(({ transmission }) => transmission),
  };
}

/**
 * The mean difference over passes, cause by cause; unknown where it is unknown in any of them.
 *
 * @param fade the mean over the same passes: how sure it is depends on what their order cancels.
 */
export function meanCauses(
  passes: readonly [CauseDifferences, ...CauseDifferences[]],
  fade: KnownOrUnknown,
): CauseDifferences {
  const mean = (cause: Cause): KnownOrUnknown => {
    const values = passes.map((causes) => causes[cause]);
    const stated = values.flatMap((value) => (value.known ? [value.stops] : []));
    return values.find((value) => !value.known) ?? known(meanOf(stated));
  };
  const means = CAUSES.map((cause) => [cause, cause === 'fade' ? fade : mean(cause)]);
  return Object.fromEntries(means) as Record<Cause, KnownOrUnknown>;
}
