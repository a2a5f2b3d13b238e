import type { Seconds } from '../science/units.ts';
import type { DarkFrame } from './body.ts';

/**
 * How long the body keeps its shutter closed for a frame of its own after an
 * exposure: as long again by its rule, or zero.
 */
export function darkFrameS(rule: DarkFrame, exposed: Seconds): Seconds {
  const takesOne = rule.kind === 'always' || (rule.kind === 'from' && exposed >= rule.fromS);
  return (takesOne ? exposed : 0) as Seconds;
}
