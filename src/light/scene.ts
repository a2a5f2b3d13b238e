import { withLamps } from '../science/sceneLight.ts';
import type { Ev, Stops, UtcMs } from '../science/units.ts';
import { type SkyTable, skyEv } from './skyTable.ts';

/*
 * How a scene follows its sky. The scene's EV, as one meter sees it, is
 *
 *   offset + log2( 2^(sky + k (sky - pivot)) + 2^lamps )
 *
 * with an offset for each meter, the scale of the fade 1 + k, and lamps counted before any offset.
 * What is uncertain about it is one covariance over the offsets in their order, then k, then lamps.
 */

/** What one meter reads above the sky at the pivot. */
export interface MeterOffset {
  readonly meter: string;
  readonly stops: Stops;
}

/** A reading as the fit sees it. */
export interface FittedReading {
  readonly at: UtcMs;
  readonly meter: string;
  readonly ev100: Ev;
  /** Reading minus fit; positive where the scene was brighter than the fit says. */
  readonly residual: Stops;
  /** From 1 = counts in full to 0 = left out as bad, or as older than a change of the sky. */
  readonly weight: number;
}

/** Where the readings contradict the clear-sky model or one another, with what the words need. */
export type Contradiction =
  /** The light falls much faster or slower than the model says. */
  | { readonly code: 'scale-far-from-one'; readonly scale: number }
  | { readonly code: 'scattered'; readonly stops: Stops }
  /** Nobody can tell which of the two is bad: ask for a third. */
  | { readonly code: 'two-disagree'; readonly meter: string; readonly stops: Stops }
  /** Cloud came or went, or something stands before the glow: only the readings since then count. */
  | {
      readonly code: 'sky-changed';
      /** Newest readings minus the older ones' course. */
      readonly stops: Stops;
      /** The last reading of the older ones and the first of the newer: it changed between. */
      readonly lastBefore: UtcMs;
      readonly since: UtcMs;
    }
  /** The readings stop falling here: the sky no longer decides. */
  | { readonly code: 'lamps'; readonly ev100: Ev };

export interface Scene {
  readonly sky: SkyTable;
  readonly from: 'readings' | 'model';
  /** In the order of their first reading. */
  readonly offsets: readonly MeterOffset[];
  /** The meter of the newest reading, for which EVs are given; null before any. */
  readonly meter: string | null;
  /** 1 = the fade of the model. */
  readonly scale: number;
  readonly pivot: Ev;
  /** Before any offset; null = none seen. */
  readonly lamps: Ev | null;
  readonly covariance: readonly (readonly number[])[];
  /** Robust scatter of the readings; null before there are two of one meter. */
  readonly scatter: Stops | null;
  /** In order of time. */
  readonly readings: readonly FittedReading[];
  readonly contradictions: readonly Contradiction[];
}

/** Before readings the fade may differ from the model's by this part: our own assumption. */
export const SCALE_SIGMA = 0.1;

/** How far a scene may stand from the sky, in stops: normal, one sigma. */
export const OFFSET_SIGMA = 3;
/** How far off the first guess of lamps may be, in stops. */
export const LAMPS_SIGMA = 3;

/** How sure the model alone is of a scene, in stops: our own assumption. */
const sigmaAlone = ({ cloud }: SkyTable): number => (cloud === null ? 3 : 2);

/**
 * A scene that nobody has metered, with a stated offset from the sky and stated lamps (as the scene
 * shows them, offset included) if something is known of them.
 */
export function assumedScene(sky: SkyTable, offset = 0 as Stops, lamps: Ev | null = null): Scene {
  return {
    sky,
    from: 'model',
    offsets: [{ meter: '', stops: offset }],
    meter: null,
    scale: 1,
    pivot: 0 as Ev,
    lamps: lamps === null ? null : ((lamps - offset) as Ev),
    covariance: [
      [sigmaAlone(sky) ** 2, 0, 0],
      [0, SCALE_SIGMA ** 2, 0],
      [0, 0, 0],
    ],
    scatter: null,
    readings: [],
    contradictions: [],
  };
}

/** A level before any offset, and how it moves with k and with the lamps. */
export interface Level {
  readonly ev: number;
  readonly byScale: number;
  readonly byLamps: number;
}

/** The level that a sky gives under a scene's law. */
export function levelUnder(
  { scale, pivot, lamps }: Pick<Scene, 'scale' | 'pivot' | 'lamps'>,
  sky: Ev,
): Level {
  const natural = (sky + (scale - 1) * (sky - pivot)) as Ev;
  const ev = withLamps(natural, lamps);
  const skyShare = 2 ** (natural - ev);
  return { ev, byScale: skyShare * (sky - pivot), byLamps: 1 - skyShare };
}

/** The level of a scene at an instant; null where its sky is not known. */
export function levelAt(scene: Scene, at: UtcMs): Level | null {
  const sky = skyEv(scene.sky, at);
  return sky === null ? null : levelUnder(scene, sky);
}

/** Where the offset of the scene's own meter stands among the offsets. */
export const ownMeter = ({ offsets, meter }: Scene): number =>
  Math.max(
    0,
    offsets.findIndex((each) => each.meter === meter),
  );

/** A level as the scene's own meter shows it, EV at ISO 100. */
export const seenEv = (scene: Scene, level: Level): Ev =>
  ((scene.offsets[ownMeter(scene)]?.stops ?? 0) + level.ev) as Ev;
