import type { EvenedUp } from '../../outing/cameraFile.ts';
import { type Stops, stops } from '../../science/units.ts';
import type { Wide } from './figures.ts';

/** One sigma of a brightening found by eye, where none was stated (our choice). */
export const TYPED_SIGMA: Stops = stops(0.1);
/** One sigma of a brightening from a region of both pictures, where none was stated (our choice). */
export const REGION_SIGMA: Stops = stops(0.05);

/** What a pair really needed beside what was predicted. */
export interface LeftOver {
  readonly needed: Stops;
  /** One sigma; `stated` = by who found it, else ours. */
  readonly neededSigma: Stops;
  readonly stated: boolean;
  readonly by: NonNullable<EvenedUp['needed']>['by'];
  /** Needed minus predicted: + where the other came out darker than the ledger knows why. */
  readonly stops: Stops;
  /** One sigma, of both together. */
  readonly sigma: Stops;
}

/** @param evenUp as predicted; its unknown causes are in what is left over. */
export function leftOverOf({ needed }: Pick<EvenedUp, 'needed'>, evenUp: Wide): LeftOver | null {
  if (!needed) return null;
  const neededSigma = needed.sigma ?? (needed.by === 'typed' ? TYPED_SIGMA : REGION_SIGMA);
  return {
    needed: needed.stops,
    neededSigma,
    stated: needed.sigma !== null,
    by: needed.by,
    stops: stops(needed.stops - evenUp.stops),
    sigma: stops(Math.hypot(neededSigma, evenUp.sigma)),
  };
}
