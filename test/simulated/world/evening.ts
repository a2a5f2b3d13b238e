import {
  degrees,
  type Ev,
  type Lux,
  later,
  type Seconds,
  type Stops,
  type UtcMs,
  utc,
} from '../../../src/science/units.ts';
import { chanceOf } from './chance.ts';
import { type Drift, driftOf, type Weather } from './drift.ts';
import { moonLight, moonOver, type Spot, skyLight, sunAltitude } from './heavens.ts';
import { type Warming, warmingOf } from './warmth.ts';

/*
 * An evening of the simulated world: a place, a date, how its scene follows the sky, its clouds, its
 * lamps, its bodies. It knows the true light at every instant.
 */

export interface Evening {
  readonly seed: number;
  readonly spot: Spot;
  /** Solar noon, to a quarter of an hour. */
  readonly noonMs: UtcMs;
  readonly weather: Weather;
  /** The true light of the scene, EV at ISO 100. */
  readonly scene: (at: UtcMs) => Ev;
  /** How each of its bodies warms. */
  readonly warming: (letter: string) => Warming;
}

const DAY_S = 86_400;
const FIRST_DAY = utc(Date.UTC(2026, 0, 1));
const DAYS = 3 * 365;
/** An evening in which a list can be walked: the sun sets, and gets as low as this. */
const DARK = -11;

/** Where and when; drawn anew until the evening has a dusk. */
function whereAndWhen(seed: number): { readonly spot: Spot; readonly noonMs: UtcMs } {
  const chance = chanceOf(seed, 'where and when');
  for (;;) {
    const spot = { lat: degrees(chance.between(-58, 58)), lon: degrees(chance.between(-180, 180)) };
    const day = Math.floor(chance.between(0, DAYS));
    const noonMs = later(FIRST_DAY, DAY_S * day + DAY_S / 2 - 240 * spot.lon);
    if (sunAltitude(noonMs, spot) > 0 && sunAltitude(later(noonMs, DAY_S / 2), spot) < DARK) {
      return { spot, noonMs };
    }
  }
}

/** An incident meter's EV at ISO 100: C = 250. */
const evOf = (light: Lux): number => Math.log2(light / 2.5);

/** About the end of civil twilight a scene stands off the sky by its offset; from there its own fade counts. */
const PIVOT_EV = 0.5;

/** How far lamps stand below or above EV -2.5, where they light a scene at all: one evening in six. */
const LAMPS = { onceIn: 6, from: -4, to: -1 } as const;

/**
 * One evening. A scene stands off its sky by a stop or so, fades by a scale of its own (1 +- 0.08),
 * and cloud drifts over it.
 */
export function eveningOf(seed: number): Evening {
  const { spot, noonMs } = whereAndWhen(seed);
  const chance = chanceOf(seed, 'scene');
  const weather = chance.oneOf<Weather>(['quiet', 'quiet', 'veils', 'veils', 'broken']);
  const offset = chance.normal();
  const scale = 1 + 0.08 * chance.normal();
  const lamps = chance.onceIn(LAMPS.onceIn) ? chance.between(LAMPS.from, LAMPS.to) : null;
  // From an hour or two before sunset at the earliest.
  const drift: Drift = driftOf(chanceOf(seed, 'clouds'), weather, later(noonMs, 2 * 3600));
  const scene = (at: UtcMs): Ev => {
    const light = skyLight(sunAltitude(at, spot)) + moonLight(moonOver(at, spot));
    const own = offset + PIVOT_EV + scale * (evOf(light as Lux) - PIVOT_EV) + drift(at);
    return (lamps === null ? own : Math.log2(2 ** own + 2 ** lamps)) as Ev;
  };
  return {
    seed,
    spot,
    noonMs,
    weather,
    scene,
    warming: (letter) => warmingOf(chanceOf(seed, `body ${letter}`)),
  };
}

const STEP_S = 5;

/** The mean light over an exposure as it really ran, in stops above EV 0. */
export function lightOver({ scene }: Evening, openedMs: UtcMs, t: Seconds): Stops {
  const steps = Math.max(4, Math.ceil(t / STEP_S));
  let sum = 0;
  for (let step = 0; step < steps; step += 1) {
    sum += 2 ** scene(later(openedMs, (t * (step + 0.5)) / steps));
  }
  return Math.log2(sum / steps) as Stops;
}
