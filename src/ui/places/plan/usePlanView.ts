import { useMemo } from 'preact/hooks';
import type { RigId } from '../../../gear/ids.ts';
import { type Assembled, assemble, type Gear } from '../../../gear/rig.ts';
import type { PlanId, SetId } from '../../../plan/ids.ts';
import { preparedInLight } from '../../../plan/inLight.ts';
import type { Plan, PlanSet } from '../../../plan/plan.ts';
import { type PlanHeat, planHeat } from '../../../plan/planHeat.ts';
import { type Prepared, preparePlan } from '../../../plan/prepare.ts';
import { useApp } from '../../shell/useApp.ts';
import { type InLight, useEvening } from './useEvening.ts';

/** A plan with what it comes to on the gear, as the screens of this place need it. */
export interface PlanView {
  readonly plan: Plan;
  readonly gear: Gear;
  /** With the fade that is predicted, as soon as the light is worked out. */
  readonly prepared: Prepared;
  readonly inLight: InLight;
  readonly heat: PlanHeat;
  /** Null if the rig is no longer in Gear. */
  readonly rig: (id: RigId) => Assembled | null;
  readonly set: (id: SetId) => PlanSet | undefined;
}

/** The plan as it is now; null if it is gone. */
export function usePlanView(id: PlanId): PlanView | null {
  const { plans, gear } = useApp();
  const plan = plans.plans.value.find((candidate) => candidate.id === id);
  const known = plans.prepared(id).value;
  const now = gear.gear.value;
  const inLight = useEvening(plan, now, known);
  const prepared = inLight.how === 'ready' ? inLight.faded : known;
  const heat = useMemo(
    () => plan && prepared && planHeat(plan, now, prepared),
    [plan, now, prepared],
  );
  return plan && prepared && heat
    ? {
        plan,
        gear: now,
        prepared,
        inLight,
        heat,
        rig: (rig) => assemble(now, rig),
        set: (set) => plan.sets.find((candidate) => candidate.id === set),
      }
    : null;
}

/** Another plan in the place of a view's: worked out on the same gear, in the same light. */
export function preparedAs({ gear, inLight }: PlanView, plan: Plan): Prepared {
  const prepared = preparePlan(plan, gear);
  if (inLight.how !== 'ready') return prepared;
  const { scene, side } = inLight.evening;
  return preparedInLight(plan, gear, prepared, scene, side);
}
