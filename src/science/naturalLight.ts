import { crossings } from './crossings.ts';
import { evFromIlluminance, USUAL_C } from './metering.ts';
import { moonIlluminance } from './moonIlluminance.ts';
import { lightPastRidge } from './ridge.ts';
import { skyIlluminance } from './skyIlluminance.ts';
import type { SkyPath } from './skyPath.ts';
import {
  type Degrees,
  type Ev,
  iso,
  type Lux,
  minutesBetween,
  type StopsPerMinute,
  type UtcMs,
} from './units.ts';

/**
 * The light of sun, sky, moon and natural night on level ground under a clear sky, in lx.
 *
 * @param ridge height of the terrain toward the sun in degrees; 0 cuts nothing
 */
export const naturalLight = (path: SkyPath, at: UtcMs, ridge: Degrees): Lux => {
  const sun = path.sunAltitude(at);
  const moon = moonIlluminance(
    path.moonAltitude(at),
    path.moonPhaseAngle(at),
    path.moonParallax(at),
  );
  return (skyIlluminance(sun) * lightPastRidge(sun, ridge) + moon) as Lux;
};

/** An incident meter's EV at ISO 100 under an illuminance, log2(lx / 2.5): C = 250. */
export const incidentEv = (light: Lux): Ev => evFromIlluminance(light, iso(100), USUAL_C);

/**
 * The mean fade of the clear sky alone, without moon, ridge and lamps, while the sun sinks from one
 * altitude to another on a path.
 *
 * @returns null if the sun does not sink through both.
 */
export function meanFadeThrough(
  { from, to, sunAltitude }: SkyPath,
  upper: Degrees,
  lower: Degrees,
): StopsPerMinute | null {
  const sinks = (altitude: Degrees): UtcMs | undefined =>
    crossings(sunAltitude, altitude, from, to).find(({ rising }) => !rising)?.at;
  const start = sinks(upper);
  const end = sinks(lower);
  if (start === undefined || end === undefined) return null;
  const faded = incidentEv(skyIlluminance(lower)) - incidentEv(skyIlluminance(upper));
  return (faded / minutesBetween(start, end)) as StopsPerMinute;
}
