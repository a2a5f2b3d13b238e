import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, skyOf } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, Evening, frame, held, planOf, s } from '../../test/evenings/evening.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { PlannedFrame } from '../plan/frame.ts';
import { DEFAULT_HEAT_LIMIT } from '../plan/newPlan.ts';
import type { Plan, PlanSet } from '../plan/plan.ts';
import { UNMEASURED, usualModel } from '../science/thermalRange.ts';
import type { Seconds } from '../science/units.ts';
import { heatsInside, historyOf } from './heat.ts';
import { allResting, restLeft } from './rest.ts';
import type { RunState } from './state.ts';

const minute = dialled('6.3', '64', '100');
/** Four minutes, after which a sensor owes a rest by any rule; a minute needs none by the limit. */
const four = held('6.3', 240, '100');
const two = [1, 2].map((repeat) => frame('one', A, four, { repeat }));

function limitPlan(
  frames: readonly PlannedFrame[],
  change: Partial<PlanSet> = { kind: 'flat' },
  longest: Seconds = s(600),
): Plan {
  const plan = planOf(frames);
  return {
    ...plan,
    sets: plan.sets.map((set) => ({ ...set, ...change })),
    rest: { kind: 'limit', limit: { ...DEFAULT_HEAT_LIMIT, longestS: longest } },
  };
}

/** An evening with lenses that keep their focus: those of the practice outing rest switched on. */
function walking(
  frames: readonly PlannedFrame[],
  plan: Plan,
  sky: SkyTable | null = null,
): Evening {
  const evening = new Evening(frames, plan, 'phone', sky);
  for (const lens of evening.state().gear.lenses) {
    const value = { ...lens, focusSurvivesPowerOff: true };
    evening.tap({ tap: 'correct-gear', change: { part: 'lens', value } });
  }
  return evening.setUp();
}

const restAt = (evening: Evening) => restLeft(evening.state(), A, evening.now());
const insideHeat = (state: RunState, place: number) => {
  const made = state.made[place];
  const heats = made && heatsInside(historyOf(state), made.planned.rig, made.id);
  if (!heats || 'why' in heats) throw new Error('no heat');
  return heats.usual;
};

describe('a rest by the limit on heat', () => {
  it('is as long as brings the next frame to the limit, worked out by shooting it then', () => {
    const evening = walking(two, limitPlan(two)).shoot();
    const resting = restAt(evening);
    if (!resting) throw new Error('a rest is owed');
    expect(resting).toMatchObject({ why: 'limit', isProposed: true, isSuggestion: true });
    // A flat wall tells nothing of its light: the limit is a quarter more dark current.
    expect(2 ** resting.with).toBeCloseTo(1.25, 6);
    expect(resting.without).toBeGreaterThan(resting.with);
    // Made when the rest is over, it is as warm as was said: over a rested body's first such frame.
    evening.pass(resting.leftS + 5).start();
    const { tau, plateaus } = usualModel(UNMEASURED);
    const leadIn = evening.state().made[1]?.leadInS ?? Number.NaN;
    const settled = plateaus.idle * (1 - Math.exp(-(5 + leadIn) / tau));
    const restedMid = plateaus.exposing + (settled - plateaus.exposing) * Math.exp(-120 / tau);
    evening.pass(leadIn + 240 - 1).tap({ tap: 'closed', made: evening.openId() });
    expect(insideHeat(evening.state(), 1)).toBeCloseTo(restedMid + resting.with, 6);
    expect(resting.range?.least).toBe(0);
    expect(resting.range?.most === null || (resting.range?.most ?? 0) > resting.owedS).toBe(true);
  });

  it('counts what passed: a minute of waiting is a minute less, over a reload to the second', () => {
    const evening = walking(two, limitPlan(two)).shoot();
    const left = restAt(evening)?.leftS ?? Number.NaN;
    evening.pass(20).reload(40);
    expect(restAt(evening)?.leftS).toBeCloseTo(left - 60, 6);
    expect(evening.step()).toMatchObject({ kind: 'rest' });
  });

  it('answers an overrun: a minute more in bulb asks for more rest', () => {
    const owed = (over: number) => {
      const evening = walking(two, limitPlan(two)).untilExpose().start();
      const leadIn = evening.state().made[0]?.leadInS ?? 0;
      evening.pass(leadIn + 240 - 1 + over).tap({ tap: 'closed', made: evening.openId() });
      return restAt(evening)?.owedS ?? Number.NaN;
    };
    expect(owed(60)).toBeGreaterThan(owed(0) + 30);
  });

  it('is not proposed where it costs more of the fade than it wins, and both are told', () => {
    const steep = skyOf((minutes) => 8 - 0.9 * minutes, 120);
    const at = (sky: SkyTable | null) => {
      const evening = walking(two, limitPlan(two), sky).shoot();
      const resting = restAt(evening);
      if (!resting) throw new Error('a rest is weighed');
      return { evening, resting };
    };
    const slow = at(EVEN_DUSK);
    const fast = at(steep);
    const unknown = at(null);
    expect(unknown.resting).toMatchObject({ worth: null, fade: null, isProposed: true });
    // 0.2 against 0.9 stop a minute for the same rest.
    expect(slow.resting.fade).toBeCloseTo((-0.2 * slow.resting.owedS) / 60, 3);
    expect(fast.resting.fade).toBeCloseTo((-0.9 * fast.resting.owedS) / 60, 3);
    for (const { resting, evening } of [slow, fast]) {
      const { worth } = resting;
      expect(worth?.wins).toBeCloseTo(0.25 * (resting.without - resting.with), 9);
      expect(resting.isProposed).toBe((worth?.wins ?? 0) > (worth?.costs ?? 0));
      expect(evening.step().kind).toBe(resting.isProposed ? 'rest' : 'expose');
      // In hand and not held up: no reminder either.
      expect(allResting(evening.state(), evening.now())).toHaveLength(resting.isProposed ? 1 : 0);
    }
    expect(fast.resting.isProposed).toBe(false);
  });

  it('is no longer than the plan allows, and warms nothing in a series', () => {
    const short = walking(two, limitPlan(two, { kind: 'flat' }, s(30))).shoot();
    expect(restAt(short)?.owedS).toBeCloseTo(30, 9);
    const series = walking(two, limitPlan(two, { kind: 'capped-series' })).shoot();
    expect(restAt(series)).toBeNull();
  });

  it('depends on the light of the set: at ISO 100 the shadows need less of it than the dark', () => {
    const owed = (kind: PlanSet['kind']) =>
      restAt(walking(two, limitPlan(two, { kind })).shoot())?.owedS ?? Number.NaN;
    expect(owed('light')).toBeLessThan(owed('flat') - 60);
  });
});

