import type { Doublings } from '../science/sensorUnits.ts';
import type { Seconds, Stops, StopsPerMinute } from '../science/units.ts';
import type { CostWeights } from './costWeights.ts';

/** What a rest wins and what it costs, both as stops of light by which a pair is unfair. */
export interface RestWorth {
  readonly wins: Stops;
  readonly costs: Stops;
  /** Whether it is to be proposed. */
  readonly pays: boolean;
}

/**
 * Whether a rest wins more than the fade it costs.
 *
 * @param rest how long it lasts beyond what passes anyway.
 * @param fade at that time.
 * @param heat the pair's heat line without the rest and with it, in stops of dark current.
 */
export function restWorth(
  rest: Seconds,
  fade: StopsPerMinute,
  heat: { readonly without: Doublings; readonly with: Doublings },
  { heatPerStop, fadePerStop, wallPerMinute }: CostWeights,
): RestWorth {
  const minutes = rest / 60;
  const wins = heatPerStop * (Math.abs(heat.without) - Math.abs(heat.with));
  const costs = (fadePerStop * Math.abs(fade) + wallPerMinute) * minutes;
  return { wins: wins as Stops, costs: costs as Stops, pays: wins > costs };
}
