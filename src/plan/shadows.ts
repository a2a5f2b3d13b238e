import type { Body } from '../gear/body.ts';
import type { Exact } from '../gear/settings.ts';
import { electronsPerPixel, USUAL_RESPONSE } from '../science/electrons.ts';
import { area } from '../science/formats.ts';
import { heatFactor } from '../science/heat.ts';
import { focalPlaneExposure, luminanceFromEv100, qFactor, USUAL_K } from '../science/metering.ts';
import type { PixelCounts } from '../science/noise.ts';
import { must } from '../science/refusal.ts';
import {
  type Doublings,
  type Electrons,
  type ElectronsPerSecond,
  electrons,
} from '../science/sensorUnits.ts';
import {
  degrees,
  type Ev,
  type LuxSeconds,
  magnification,
  ratio,
  type SquareMicrometres,
  type Stops,
  stops,
  transmittance,
} from '../science/units.ts';
import { formatOf } from './framing.ts';

/** How far under the mid-tone shadows are taken to lie (our choice). */
export const SHADOWS_BELOW: Stops = stops(4);
/** The read noise of a pixel of a body that nobody has measured (from memory). */
export const USUAL_READ_NOISE: Electrons = electrons(3);

/** ISO 12232: glass, vignetting and field angle of a usual lens. */
const USUAL_Q = must(qFactor(transmittance(0.9), transmittance(0.98), degrees(10)));

/** What is known or taken of a frame's shadows. */
export interface Shadows {
  readonly scene: Ev;
  /** Under the mid-tone that a meter would see. */
  readonly below: Stops;
  readonly read: Electrons;
  /** Of a rested pixel. */
  readonly dark: ElectronsPerSecond;
  readonly heat: Doublings;
}

/**
 * What a pixel in the shadows of a frame holds, in electrons: the limit on heat follows from it. The
 * response of pixels is taken as usual (from memory, 1200 to 4000 e per µm² and lx s).
 */
export function shadowCounts(body: Body, { n, t }: Exact, of: Shadows): PixelCounts {
  const midtone = focalPlaneExposure({
    luminance: luminanceFromEv100(of.scene, USUAL_K),
    n,
    t,
    q: USUAL_Q,
    flare: 0 as LuxSeconds,
    magnification: magnification(0),
    pupil: ratio(1),
  });
  const pixelArea = (1e6 * area(formatOf(body))) / (body.pixelsWide * body.pixelsHigh);
  return {
    signal: electronsPerPixel(
      (midtone * 2 ** -of.below) as LuxSeconds,
      pixelArea as SquareMicrometres,
      USUAL_RESPONSE,
    ),
    dark: electrons(of.dark * t * heatFactor(of.heat)),
    read: of.read,
  };
}
