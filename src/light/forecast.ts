import {
  type Ev,
  later,
  minutesBetween,
  type Seconds,
  type Stops,
  type UtcMs,
} from '../science/units.ts';
import { type Level, levelAt, ownMeter, type Scene, seenEv } from './scene.ts';
import { wanderPerMinute } from './wander.ts';

/** An exposure in time. */
export interface Exposure {
  readonly startMs: UtcMs;
  readonly t: Seconds;
}

/** The EV of a scene at ISO 100 and how sure it is: one sigma, in stops. */
export interface Forecast {
  readonly ev100: Ev;
  readonly sigma: Stops;
}

/** Half the width of the interval that holds nine times in ten. */
export const nineInTen = (sigma: Stops): Stops => (1.6 * sigma) as Stops;

/**
 * A new reading is asked for when the last one is so many minutes old, and a frame this near to one
 * is taken to be metered: readings fix the present, half an hour ahead stays a stop wide.
 */
export const READING_EVERY_MIN = 10;

/** Minutes from an instant to the nearest reading that counts; null without readings. */
function minutesToReading({ readings }: Scene, at: UtcMs): number | null {
  const away = readings
    .filter(({ weight }) => weight > 0)
    .map((reading) => Math.abs(minutesBetween(reading.at, at)));
  return away.length === 0 ? null : Math.min(...away);
}

/** A quadratic form over the covariance. */
const variance = (covariance: readonly (readonly number[])[], slopes: readonly number[]): number =>
  covariance.reduce(
    (sum, row, i) =>
      sum + (slopes[i] ?? 0) * row.reduce((inner, each, j) => inner + each * (slopes[j] ?? 0), 0),
    0,
  );

/** A level seen by the scene's meter, with its uncertainty. */
function seen(scene: Scene, level: Level, at: UtcMs): Forecast {
  const own = ownMeter(scene);
  const slopes = [
    ...scene.offsets.map((_, i) => (i === own ? 1 : 0)),
    // Without readings the offset's own width is meant for any time of the evening.
    scene.from === 'model' ? 0 : level.byScale,
    level.byLamps,
  ];
  const wandered = wanderPerMinute(scene) * (minutesToReading(scene, at) ?? 0);
  const sigma = Math.sqrt(variance(scene.covariance, slopes) + wandered) as Stops;
  return { ev100: seenEv(scene, level), sigma };
}

/**
 * The scene's EV at an instant, as the meter of the newest reading would show it. The width grows
 * with the time from the nearest reading and with the distance along the fade.
 *
 * @returns null where the sky is not known.
 */
export function forecastAt(scene: Scene, at: UtcMs): Forecast | null {
  const level = levelAt(scene, at);
  return level && seen(scene, level, at);
}

/** Within a panel of Simpson's rule even the steepest fade keeps the error below 0.001 stop. */
const PANEL_S = 60;

/**
 * The mean light over an exposure as a level: not the light at its middle, of which a long exposure
 * at dusk collects more. Mean in light, as a sensor does; slopes weighted alike.
 */
export function meanLevel(scene: Scene, { startMs, t }: Exposure): Level | null {
  const panels = Math.ceil(t / PANEL_S);
  const nodes = 2 * panels;
  const levels: { readonly level: Level; readonly weight: number }[] = [];
  for (let node = 0; node <= nodes; node += 1) {
    const level = levelAt(scene, later(startMs, (t * node) / nodes));
    if (!level) return null;
    levels.push({ level, weight: node === 0 || node === nodes ? 1 : node % 2 === 1 ? 4 : 2 });
  }
  // Counted from the highest, so that no power of two runs out of range.
  const top = Math.max(...levels.map(({ level }) => level.ev));
  const light = levels.map(({ level, weight }) => weight * 2 ** (level.ev - top));
  const total = light.reduce((sum, each) => sum + each, 0);
  const mean = (slope: (level: Level) => number): number =>
    levels.reduce((sum, { level }, i) => sum + ((light[i] ?? 0) / total) * slope(level), 0);
  return {
    ev: top + Math.log2(total / (6 * panels)),
    byScale: mean(({ byScale }) => byScale),
    byLamps: mean(({ byLamps }) => byLamps),
  };
}
