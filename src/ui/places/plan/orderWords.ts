import { DEFAULT_PASSES, runsBackwards } from '../../../plan/passes.ts';
import type { OrderName } from '../../../plan/plan.ts';
import type { PlanWords } from '../../words/plan.ts';
import type { PlanView } from './usePlanView.ts';

/** The name of an order: 'A B B A' in the letters of the plan's rigs, or words. */
export function orderWords({ plan }: PlanWords, view: PlanView, order: OrderName): string {
  if (order === 'rig-by-rig' || order === 'side-by-side') return plan.orders[order];
  const known = view.plan.rigs.flatMap((rig) => view.rig(rig)?.rig.letter ?? []);
  const letters = known.length > 0 ? known : ['A', 'B'];
  return Array.from({ length: DEFAULT_PASSES[order] }, (_, index) =>
    runsBackwards(order, index + 1) ? letters.toReversed() : letters,
  )
    .flat()
    .join(' ');
}
