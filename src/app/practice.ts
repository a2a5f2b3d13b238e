import { thingsOf } from '../gear/edit.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { PlanId } from '../plan/ids.ts';
import { PRACTICE_PLAN_ID, practicePlan } from '../plan/practicePlan.ts';
import type { KeptGear } from './keptGear.ts';
import type { KeptPlans } from './keptPlans.ts';
import type { SiteDesk } from './sites.ts';

/** Where the practice outing is put. */
export interface PracticeWorld {
  readonly gear: Pick<KeptGear, 'gear' | 'apply'>;
  readonly plans: Pick<KeptPlans, 'plans' | 'put'>;
  readonly sites: Pick<SiteDesk, 'sites' | 'inUse' | 'put' | 'use'>;
}

/**
 * Puts what of the practice outing is not here among the rest: its invented gear, site and plan.
 *
 * @returns its plan.
 */
export function addPractice({ gear, plans, sites }: PracticeWorld): PlanId {
  const here = new Set(thingsOf(gear.gear.peek()).map(({ value }) => value.id as string));
  const missing = thingsOf(PRACTICE_GEAR).filter(({ value }) => !here.has(value.id));
  if (missing.length > 0) gear.apply(missing.map((thing) => ({ thing, deleted: false })));
  if (!sites.sites.peek().some(({ id }) => id === PRACTICE_SITE.id)) {
    sites.put(PRACTICE_SITE, false);
    if (sites.inUse.peek() === null) sites.use(PRACTICE_SITE.id);
  }
  if (!plans.plans.peek().some(({ id }) => id === PRACTICE_PLAN_ID)) {
    plans.put(practicePlan(), false);
  }
  return PRACTICE_PLAN_ID;
}
