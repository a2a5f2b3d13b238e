import {
  type HeatSegment,
  heatAfter,
  heatThrough,
  midExposureHeat,
  type ThermalModel,
} from './heat.ts';
import { isRefusal, type Refusal, refuse } from './refusal.ts';
import { type Doublings, doublings, parseRatioLimit } from './sensorUnits.ts';
import { duration, type Ratio, type Seconds } from './units.ts';

/*
 * How long a sensor must rest before a frame, in closed form, and what a rest leaves. Derived from
 * the model in heat.ts.
 */

/** A frame to come and the way to it. */
export interface NextFrame {
  readonly t: Seconds;
  /** What the body goes through between the end of the rest and the exposure; none, or being on. */
  readonly leadIn: readonly HeatSegment[];
}

/** At least so long after live view: a handbook page on cooling down between long exposures. */
export const LEAST_REST_AFTER_LIVE_VIEW: Seconds = duration(30);

/** The highest heat at the end of a rest that keeps the middle of the next frame under a heat. */
export function highestAtRestEnd(model: ThermalModel, next: NextFrame, most: Doublings): Doublings {
  const { tau, plateaus } = model;
  const atStart = heatAfter(most, plateaus.exposing, -next.t / 2, tau);
  return next.leadIn.reduceRight(
    (heat, { mode, lasts }) => heatAfter(heat, plateaus[mode], -lasts, tau),
    atStart,
  );
}

/**
 * The time in seconds in which a body cools to a heat; 0 where it is no warmer. Refuses a heat that
 * it never gets down to in this mode ('never-cool-enough').
 */
export function coolingTime(
  { tau, plateaus }: ThermalModel,
  now: Doublings,
  mode: 'off' | 'idle',
  to: Doublings,
): Seconds | Refusal {
  if (now <= to) return 0 as Seconds;
  const plateau = plateaus[mode];
  if (to <= plateau) return refuse('never-cool-enough');
  return (tau * Math.log((now - plateau) / (to - plateau))) as Seconds;
}

/**
 * The rest in seconds that keeps the heat at the next mid-exposure at `most`; 0 where none is
 * needed. Refuses where no rest in this mode is enough ('never-cool-enough'): switch the body off,
 * or warm the partner up.
 *
 * @param now the heat when the rest begins.
 * @param mode what the body does while it rests: off, or idle where it must stay on.
 * @param most for example the partner's own heat at mid-exposure + log2 of the allowed ratio.
 */
export const restNeeded = (
  model: ThermalModel,
  now: Doublings,
  mode: 'off' | 'idle',
  next: NextFrame,
  most: Doublings,
): Seconds | Refusal => coolingTime(model, now, mode, highestAtRestEnd(model, next, most));

/** The heat at the next mid-exposure after a rest. */
export function midHeatAfterRest(
  model: ThermalModel,
  now: Doublings,
  mode: 'off' | 'idle',
  rest: Seconds,
  next: NextFrame,
): Doublings {
  const { tau, plateaus } = model;
  const atStart = next.leadIn.reduce(
    (heat, segment) => heatAfter(heat, plateaus[segment.mode], segment.lasts, tau),
    heatAfter(now, plateaus[mode], rest, tau),
  );
  return midExposureHeat(atStart, plateaus.exposing, next.t, tau);
}

/** The heat at mid-exposure of a rested body's first such frame. */
export const restedMidHeat = (model: ThermalModel, frame: NextFrame): Doublings =>
  midHeatAfterRest(model, doublings(0), 'off', duration(0), frame);

/**
 * The rest, switched off, after a rested body's frame that brings the dark current of its next such
 * frame within a ratio of the first's. Refuses a
 * ratio of 1 or less.
 */
export function restAfterRested(
  model: ThermalModel,
  frame: NextFrame,
  ratio: Ratio,
): Seconds | Refusal {
  const limit = parseRatioLimit(ratio);
  if (isRefusal(limit)) return limit;
  const { end } = heatThrough(model, doublings(0), [
    ...frame.leadIn,
    { mode: 'exposing', lasts: frame.t },
  ]);
  const most = (restedMidHeat(model, frame) + Math.log2(limit)) as Doublings;
  return restNeeded(model, end, 'off', frame, most);
}
