import { moonPhase, moonPosition, sunPosition } from './ephemeris.ts';
import { interpolate, type Steps } from './interpolation.ts';
import type { Place } from './place.ts';
import type { Degrees, UtcMs } from './units.ts';

/** How sun and moon move over a place between two instants; outside of them nothing is known. */
export interface SkyPath {
  readonly from: UtcMs;
  readonly to: UtcMs;
  /** Airless altitude of the sun's centre. */
  readonly sunAltitude: (at: UtcMs) => Degrees;
  /** Airless topocentric altitude of the moon's centre. */
  readonly moonAltitude: (at: UtcMs) => Degrees;
  readonly moonPhaseAngle: (at: UtcMs) => Degrees;
  /** Equatorial horizontal parallax of the moon. */
  readonly moonParallax: (at: UtcMs) => Degrees;
}

/**
 * Positions are asked for this often; between them a cubic errs by less than 0.0005 degree, and by
 * 0.15 where a body turns sharply overhead, where a degree is 0.01 stop.
 */
const POSITION_STEP_MS = 5 * 60_000;
/** Phase and distance of the moon change slowly. */
const PHASE_STEP_MS = 60 * 60_000;

/** A quantity known at even steps that reach one step past both ends of a stretch. */
function stepsOver(from: UtcMs, to: UtcMs, stepMs: number, quantity: (at: UtcMs) => number): Steps {
  const startMs = from - stepMs;
  const count = Math.ceil((to - from) / stepMs) + 3;
  const values = Array.from({ length: count }, (_, step) =>
    quantity((startMs + step * stepMs) as UtcMs),
  );
  return { startMs, stepMs, values };
}

const read =
  (steps: Steps) =>
  (at: UtcMs): Degrees => {
    const value = interpolate(steps, at);
    if (value === null) throw new RangeError('instant-off-the-path');
    return value as Degrees;
  };

/** Follows sun and moon over a place: two calls of the library every five minutes. */
export function skyPath(place: Place, from: UtcMs, to: UtcMs): SkyPath {
  const positions = (body: typeof sunPosition) =>
    read(stepsOver(from, to, POSITION_STEP_MS, (at) => body(at, place).altitude));
  const phases = new Map<UtcMs, ReturnType<typeof moonPhase>>();
  const phaseAt = (at: UtcMs) => {
    const phase = phases.get(at) ?? moonPhase(at);
    phases.set(at, phase);
    return phase;
  };
  return {
    from,
    to,
    sunAltitude: positions(sunPosition),
    moonAltitude: positions(moonPosition),
    moonPhaseAngle: read(stepsOver(from, to, PHASE_STEP_MS, (at) => phaseAt(at).phaseAngle)),
    moonParallax: read(stepsOver(from, to, PHASE_STEP_MS, (at) => phaseAt(at).parallax)),
  };
}
