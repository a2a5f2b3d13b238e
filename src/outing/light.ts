import { fitScene } from '../light/fit.ts';
import { forecastAt, nineInTen, READING_EVERY_MIN } from '../light/forecast.ts';
import { evOfReading } from '../light/reading.ts';
import type { Scene } from '../light/scene.ts';
import { type Aim, missAt, rightStretches } from '../light/windows.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import type { PlanSet } from '../plan/plan.ts';
import { ev, later, minutesBetween, type Stops, type UtcMs } from '../science/units.ts';
import { perState } from './perState.ts';
import type { RunState } from './state.ts';

/**
 * The light of an outing: its sky, moved and bent by its readings. Null where the sky is not known.
 */
export const sceneOf = perState(
  ({ sky, readings }): Scene | null =>
    sky &&
    fitScene(
      sky,
      readings.map(({ at, meter, reading }) => ({
        at: at.wallMs as UtcMs,
        meter,
        ev100: evOfReading(reading),
      })),
    ),
);

/** What the next frames of a list stand on: their set, and its reference's frame. */
export interface SetInHand {
  readonly set: PlanSet;
  readonly reference: PlannedFrame;
}

/** The set of the next frame that looks at the light; null if there is none. */
export function setInHand({ plan, queue, planned }: RunState): SetInHand | null {
  for (const { set: id } of queue) {
    const set = plan.sets.find((candidate) => candidate.id === id);
    if (set?.kind !== 'light') continue;
    const isReference = (frame: PlannedFrame): boolean =>
      frame.set === id && frame.rig === set.reference;
    const reference = queue.find(isReference) ?? [...planned.values()].findLast(isReference);
    return reference ? { set, reference } : null;
  }
  return null;
}

/** How the set in hand stands in the light. */
export type SetInLight =
  /** It comes out right for so many minutes still; nine times in ten between the other two. */
  | {
      readonly how: 'fits';
      readonly minutes: number;
      readonly least: number;
      /** Null = longer than anybody looks ahead. */
      readonly most: number | null;
    }
  /** It comes out too bright or too dark; positive = too bright. */
  | { readonly how: 'off'; readonly miss: Stops; readonly within: Stops };

/** From how few minutes on the light is said to run away, and how far is looked ahead (our choice). */
const SAID_FROM_MIN = 15;
const AHEAD_MIN = 30;

/**
 * How long the set in hand still comes out within the plan's tolerance, by when an exposure starts;
 * or how far it is off. Null if the light does not run away from it, or nobody knows.
 */
export function setInLight(
  scene: Scene,
  { set, reference }: SetInHand,
  tolerance: Stops,
  now: UtcMs,
): SetInLight | null {
  const forecast = forecastAt(scene, now);
  const aim = { exact: reference.exact, targetOffset: set.targetOffset };
  const miss = missAt(scene, aim, now);
  if (!forecast || miss === null) return null;
  const within = nineInTen(forecast.sigma);
  if (Math.abs(miss) > tolerance) return { how: 'off', miss, within };
  const minutes = minutesLeft(scene, aim, tolerance, now);
  if (minutes === null || minutes > SAID_FROM_MIN) return null;
  // In light that is darker than thought an exposure stands as if it had to come out brighter.
  const [darker, brighter] = [within, -within].map((by) =>
    minutesLeft(scene, { ...aim, targetOffset: (aim.targetOffset + by) as Stops }, tolerance, now),
  );
  const ends = [darker ?? null, brighter ?? null];
  return {
    how: 'fits',
    minutes,
    least: Math.min(...ends.map((end) => end ?? minutes)),
    most: ends.includes(null) ? null : Math.max(...ends.map((end) => end ?? minutes)),
  };
}

/**
 * Whole minutes until an exposure may no longer start, also if it may not start yet; null = longer
 * than is looked ahead.
 */
function minutesLeft(scene: Scene, aim: Aim, tolerance: Stops, now: UtcMs): number | null {
  const end = later(now, AHEAD_MIN * 60);
  const [first] = rightStretches(scene, aim, tolerance, { fromMs: now, toMs: end });
  if (first) return first.toMs >= end ? null : Math.floor(minutesBetween(now, first.toMs));
  const [before, after] = [missAt(scene, aim, now), missAt(scene, aim, end)];
  return Math.abs(after ?? 0) < Math.abs(before ?? 0) ? null : 0;
}

/** Below this a built-in meter commonly gives up (common practice, no source). */
const METERS_GIVE_UP = ev(-3);

/**
 * What the app would like to be told of the light: a reading where there was none for ten minutes,
 * a test frame where it is too dark for a meter. Null if nothing.
 */
export function wantedReading(
  scene: Scene,
  { readings }: Pick<RunState, 'readings'>,
  now: UtcMs,
): 'reading' | 'test-frame' | null {
  const last = readings.at(-1)?.at.wallMs as UtcMs | undefined;
  if (last !== undefined && minutesBetween(last, now) < READING_EVERY_MIN) return null;
  const forecast = forecastAt(scene, now);
  if (!forecast) return null;
  return forecast.ev100 < METERS_GIVE_UP ? 'test-frame' : 'reading';
}
