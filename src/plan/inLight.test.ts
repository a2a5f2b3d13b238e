import { describe, expect, it } from 'vitest';
import { CURVED_DUSK, EVEN_DUSK, minutesOn } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, frame, planOf } from '../../test/evenings/evening.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { Gear } from '../gear/rig.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import { must } from '../science/refusal.ts';
import { parseStopsPerMinute, ratio, seconds } from '../science/units.ts';
import { fadeFrom, preparedInLight } from './inLight.ts';
import { bestStart } from './light.ts';
import { DEFAULT_HEAT_LIMIT } from './newPlan.ts';
import type { Plan, Rest } from './plan.ts';
import { preparePlan } from './prepare.ts';

const SIDE = { fromMs: minutesOn(0), toMs: minutesOn(110) };
/** No lens loses its focus, so that a rest is off and long enough. */
const gear: Gear = {
  ...PRACTICE_GEAR,
  lenses: PRACTICE_GEAR.lenses.map((lens) => ({ ...lens, focusSurvivesPowerOff: true })),
};
/** A limit so low that nearly every frame asks for a rest. */
const LIMIT: Rest = { kind: 'limit', limit: { ...DEFAULT_HEAT_LIMIT, unknownRatio: ratio(1.02) } };

const listOf = (startMin: number | null, rest: Rest): Plan => {
  const plan = planOf([
    frame('s', A, dialled('8', '1', '100')),
    frame('s', B, dialled('8', '1', '100')),
  ]);
  return {
    ...plan,
    rest,
    order: 'rig-by-rig',
    evening: {
      site: PRACTICE_SITE.id,
      date: '2027-02-12',
      startMs: startMin === null ? null : minutesOn(startMin),
      cloud: 'clear',
    },
    sets: plan.sets.flatMap((set) => [
      { ...set, passes: 1 },
      {
        ...set,
        id: 'long' as typeof set.id,
        kind: 'flat',
        passes: 1,
        repeats: 5,
        hold: { kind: 'same-exposure' },
        settings: { ...set.settings, time: { kind: 'dial', mark: '64' } },
      },
    ]),
  };
};
const inLight = (plan: Plan, scene: Scene) =>
  preparedInLight(plan, gear, preparePlan(plan, gear), scene, SIDE);

describe('a plan in the light of its evening', () => {
  it('weighs its rests by the fade of each minute, from its own start', () => {
    const scene = assumedScene(CURVED_DUSK);
    const plan = listOf(30, LIMIT);
    const { weighed } = inLight(plan, scene).timeline;
    expect(weighed.length).toBeGreaterThan(1);
    const fade = fadeFrom(scene, minutesOn(30));
    const expected = preparePlan(plan, gear, fade).timeline.weighed;
    expect(weighed).toEqual(expected);
    for (const { rest } of weighed) expect(rest.worth?.costs).toBeGreaterThan(0);
    const later = inLight(listOf(60, LIMIT), scene).timeline.weighed;
    expect(later[0]?.rest.worth?.costs).not.toBe(weighed[0]?.rest.worth?.costs);
  });

  it('takes the start worked out where none is stated, once', () => {
    const scene = assumedScene(EVEN_DUSK);
    const plan = listOf(null, LIMIT);
    const prepared = preparePlan(plan, gear);
    const start = bestStart(plan, prepared, scene, SIDE);
    expect(start).not.toBeNull();
    // 0.2 stop a minute, so that any start gives the same.
    const even = must(parseStopsPerMinute(-0.2));
    const { timeline } = preparedInLight(plan, gear, prepared, scene, SIDE);
    expect(timeline.weighed.map(({ key }) => key)).toEqual(
      preparePlan(plan, gear, () => even).timeline.weighed.map(({ key }) => key),
    );
    expect(preparedInLight(plan, gear, prepared, scene, SIDE)).toEqual(
      preparedInLight(plan, gear, prepared, scene, SIDE),
    );
  });

  it('is as it was where no rest is weighed', () => {
    const plan = listOf(30, { kind: 'none' });
    const prepared = preparePlan(plan, gear);
    expect(preparedInLight(plan, gear, prepared, assumedScene(EVEN_DUSK), SIDE)).toBe(prepared);
  });

  it('knows the fade of an instant counted from its start', () => {
    const fade = fadeFrom(assumedScene(EVEN_DUSK), minutesOn(10));
    expect(fade(seconds(600))).toBeCloseTo(-0.2, 6);
    expect(fade(seconds(1e9))).toBeNull();
  });
});
