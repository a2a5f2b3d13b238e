import { restWayOf } from '../../../plan/restWays.ts';
import type { HeatWords } from '../../words/planHeat.ts';
import type { PlanView } from './usePlanView.ts';

/** What a plan does about heat, in a few words. */
export function restWords({ heat, format }: HeatWords, { plan, prepared }: PlanView): string {
  const way = restWayOf(plan);
  if (way === 'warm-up' || plan.rest.kind === 'none')
    return heat.inShort[way === 'warm-up' ? way : 'none'];
  const { rest } = plan;
  return rest.kind === 'limit'
    ? heat.inShort.limit(prepared.timeline.rests.length, prepared.timeline.weighed.length)
    : heat.inShort.thumb(format.plain(rest.rule.factor), format.duration(rest.rule.offUpToS));
}
