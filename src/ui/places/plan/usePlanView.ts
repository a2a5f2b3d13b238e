import type { RigId } from '../../../gear/ids.ts';
import { type Assembled, assemble } from '../../../gear/rig.ts';
import type { PlanId, SetId } from '../../../plan/ids.ts';
import type { Plan, PlanSet } from '../../../plan/plan.ts';
import type { Prepared } from '../../../plan/prepare.ts';
import { useApp } from '../../shell/useApp.ts';
import { type InLight, useEvening } from './useEvening.ts';

/** A plan with what it comes to on the gear, as the screens of this place need it. */
export interface PlanView {
  readonly plan: Plan;
  /** With the fade that is predicted, as soon as the light is worked out. */
  readonly prepared: Prepared;
  readonly inLight: InLight;
  /** Null if the rig is no longer in Gear. */
  readonly rig: (id: RigId) => Assembled | null;
  readonly set: (id: SetId) => PlanSet | undefined;
}

/** The plan as it is now; null if it is gone. */
export function usePlanView(id: PlanId): PlanView | null {
  const { plans, gear } = useApp();
  const plan = plans.plans.value.find((candidate) => candidate.id === id);
  const prepared = plans.prepared(id).value;
  const now = gear.gear.value;
  const inLight = useEvening(plan, now, prepared);
  return plan && prepared
    ? {
        plan,
        prepared: inLight.how === 'ready' ? inLight.faded : prepared,
        inLight,
        rig: (rig) => assemble(now, rig),
        set: (set) => plan.sets.find((candidate) => candidate.id === set),
      }
    : null;
}
