import { offsetAt } from '../gear/offsets.ts';
import type { Assembled } from '../gear/rig.ts';
import { stopsBetweenFNumbers, stopsBetweenIsos, stopsBetweenTimes } from '../science/exposure.ts';
import { fNumber, iso, type Stops, seconds } from '../science/units.ts';
import type { Dialled } from './frame.ts';

/** What makes two frames of one scene differ in brightness. These add up, in stops. */
export const CAUSES = ['time', 'aperture', 'iso', 'offset', 'transmission', 'fade'] as const;
export type Cause = (typeof CAUSES)[number];

/** Why a difference cannot be told. */
export type WhyUnknown =
  | 'neither-stated'
  | 'reference-not-stated'
  | 'other-not-stated'
  /** Nothing tells how the light went: no site, or a time that its sky does not cover. */
  | 'no-sky'
  /** A wall that is lit by hand does not fade with the sky. */
  | 'not-modelled';

/** How sure a difference is that was worked out and not set, and what it was worked out from. */
export interface Estimate {
  /** One sigma. */
  readonly sigma: Stops;
  readonly from: 'readings' | 'model';
}

/** A difference in stops, or the reason why there is none. Unknown is never zero. */
export type KnownOrUnknown =
  | { readonly known: true; readonly stops: Stops; readonly estimate?: Estimate }
  | { readonly known: false; readonly why: WhyUnknown };

export const known = (stops: Stops): KnownOrUnknown => ({ known: true, stops });
export const unknown = (why: WhyUnknown): KnownOrUnknown => ({ known: false, why });

/** One side of a pair: a rig and what was, or is to be, set on it. */
export interface Side extends Dialled {
  readonly assembled: Assembled;
}

/**
 * How bright a frame comes out by what belongs to its own rig, each cause in stops above f/1, 1 s,
 * ISO 1, no offset and a lens that takes nothing. Only differences of levels mean anything; null =
 * not stated.
 */
export interface Levels {
  readonly time: Stops;
  readonly aperture: Stops;
  readonly iso: Stops;
  readonly offset: Stops | null;
  readonly transmission: Stops | null;
}

/** The levels of one frame. */
export const levelsOf = ({ assembled, settings, exact }: Side): Levels => ({
  time: stopsBetweenTimes(seconds(1), exact.t),
  aperture: stopsBetweenFNumbers(fNumber(1), exact.n),
  iso: stopsBetweenIsos(iso(1), exact.s),
  offset: offsetAt(assembled.rig, settings.isoMark)?.stops ?? null,
  transmission: assembled.lens.transmissionStops,
});

/** The difference by each cause. */
export type CauseDifferences = Readonly<Record<Cause, KnownOrUnknown>>;

function between(reference: Stops | null, other: Stops | null): KnownOrUnknown {
  if (reference !== null && other !== null) return known((other - reference) as Stops);
  if (reference !== null) return unknown('other-not-stated');
  if (other !== null) return unknown('reference-not-stated');
  return unknown('neither-stated');
}

/**
 * The difference of two frames by cause, in stops: positive where the other renders brighter than
 * the reference.
 *
 * @param fade what the light did between them, from `fadeCause`.
 */
export const causesBetween = (
  reference: Levels,
  other: Levels,
  fade: KnownOrUnknown = unknown('no-sky'),
): CauseDifferences => ({
  time: between(reference.time, other.time),
  aperture: between(reference.aperture, other.aperture),
  iso: between(reference.iso, other.iso),
  offset: between(reference.offset, other.offset),
  transmission: between(reference.transmission, other.transmission),
  fade,
});
