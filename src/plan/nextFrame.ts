import type { Body } from '../gear/body.ts';
import type { Lens } from '../gear/lens.ts';
import type { NextFrame } from '../science/sensorRest.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { Plan } from './plan.ts';

/** How long a rig is on between the last touch and the shutter: it settles, its self-timer runs. */
export const settlingOf = ({ allowances }: Pick<Plan, 'allowances'>, body: Body): Seconds =>
  duration(allowances.settleS + (body.selfTimer.usedS ?? 0));

/** A frame of a plan as a rest before it sees it. */
export const nextFrameOf = (plan: Pick<Plan, 'allowances'>, body: Body, t: Seconds): NextFrame => ({
  t,
  leadIn: [{ mode: 'idle', lasts: settlingOf(plan, body) }],
});

/** What a rig does while it waits: a lens that loses its focus when switched off waits switched on. */
export const waitsIn = ({ focusSurvivesPowerOff }: Lens): 'off' | 'idle' =>
  focusSurvivesPowerOff ? 'off' : 'idle';
