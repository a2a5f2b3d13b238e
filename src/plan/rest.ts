import type { ThermalModel } from '../science/heat.ts';
import { isRefusal } from '../science/refusal.ts';
import {
  midHeatAfterRest,
  type NextFrame,
  restedMidHeat,
  restNeeded,
} from '../science/sensorRest.ts';
import type { Doublings } from '../science/sensorUnits.ts';
import type { Ratio, Seconds, StopsPerMinute } from '../science/units.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import { heatAbove } from './heatLimit.ts';
import type { RestRule } from './plan.ts';
import { type RestWorth, restWorth } from './restWorth.ts';

/**
 * The rest in seconds that a sensor still owes after an exposure, by the trade's rule of thumb:
 * rest as long as you exposed (common practice, no source). It makes a rhythm that can be
 * repeated; it does not bring a sensor back to rested.
 *
 * @param exposed the exposure itself, without an in-camera dark frame.
 * @param sinceEnd what has passed since the sensor stopped working, a swap included.
 */
export function restOwed(rule: RestRule, exposed: Seconds, sinceEnd: Seconds): Seconds {
  if (exposed <= rule.offUpToS) return 0 as Seconds;
  const whole = Math.min(exposed * rule.factor, rule.longestS);
  return Math.max(0, whole - sinceEnd) as Seconds;
}

/** A rig that is to make a frame. */
export interface BeforeFrame {
  readonly model: ThermalModel;
  /** When a rest would begin. */
  readonly heat: Doublings;
  /** What it does while it rests. */
  readonly mode: 'off' | 'idle';
  readonly next: NextFrame;
}

/** A rest until a frame is inside the limit, with what it wins and costs. */
export interface LimitRest {
  /** 0 where none is needed, or where no rest in this mode is enough. */
  readonly s: Seconds;
  /** The frame's dark current over a rested body's first such frame without the rest, in stops. */
  readonly without: Doublings;
  /** And with it. */
  readonly with: Doublings;
  /** Null where the fade is not known: nobody can say then whether it pays. */
  readonly worth: RestWorth | null;
}

/**
 * The rest that brings the next frame inside a ratio of a rested body's first such frame, in closed
 * form.
 *
 * @param longest it is never longer.
 * @param fade at that time; null = not known.
 */
export function restByLimit(
  { model, heat, mode, next }: BeforeFrame,
  limit: Ratio,
  longest: Seconds,
  fade: StopsPerMinute | null,
): LimitRest {
  const rested = restedMidHeat(model, next);
  const needed = restNeeded(model, heat, mode, next, heatAbove(rested, limit));
  // Where no rest is enough, one would only cost light.
  const s = (isRefusal(needed) ? 0 : Math.min(needed, longest)) as Seconds;
  const over = (rest: Seconds): Doublings =>
    (midHeatAfterRest(model, heat, mode, rest, next) - rested) as Doublings;
  const without = over(0 as Seconds);
  const left = over(s);
  const worth = fade === null ? null : restWorth(s, fade, { without, with: left }, USUAL_WEIGHTS);
  return { s, without, with: left, worth };
}

/** Whether a rest is to be proposed: there is one, and it is not known to cost more than it wins. */
export const isProposed = ({ s, worth }: LimitRest): boolean => s > 0 && (worth?.pays ?? true);
