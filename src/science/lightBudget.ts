import { stopsBetweenFNumbers, stopsBetweenIsos, stopsBetweenTimes } from './exposure.ts';
import { areaStops, type SensorFormat } from './formats.ts';
import {
  addStops,
  type Decibels,
  type FNumber,
  type Iso,
  type Seconds,
  type Stops,
} from './units.ts';

/*
 * What two frames differ by, cause by cause. Every figure is frame 1 -> frame 2: positive when
 * frame 2 got more light or renders brighter. The brightening to apply to frame 2 is the negative.
 */

/** All that decides the light per area of a frame, apart from the scene. */
export interface LightPath {
  readonly n: FNumber;
  readonly t: Seconds;
  /** Light the glass takes, zero or more. A T-number in `n` already holds it: then zero. */
  readonly glassLoss: Stops;
  /** Light a filter takes, zero or more. */
  readonly filterLoss: Stops;
  /** Light lost by focusing close, zero or more. */
  readonly extensionLoss: Stops;
}

/** A light path with the speed at which it is rendered. */
export interface Rendering extends LightPath {
  readonly s: Iso;
  /** How much brighter the body renders than its marked ISO says. */
  readonly isoOffset: Stops;
}

/** The causes of a difference in light per area, in stops. */
export interface LightCauses {
  readonly aperture: Stops;
  readonly time: Stops;
  readonly glass: Stops;
  readonly filter: Stops;
  readonly extension: Stops;
  /** The scene's change from mid-exposure to mid-exposure; negative at dusk. */
  readonly fade: Stops;
}

const between = (first: Stops, second: Stops): Stops => (first - second) as Stops;

/** The difference in light per area from frame 1 to frame 2, cause by cause. */
export const lightCauses = (first: LightPath, second: LightPath, fade: Stops): LightCauses => ({
  aperture: stopsBetweenFNumbers(first.n, second.n),
  time: stopsBetweenTimes(first.t, second.t),
  glass: between(first.glassLoss, second.glassLoss),
  filter: between(first.filterLoss, second.filterLoss),
  extension: between(first.extensionLoss, second.extensionLoss),
  fade,
});

/** The difference in light per area from frame 1 to frame 2, in stops. */
export const exposureDifference = (first: LightPath, second: LightPath, fade: Stops): Stops =>
  addStops(...Object.values(lightCauses(first, second, fade)));

/** The difference in brightness as rendered: light per area, marked ISO and ISO offset. */
export const renderedDifference = (first: Rendering, second: Rendering, fade: Stops): Stops =>
  addStops(
    exposureDifference(first, second, fade),
    stopsBetweenIsos(first.s, second.s),
    between(second.isoOffset, first.isoOffset),
  );

/** The brightening in stops that brings frame 2 to frame 1: minus the rendered difference. */
export const evenUp = (first: Rendering, second: Rendering, fade: Stops): Stops =>
  between(0 as Stops, renderedDifference(first, second, fade));

/** The difference in light over the whole sensor: light per area and the ratio of the areas. */
export const totalLightDifference = (
  first: LightPath & { readonly format: SensorFormat },
  second: LightPath & { readonly format: SensorFormat },
  fade: Stops,
): Stops =>
  addStops(exposureDifference(first, second, fade), areaStops(first.format, second.format));

/**
 * What a difference in total light does to the signal-to-noise ratio, 10 log10(2) dB a stop (power
 * ratio), where photon noise is all there is.
 */
export const photonNoiseGain = (totalLight: Stops): Decibels =>
  (10 * Math.log10(2) * totalLight) as Decibels;
