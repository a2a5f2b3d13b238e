import type { Assembled } from '../gear/rig.ts';
import { areaStops } from '../science/formats.ts';
import { addStops, type Stops, stops } from '../science/units.ts';
import {
  CAUSES,
  type Cause,
  type CauseDifferences,
  causesBetween,
  type KnownOrUnknown,
  levelsOf,
  type Side,
} from './causes.ts';
import { formatOf } from './framing.ts';
import type { Hold } from './plan.ts';
import { type Target, targetOf } from './target.ts';

/** One cause of a pair. */
export interface CauseLine {
  readonly cause: Cause;
  /** What is; positive where the other renders brighter than the reference. */
  readonly difference: KnownOrUnknown;
  /** What the hold wants it to be; null when the settings are free. */
  readonly target: Stops | null;
  /** Difference minus target, what the dials added; null when the settings are free. */
  readonly residual: KnownOrUnknown | null;
  /**
   * False for a transmission that both rigs' offsets hold already: an offset is found through the
   * lens, so that counting both would count the glass twice.
   */
  readonly counted: boolean;
}

/** A sum over causes, with those that are not in it because they are unknown. */
export interface Figure {
  readonly stops: Stops;
  readonly missing: readonly Cause[];
}

/** The light that the other sensor got against the reference's, whatever its ISO made of it. */
export interface LightFigures {
  readonly perArea: Figure;
  readonly wholeSensor: Figure;
  /** Over the part of the view that both frames show. */
  readonly commonCrop: Figure;
}

/** A pair by cause. */
export interface Differences {
  /** In the order of CAUSES. */
  readonly lines: readonly CauseLine[];
  /** Brightness as rendered: the sum of the differences. */
  readonly sum: Figure;
  /** The sum of the residuals; null when the settings are free. */
  readonly residual: Figure | null;
  readonly light: LightFigures;
}

/** The reference first. */
export interface Pair {
  readonly reference: Assembled;
  readonly other: Assembled;
}

const wantedOf = (target: Target, cause: Cause): Stops =>
  cause === 'time' || cause === 'aperture' || cause === 'iso' ? target[cause] : stops(0);

const less = (value: KnownOrUnknown, by: Stops): KnownOrUnknown =>
  value.known ? { ...value, stops: (value.stops - by) as Stops } : value;

function sumOf(values: readonly (readonly [Cause, KnownOrUnknown])[]): Figure {
  return {
    stops: addStops(...values.map(([, value]) => (value.known ? value.stops : stops(0)))),
    missing: values.filter(([, value]) => !value.known).map(([cause]) => cause),
  };
}

const plus = (figure: Figure, by: Stops): Figure => ({
  ...figure,
  stops: addStops(figure.stops, by),
});

/**
 * The light on the sensors. ISO and offset stay out of it: the one changes no light, of the other
 * nobody knows how much of it is light.
 *
 * The common crop is one solid angle seen by both, drawn on each sensor as large as its focal
 * length draws it: its areas stand as the focal lengths squared (rectilinear, focused far).
 */
function lightOf(causes: CauseDifferences, { reference, other }: Pair): LightFigures {
  const perArea = sumOf(
    (['time', 'aperture', 'transmission', 'fade'] as const).map((cause) => [cause, causes[cause]]),
  );
  const cropStops = stops(2 * Math.log2(other.lens.focalMm / reference.lens.focalMm));
  return {
    perArea,
    wholeSensor: plus(perArea, areaStops(formatOf(reference.body), formatOf(other.body))),
    commonCrop: plus(perArea, cropStops),
  };
}

/** Lines, sums and figures of light from the differences by cause: of one pair, or a mean. */
export function differencesFrom(causes: CauseDifferences, pair: Pair, hold: Hold): Differences {
  const target = targetOf(hold, pair.reference, pair.other);
  const lines = CAUSES.map((cause): CauseLine => {
    const wanted = target && wantedOf(target, cause);
    return {
      cause,
      difference: causes[cause],
      target: wanted,
      residual: wanted === null ? null : less(causes[cause], wanted),
      counted: cause !== 'transmission' || !causes.offset.known,
    };
  });
  const counted = lines.filter((line) => line.counted);
  return {
    lines,
    sum: sumOf(counted.map((line) => [line.cause, line.difference])),
    residual:
      target && sumOf(counted.map((line) => [line.cause, line.residual ?? line.difference])),
    light: lightOf(causes, pair),
  };
}

/**
 * The differences of two frames by cause, planned or made: both sides give the exact values that
 * hold, for a bulb frame the time that really elapsed.
 *
 * Source of the sum: light budget between two frames, derived from N²/t = L S/K.
 */
export const differencesBetween = (reference: Side, other: Side, hold: Hold): Differences =>
  differencesFrom(
    causesBetween(levelsOf(reference), levelsOf(other)),
    { reference: reference.assembled, other: other.assembled },
    hold,
  );

/** The brightening that brings the other frame to its reference's brightness. */
export const evenUp = (differences: Differences): Figure => ({
  ...differences.sum,
  stops: stops(-differences.sum.stops),
});
