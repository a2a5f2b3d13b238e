import type { Positions } from '../gear/positions.ts';
import type { Assembled } from '../gear/rig.ts';
import type { TimeChoice } from '../gear/settings.ts';
import { stopsBetweenFNumbers, stopsBetweenIsos, stopsBetweenTimes } from '../science/exposure.ts';
import { type FNumber, type Iso, type Seconds, type Stops, seconds } from '../science/units.ts';

/** Something that can be set, with its distance from what is wanted. */
export interface Candidate<U, C> {
  readonly choice: C;
  readonly exact: U;
  /** Positive where it renders brighter than what is wanted. */
  readonly deviation: Stops;
}

/** A time that can be set. */
export interface TimeOption {
  readonly time: TimeChoice;
  /** Nobody has measured whether it runs as marked. */
  readonly uncertain: boolean;
}

/**
 * The times that a body can be set to. Bulb counts only for a time beyond the dial, and is then
 * held as long as wanted or as long as the body can.
 */
export function timeCandidates(
  { times }: Positions,
  { body }: Assembled,
  wanted: Seconds,
): readonly Candidate<Seconds, TimeOption>[] {
  const timed = times
    .filter((position) => !position.extended)
    .map(({ mark, exact, uncertain }) => ({
      choice: { time: { kind: 'dial', mark } as const, uncertain },
      exact,
      deviation: stopsBetweenTimes(wanted, exact),
    }));
  const longest = Math.max(0, ...timed.map(({ exact }) => exact));
  if (body.bulb.kind === 'none' || wanted <= longest) return timed;
  const held = seconds(Math.min(wanted, body.bulb.longestS));
  if (held <= longest) return timed;
  return [
    ...timed,
    {
      choice: { time: { kind: 'bulb', seconds: held }, uncertain: false },
      exact: held,
      deviation: stopsBetweenTimes(wanted, held),
    },
  ];
}

/** The ISO marks of a body but for its extended ones. */
export const isoCandidates = (
  { isos }: Positions,
  wanted: Iso,
): readonly Candidate<Iso, string>[] =>
  isos
    .filter((position) => !position.extended)
    .map(({ mark, exact }) => ({
      choice: mark,
      exact,
      deviation: stopsBetweenIsos(wanted, exact),
    }));

/** The f-number marks of a lens. */
export const fNumberCandidates = (
  { fNumbers }: Positions,
  wanted: FNumber,
): readonly Candidate<FNumber, string>[] =>
  fNumbers
    .filter((position) => !position.extended)
    .map(({ mark, exact }) => ({
      choice: mark,
      exact,
      deviation: stopsBetweenFNumbers(wanted, exact),
    }));

/** Two deviations count as equal within a billionth of a stop: the rest is rounding. */
export const rank = (deviation: number): number => Math.round(Math.abs(deviation) * 1e9);

/** The candidates nearest to what is wanted: one, or two with the target halfway between. */
export function nearest<U, C>(candidates: readonly Candidate<U, C>[]): readonly Candidate<U, C>[] {
  const least = Math.min(...candidates.map(({ deviation }) => rank(deviation)));
  return candidates.filter(({ deviation }) => rank(deviation) === least);
}
