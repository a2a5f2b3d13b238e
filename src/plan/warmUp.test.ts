import { describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { isRefusal, must } from '../science/refusal.ts';
import { duration, seconds } from '../science/units.ts';
import { DEFAULT_HEAT_LIMIT, DEFAULT_REST } from './newPlan.ts';
import { readPlan } from './parse.ts';
import type { Plan, PlanSet } from './plan.ts';
import { planHeat } from './planHeat.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';
import { inRestWay, REST_WAYS, restOutcomes, restWayOf } from './restWays.ts';
import { rhythmsOf } from './rhythm.ts';
import { warmUp, warmUpOf, withoutWarmUp } from './warmUp.ts';

/** No lens loses its focus, so that rigs wait switched off. */
const gear: Gear = {
  ...PRACTICE_GEAR,
  lenses: PRACTICE_GEAR.lenses.map((lens) => ({ ...lens, focusSurvivesPowerOff: true })),
};
const framesOf = (plan: Plan) => preparePlan(plan, gear).frames;
const warmed = (plan: Plan): Plan => must(warmUp(plan, gear, framesOf(plan)));
const RULE = { ...DEFAULT_REST, offUpToS: duration(0) };

describe('the warm-up of a plan', () => {
  const plan = practicePlan();
  const with_ = warmed(plan);

  it('stands in front: frames of the longest exposure for three time constants, and the rule without a lower limit', () => {
    const series = warmUpOf(with_);
    expect(with_.sets[0]).toBe(series);
    expect(series).toMatchObject({ kind: 'capped-series', passes: 1 });
    // 64 s and as much rest: three times 480 s are 11.25 of them.
    expect(series?.repeats).toBe(12);
    expect(with_.rest).toEqual({ kind: 'thumb', rule: RULE });
    expect(isFault(readPlan(with_))).toBe(false);

    const { frames, timeline } = preparePlan(with_, gear);
    const own = frames.filter(({ set }) => set === series?.id);
    expect(own).toHaveLength(24);
    expect(frames.slice(0, 24)).toEqual(own);
    expect(Math.max(...own.map(({ exact }) => exact.t))).toBe(64);
    // All rigs at once, and in the rhythm of the rule.
    const starts = timeline.frames.slice(0, 24).map(({ startS }) => startS);
    expect(starts[0]).toBe(starts[1]);
    expect((starts[4] ?? 0) - (starts[2] ?? 0)).toBeGreaterThanOrEqual(128);
  });

  it('brings every rig near to where its rhythm settles', () => {
    const prepared = preparePlan(with_, gear);
    const heat = planHeat(with_, gear, prepared);
    for (const { rig, leaves } of rhythmsOf(RULE, gear, with_.sets, prepared.frames)) {
      const own = prepared.frames.filter((frame) => frame.rig === rig);
      const of = (at: number) =>
        heat.frames.get(own[at]?.key ?? ('' as never))?.usual ?? Number.NaN;
      const first = of(0);
      // A twentieth of the way is left, and the hands take their time.
      expect(of(11) - first).toBeGreaterThan(0.85 * leaves.usual);
      expect(of(11) - first).toBeLessThan(1.05 * leaves.usual);
    }
  });

  it('is put right for a list that has changed, and goes away whole', () => {
    const shorter: Plan = {
      ...with_,
      sets: with_.sets.map((set) => ({
        ...set,
        settings: { ...set.settings, time: { kind: 'dial', mark: '32' } },
      })),
    };
    const again = warmed(shorter);
    expect(warmUpOf(again)?.repeats).toBe(23);
    expect(again.sets).toHaveLength(with_.sets.length);
    expect(warmed(again)).toEqual(again);
    expect(withoutWarmUp(with_, plan.rest)).toEqual(plan);
  });

  it('is refused where nothing is to be shot, or for frames that hardly warm', () => {
    expect(warmUp({ ...plan, sets: [] }, gear, [])).toMatchObject({ rule: 'no-frames' });
    const quick: Plan = {
      ...plan,
      sets: plan.sets.map((set) => ({
        ...set,
        settings: { ...set.settings, time: { kind: 'dial', mark: '8' } },
      })),
    };
    expect(warmUp(quick, gear, framesOf(quick))).toMatchObject({ rule: 'hardly-warms' });
  });

  it('leaves a capped series of its owner alone', () => {
    const own: PlanSet = { ...(plan.sets[0] as PlanSet), kind: 'capped-series' };
    const both = warmed({ ...plan, sets: [own, ...plan.sets.slice(1)] });
    expect(withoutWarmUp(both, plan.rest).sets).toContain(own);
  });
});

describe('the ways with heat', () => {
  /** Two minutes on each frame, twice in a row: heat that a swap does not let go. */
  const long = { kind: 'bulb', seconds: seconds(240) } as const;
  const base = practicePlan();
  const plan: Plan = {
    ...base,
    rigs: base.rigs.slice(0, 1),
    rest: { kind: 'none' },
    sets: base.sets.slice(0, 1).map((set) => ({
      ...set,
      settings: { ...set.settings, time: long },
      repeats: 3,
    })),
  };

  it('are told apart, and each is gone by an edit', () => {
    for (const from of REST_WAYS) {
      const start = must(inRestWay(plan, gear, framesOf(plan), from));
      for (const to of REST_WAYS) {
        const there = must(inRestWay(start, gear, framesOf(start), to));
        expect(restWayOf(there)).toBe(to);
        expect(warmUpOf(there) !== null).toBe(to === 'warm-up');
      }
    }
    const limited: Plan = {
      ...plan,
      rest: { kind: 'limit', limit: { ...DEFAULT_HEAT_LIMIT, longestS: duration(99) } },
    };
    expect(inRestWay(limited, gear, framesOf(limited), 'limit')).toBe(limited);
  });

  it('say what each leaves and costs: rests cool, a warm-up steadies, both take time', () => {
    const [limit, warm, , none] = restOutcomes(plan, gear, framesOf(plan), (changed) =>
      preparePlan(changed, gear),
    ).map(({ outcome }) => {
      if (isRefusal(outcome)) throw new Error(outcome.rule);
      return outcome;
    });
    if (!limit || !warm || !none) throw new Error('every way');
    const drift = (of: typeof none) => Math.abs(of.firstToLast?.usual ?? Number.NaN);
    expect(drift(warm)).toBeLessThan(drift(none) / 4);
    expect(limit.restS).toBeGreaterThan(0);
    expect(drift(limit)).toBeLessThan(drift(none));
    expect(none.restS).toBe(0);
    expect(limit.wallS).toBeCloseTo(none.wallS + limit.restS, 6);
    expect(warm.wallS).toBeGreaterThan(none.wallS + 3 * 480);
    // One rig alone is no pair.
    expect(none.pair).toBeNull();
    expect(none.firstToLast?.least).toBeLessThan(none.firstToLast?.usual ?? Number.NaN);
  });
});
