import { type PlanDesk, planDesk } from '../../../app/plans.ts';
import { useApp } from '../../shell/useApp.ts';

/** The acts on the plans. */
export const usePlanDesk = (): PlanDesk => planDesk(useApp().desks);
