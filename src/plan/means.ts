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

function meanIfAll(values: readonly (Stops | null)[]): Stops | null {
  const stated = values.filter((value) => value !== null);
  return stated.length === values.length ? meanOf(stated) : null;
}

/** The mean level of one rig's frames of one turn; unknown where it is unknown for any of them. */
export const meanLevels = (frames: readonly [Levels, ...Levels[]]): Levels => ({
  time: meanOf(frames.map(({ time }) => time)),
  aperture: meanOf(frames.map(({ aperture }) => aperture)),
  iso: meanOf(frames.map(({ iso }) => iso)),
  offset: meanIfAll(frames.map(({ offset }) => offset)),
  transmission: meanIfAll(frames.map(({ transmission }) => transmission)),
});

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
