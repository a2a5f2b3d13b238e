import { medianOverMean } from './intervals.ts';
import type { DegreesOfFreedom } from './quantiles.ts';
import { isRefusal, type Refusal, refuse } from './refusal.ts';
import { type Region, twoFrameVariance } from './repeats.ts';
import { median } from './robustFit.ts';
import type { DnVariance } from './sensorUnits.ts';

/*
 * Noise from two frames in which something moved: square tiles, most of which it did not touch. The
 * median of the tiles' variances says what is usual; tiles that stand out are dropped and told.
 */

/** Pixels on the side of a tile. */
export const TILE_SIDE = 16;
const TILE_PIXELS = TILE_SIDE ** 2;
const TILE_DOF = (TILE_PIXELS - 1) as DegreesOfFreedom;

/** A tile whose difference or variance is off by more than so many standard errors is dropped. */
const MOST_ERRORS = 4;
/** With fewer kept than this part there is no figure. */
const LEAST_KEPT = 0.5;

/** A region with rows; pixels past the last whole tile are left out. */
export interface Plane {
  readonly values: Region;
  readonly width: number;
}

interface Tile {
  readonly variance: DnVariance;
  readonly meanDifference: number;
}

/** What tiles say of the noise of one frame. */
export interface TiledNoise {
  /** The median of all tiles, over what a median of tiles is of their mean. */
  readonly medianVariance: DnVariance;
  readonly kept: number;
  readonly dropped: number;
  /** The mean over the kept ones. */
  readonly keptVariance: DnVariance;
}

const tileOf = ({ values, width }: Plane, row: number, column: number): Float64Array =>
  Float64Array.from({ length: TILE_PIXELS }, (_, index) => {
    const y = row * TILE_SIDE + Math.floor(index / TILE_SIDE);
    return values[y * width + column * TILE_SIDE + (index % TILE_SIDE)] as number;
  });

function tilesOf(first: Plane, second: Plane): readonly Tile[] | Refusal {
  if (first.width !== second.width || first.values.length !== second.values.length) {
    return refuse('regions-differ-in-size');
  }
  const columns = Math.floor(first.width / TILE_SIDE);
  const rows = Math.floor(first.values.length / first.width / TILE_SIDE);
  if (!(columns * rows > 0)) return refuse('too-few-pixels');
  const tiles: Tile[] = [];
  for (let index = 0; index < columns * rows; index += 1) {
    const place = [Math.floor(index / columns), index % columns] as const;
    const [one, other] = [tileOf(first, ...place), tileOf(second, ...place)];
    const variance = twoFrameVariance(one, other);
    if (isRefusal(variance)) return variance;
    const meanDifference =
      one.reduce((sum, value, pixel) => sum + value - (other[pixel] as number), 0) / TILE_PIXELS;
    tiles.push({ variance, meanDifference });
  }
  return tiles;
}

/**
 * The noise variance of one frame from two, tile by tile. A tile is kept if its mean difference lies
 * within 4 standard errors of none and its variance is at most 4 standard errors over the usual.
 * Refuses if fewer than half are kept ('too-much-moved').
 */
export function tiledNoise(first: Plane, second: Plane): TiledNoise | Refusal {
  const tiles = tilesOf(first, second);
  if (isRefusal(tiles)) return tiles;
  const usual = median(tiles.map(({ variance }) => variance)) / medianOverMean(TILE_DOF);
  const farthest = MOST_ERRORS * Math.sqrt((2 * usual) / TILE_PIXELS);
  const highest = usual * (1 + MOST_ERRORS * Math.sqrt(2 / TILE_DOF));
  const kept = tiles.filter(
    ({ variance, meanDifference }) => Math.abs(meanDifference) <= farthest && variance <= highest,
  );
  if (kept.length < LEAST_KEPT * tiles.length) return refuse('too-much-moved');
  return {
    medianVariance: usual as DnVariance,
    kept: kept.length,
    dropped: tiles.length - kept.length,
    keptVariance: (kept.reduce((sum, { variance }) => sum + variance, 0) /
      kept.length) as DnVariance,
  };
}
