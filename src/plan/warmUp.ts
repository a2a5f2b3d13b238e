import { thermalRangeOf } from '../gear/bodyHeat.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { type Refusal, refuse } from '../science/refusal.ts';
import { duration, type Seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import { DEFAULT_REST } from './newPlan.ts';
import type { Plan, PlanSet, Rest, RestRule } from './plan.ts';
import { restOwed } from './rest.ts';
import { longestFrame } from './rhythm.ts';

/*
 * One of two honest ways with heat: all bodies are warmed up in the rhythm of the list, and the
 * rhythm is kept. The set that does it is known by its id; a capped series of any other id is its
 * owner's.
 */

const WARM_UP = 'warm-up' as SetId;

/** A rhythm has settled after so many time constants: a twentieth of the way is left. */
const TIME_CONSTANTS = 3;

/** Frames so short that it would take more of them hardly warm a sensor (our choice). */
const MOST_FRAMES = 64;

/** The set that warms a plan's bodies up; null if it has none. */
export const warmUpOf = ({ sets }: Pick<Plan, 'sets'>): PlanSet | null =>
  sets.find(({ id, kind }) => id === WARM_UP && kind === 'capped-series') ?? null;

/** A rule of thumb that also holds for the shortest exposure. */
const kept = (rest: Rest): RestRule => ({
  ...(rest.kind === 'thumb' ? rest.rule : DEFAULT_REST),
  offUpToS: duration(0),
});

/** How many frames of one length a rhythm takes to settle in the slowest of some bodies. */
const framesToSettle = (tau: Seconds, t: Seconds, rest: Seconds): number =>
  Math.ceil((TIME_CONSTANTS * tau) / (t + rest));

/**
 * The plan with all its bodies warmed up before it in the rhythm of its longest exposure, cap on, and
 * that rhythm kept: rests by the rule of thumb, after every exposure however short. A warm-up that
 * the plan has already is put right for its list.
 *
 * @param frames of the plan as it stands.
 * @returns a refusal ('no-frames') if nothing is to be shot, or ('hardly-warms') if its longest
 * exposure is so short that it hardly warms a sensor.
 */
export function warmUp(plan: Plan, gear: Gear, frames: readonly PlannedFrame[]): Plan | Refusal {
  const longest = longestFrame(plan.sets, frames);
  // A capped dark has the settings of the set that it follows, which has frames as long.
  const set = longest && plan.sets.find(({ id }) => id === longest.set);
  if (!longest || !set) return refuse('no-frames');
  const rule = kept(plan.rest);
  const slowest = plan.rigs.map((rig) => {
    const assembled = assemble(gear, rig);
    return assembled ? thermalRangeOf(assembled.body).tau.usual : 0;
  });
  const { t } = longest.exact;
  const repeats = framesToSettle(
    duration(Math.max(0, ...slowest)),
    t,
    restOwed(rule, t, duration(0)),
  );
  if (repeats > MOST_FRAMES) return refuse('hardly-warms');
  const series: PlanSet = {
    ...set,
    id: WARM_UP,
    intent: '',
    kind: 'capped-series',
    passes: 1,
    repeats,
    restBeforeS: null,
  };
  return {
    ...plan,
    sets: [series, ...plan.sets.filter(({ id }) => id !== WARM_UP)],
    rest: { kind: 'thumb', rule },
  };
}

/** The plan without its warm-up, resting another way. */
export const withoutWarmUp = (plan: Plan, rest: Rest): Plan => ({
  ...plan,
  sets: plan.sets.filter(({ id }) => id !== WARM_UP),
  rest,
});
