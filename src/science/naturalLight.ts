import { evFromIlluminance, USUAL_C } from './metering.ts';
import { moonIlluminance } from './moonIlluminance.ts';
import { lightPastRidge } from './ridge.ts';
import { skyIlluminance } from './skyIlluminance.ts';
import type { SkyPath } from './skyPath.ts';
import { type Degrees, type Ev, iso, type Lux, type UtcMs } from './units.ts';

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
