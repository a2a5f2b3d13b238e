import type { Seconds } from '../science/units.ts';
import type { RestRule } from './plan.ts';

/**
 * The rest in seconds that a sensor still owes after an exposure, by the trade's rule of thumb:
 * rest as long as you exposed (common practice, no source). It makes a rhythm that can be
 * repeated; it does not bring a sensor back to rested.
 *
 * @param exposed the exposure itself, without an in-camera dark frame.
 * @param sinceEnd what has passed since the sensor stopped working, a swap included.
 */
export function restOwed(rule: RestRule, exposed: Seconds, sinceEnd: Seconds): Seconds {
  if (!rule.on || exposed <= rule.offUpToS) return 0 as Seconds;
  const whole = Math.min(exposed * rule.factor, rule.longestS);
  return Math.max(0, whole - sinceEnd) as Seconds;
}
