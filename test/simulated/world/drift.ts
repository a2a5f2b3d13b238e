import { minutesBetween, type Stops, type UtcMs } from '../../../src/science/units.ts';
import type { Chance } from './chance.ts';

/*
 * Cloud that drifts: slow waves, patches that a gust brings and takes away, now and then a bank that
 * stays. Their sizes are our own assumption: together they change the light over ten minutes by about
 * what the handbook assumes of a sky, 0.1 stop under a clear one and 0.3 under broken cloud (root of
 * the mean square), but by no random walk.
 */

/** What the sky of an evening does. */
export type Weather = 'quiet' | 'veils' | 'broken';

/** How far the waves swing (one deviation), and how many minutes pass between two gusts. */
const WEATHERS = {
  quiet: { waves: 0.05, gusts: 480 },
  veils: { waves: 0.1, gusts: 120 },
  broken: { waves: 0.2, gusts: 40 },
} as const satisfies Readonly<Record<Weather, object>>;

const WAVES = 12;
/** From a puff to half an evening, in minutes. */
const PERIODS = { shortest: 4, longest: 120 } as const;
/** How much more a long wave swings than a short one: by this power of its period. */
const STEEPNESS = 0.75;
/** So much of an evening is filled with gusts, in minutes. */
const SPAN = 720;

interface Wave {
  readonly perMinute: number;
  readonly phase: number;
  readonly swing: number;
}

/** A patch of cloud that passes, or the edge of a bank that stays. */
interface Patch {
  readonly at: number;
  readonly minutes: number;
  readonly depth: number;
  readonly stays: boolean;
}

/** What the cloud does to the light at an instant, in stops. */
export type Drift = (at: UtcMs) => Stops;

function wavesOf(chance: Chance, deviation: number): readonly Wave[] {
  const waves = Array.from({ length: WAVES }, (_, i) => {
    const { shortest, longest } = PERIODS;
    const period = shortest * (longest / shortest) ** ((i + chance.between(0, 1)) / WAVES);
    return {
      perMinute: (2 * Math.PI) / period,
      phase: chance.between(0, 2 * Math.PI),
      swing: period ** STEEPNESS * Math.abs(chance.normal()),
    };
  });
  const power = waves.reduce((sum, { swing }) => sum + swing ** 2 / 2, 0);
  return waves.map((wave) => ({ ...wave, swing: (wave.swing * deviation) / Math.sqrt(power) }));
}

function patchesOf(chance: Chance, gusts: number): readonly Patch[] {
  const patches: Patch[] = [];
  for (let at = -gusts * Math.log(1 - chance.between(0, 1)); at < SPAN; ) {
    patches.push({
      at,
      minutes: chance.between(1, 6),
      depth: -chance.between(0.1, 0.7),
      stays: chance.onceIn(6),
    });
    at -= gusts * Math.log(1 - chance.between(0, 1));
  }
  return patches;
}

/** The drift of an evening whose first minute is given. */
export function driftOf(chance: Chance, weather: Weather, from: UtcMs): Drift {
  const { waves: deviation, gusts } = WEATHERS[weather];
  const waves = wavesOf(chance, deviation);
  const patches = patchesOf(chance, gusts);
  return (at) => {
    const minute = minutesBetween(from, at);
    let sum = 0;
    for (const { perMinute, phase, swing } of waves)
      sum += swing * Math.sin(perMinute * minute + phase);
    for (const patch of patches) {
      const x = (minute - patch.at) / patch.minutes;
      sum += patch.depth * (patch.stays ? 1 / (1 + Math.exp(-3 * x)) : Math.exp(-(x ** 2)));
    }
    return sum as Stops;
  };
}