describe('a wait that a set asks for', () => {
  const visits = [1, 2].flatMap((pass) =>
    [1, 2].map((repeat) => frame('one', A, minute, { pass, repeat, visit: pass })),
  );
  const asking = (kind: Plan['rest'] = { kind: 'none' }) => {
    const plan = planOf(visits);
    const sets = plan.sets.map((set) => ({ ...set, restBeforeS: s(240) }));
    return new Evening(visits, { ...plan, sets, rest: kind }).setUp();
  };

  it('comes before the first frame of a visit alone, from the last work of the rig', () => {
    const evening = asking().shoot();
    expect(evening.step().kind).toBe('expose');
    evening.shoot();
    const { leftS, why, owedS } = restAt(evening) ?? {};
    expect({ why, owedS }).toEqual({ why: 'asked', owedS: 240 });
    // A second passed from the end to the record, and one since.
    expect(leftS).toBeCloseTo(238.9, 0);
    expect(evening.step().kind).toBe('rest');
    evening.pass(leftS ?? 0);
    expect(evening.step().kind).toBe('expose');
  });

  it('stands with a rule of thumb as the longer of the two', () => {
    const rule = { factor: 1, offUpToS: s(0), longestS: s(600) };
    const evening = asking({ kind: 'thumb', rule }).shoot();
    expect(restAt(evening)).toMatchObject({ why: 'thumb', owedS: 64 });
    evening.shoot();
    expect(restAt(evening)).toMatchObject({ why: 'asked', owedS: 240 });
  });

  it('is skipped with a word of what was left', () => {
    const evening = asking().shoot().shoot();
    const left = restAt(evening)?.leftS ?? Number.NaN;
    evening.tap({ tap: 'skip-rest', rig: A });
    expect(evening.step().kind).toBe('expose');
    expect(evening.state().restsSkipped).toMatchObject([{ rig: A, leftS: left }]);
  });
});

describe('the reminder while others work', () => {
  const turns = [
    frame('one', B, dialled('8', '60', '100')),
    frame('one', A, four, { visit: 2 }),
    frame('one', B, dialled('8', '60', '100'), { pass: 2, visit: 3 }),
    frame('one', A, four, { pass: 2, visit: 4 }),
  ];

  it('tells of every rig when it may shoot, and how it will stand to its reference', () => {
    const evening = walking(turns, limitPlan(turns)).shoot().shoot();
    // B's turn comes next, and A rests meanwhile.
    const resting = allResting(evening.state(), evening.now());
    expect(resting.map(({ rig }) => rig)).toEqual([A]);
    const [a] = resting;
    expect(a?.against?.reference).toBe(B);
    const { usual = 0, least = 0, most = 0 } = a?.against?.heat ?? {};
    expect(least).toBeLessThan(usual);
    expect(most).toBeGreaterThan(usual);
    // Against B's frame of that pass once it is made, until then its newest.
    evening.untilExpose().start().pass(5);
    expect(evening.step().kind).toBe('open');
    const early = restAt(evening);
    expect((early?.leftS ?? Number.NaN) - (a?.leftS ?? 0)).toBeCloseTo(-67, 6);
    evening.pass(65).tap({ tap: 'record', made: evening.openId() });
    const [first, second] = [insideHeat(evening.state(), 0), insideHeat(evening.state(), 2)];
    expect(second).toBeGreaterThan(first);
    const late = restAt(evening);
    expect((late?.against?.heat.usual ?? Number.NaN) - usual).toBeCloseTo(first - second, 6);
  });

  it('says nothing of a rig whose shutter is open, nor of one with nothing left to shoot', () => {
    const plan = planOf(turns.slice(0, 2), { rest: { offUpToS: s(0) } });
    const evening = new Evening(turns.slice(0, 2), plan).setUp().shoot();
    expect(allResting(evening.state(), evening.now())).toEqual([]);
    evening.untilExpose().start().pass(20);
    expect(allResting(evening.state(), evening.now())).toEqual([]);
  });

  it('says of a rig with a changed battery that nobody knows', () => {
    const evening = walking(turns, limitPlan(turns)).shoot().shoot();
    evening.tap({ tap: 'battery-changed', rig: A });
    expect(restAt(evening)).toMatchObject({ doubt: 'battery-changed', against: null });
  });
});
