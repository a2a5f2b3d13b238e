import { PRACTICE_GEAR } from '../gear/practice.ts';
import { assemble } from '../gear/rig.ts';
import type { TimeChoice } from '../gear/settings.ts';
import { PRACTICE_DATE, PRACTICE_SITE } from '../light/practice.ts';
import { must } from '../science/refusal.ts';
import { seconds, stops } from '../science/units.ts';
import type { PlanId, SetId } from './ids.ts';
import { newPlan } from './newPlan.ts';
import type { Hold, Plan } from './plan.ts';
import { readyList } from './readyLists.ts';

export const PRACTICE_PLAN_ID = 'practice-plan' as PlanId;

/** Birch stays two thirds of a stop narrower than Alder: f/8 beside f/6.3. */
const TWO_THIRDS_NARROWER: Hold = {
  kind: 'same-iso-and-time',
  aperture: { rule: 'same-f-number', plus: stops(-2 / 3) },
};

/**
 * In the second set Alder is held open by hand for Birch's true 60 s, so that both ways of meeting
 * a dial that ends elsewhere are walked once: taking the difference, and timing it away.
 */
const BY_HAND: TimeChoice = { kind: 'bulb', seconds: seconds(60) };

/**
 * The invented plan of the practice outing: Alder against Birch, the mixed dusk list. Worked out at
 * each call, so that a start which needs none does not wait for it.
 */
export function practicePlan(): Plan {
  const rigs = PRACTICE_GEAR.rigs.filter(({ letter }) => letter === 'A' || letter === 'B');
  const ids = rigs.map(({ id }) => id);
  const assembled = ids.flatMap((id) => assemble(PRACTICE_GEAR, id) ?? []);
  let count = 0;
  const list = must(
    readyList('mixed-dusk', assembled, () => {
      count += 1;
      return `practice-set-${count}` as SetId;
    }),
  );
  return {
    ...newPlan(PRACTICE_PLAN_ID, 'An evening at the old ferry slip', ids),
    note: 'Invented, to practise on: no such bodies, no such place.',
    order: list.order,
    sets: list.sets.map((set, place) => ({
      ...set,
      hold: TWO_THIRDS_NARROWER,
      settings: place === 1 ? { ...set.settings, time: BY_HAND } : set.settings,
    })),
    evening: { site: PRACTICE_SITE.id, date: PRACTICE_DATE, startMs: null, cloud: 'clear' },
    invented: true,
  };
}
