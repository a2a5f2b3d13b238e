import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OrderCase, orderCase } from '../../test/arbitraries/orders.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import { mulberry32, seed } from '../science/mulberry32.ts';
import { must } from '../science/refusal.ts';
import { duration, ev, fNumber, iso, seconds, type UtcMs } from '../science/units.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import type { SetId } from './ids.ts';
import { fadeNear } from './lightTable.ts';
import { DEFAULT_HEAT_LIMIT, DEFAULT_REST, newSet } from './newPlan.ts';
import { orderFrames } from './order.ts';
import { costedOrder, namedOrders } from './orderCost.ts';
import { orderProblem } from './orderProblem.ts';
import { type OrderQuestion, orderLight, orderRequest } from './orderRequest.ts';
import type { Plan, PlanSet } from './plan.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';
import { timelineOf } from './timeline.ts';

const START = Date.UTC(2027, 1, 12, 17) as UtcMs;
const HOURS = 12;

/** The light of a case as a scene with its sky by the minute, as slow as a factor makes it. */
const sceneOf = ({ light }: OrderCase, slowness: number): Scene =>
  assumedScene({
    startMs: START,
    clearEv100: Array.from({ length: 60 * HOURS }, (_, minute) =>
      light(duration((60 * minute) / slowness)),
    ),
    cloud: 'clear',
    dark: [],
  });

const SERIES_TIME = '30';

/** The list of a case, with a capped series before it and rests of all kinds in it. */
function question(from: number, rest: Plan['rest'], isKnown: boolean): OrderQuestion {
  const size = { leastTurns: 4, mostTurns: 20, mostRepeats: 2, darks: true };
  const own = orderCase(mulberry32(seed(from)), size);
  const [first] = own.plan.sets;
  if (!first) throw new Error('a set');
  const settings = { ...first.settings, time: { kind: 'dial', mark: SERIES_TIME } } as const;
  const series: PlanSet = {
    ...newSet('series' as SetId, first.reference, settings),
    kind: 'capped-series',
    passes: 1 + (from % 3),
    repeats: 1 + (from % 2),
  };
  const dialled = new Map(own.frames.map((frame) => [`${frame.set}/${frame.rig}`, frame] as const));
  const plan: Plan = {
    ...own.plan,
    rest,
    sets: [
      ...(from % 4 === 0 ? [] : [series]),
      ...own.plan.sets.map((set, index) =>
        index % 2 === 0 ? { ...set, restBeforeS: duration(from % 90) } : set,
      ),
    ],
  };
  const frames = orderFrames(plan, (set, rig) =>
    set === series.id
      ? { settings, exact: { n: fNumber(8), t: seconds(32), s: iso(200) } }
      : (dialled.get(`${set}/${rig}`) ?? null),
  );
  const light = isKnown
    ? orderLight(sceneOf(own, from % 2 === 0 ? 1 : 100), { startMs: START, sets: [] }, frames)
    : null;
  return { plan, gear: own.gear, frames, light };
}

const RESTS: readonly Plan['rest'][] = [
  { kind: 'none' },
  { kind: 'thumb', rule: { ...DEFAULT_REST, offUpToS: duration(20) } },
  { kind: 'limit', limit: DEFAULT_HEAT_LIMIT },
];

describe('the request of a question', () => {
  it('has the course of the timeline: rests by the limit only where they pay, series before', () => {
    let left = 0;
    let taken = 0;
    let series = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2 ** 31 }),
        fc.constantFrom(...RESTS),
        fc.boolean(),
        (from, rest, isKnown) => {
          const asked = question(from, rest, isKnown);
          const problem = must(orderProblem(orderRequest(asked)));
          const costed = costedOrder(problem, problem.standing, USUAL_WEIGHTS);
          const { plan, gear } = asked;
          const own = must(
            timelineOf(plan, gear, costed.frames, (at) =>
              isKnown ? fadeNear(problem.light, at) : null,
            ),
          );
          expect(costed.frames.map(({ key }) => key).toSorted()).toEqual(
            asked.frames.map(({ key }) => key).toSorted(),
          );
          for (const [index, { key, startS, midS, endS, freeS }] of own.frames.entries()) {
            const its = costed.timeline.frames[index];
            expect(its?.key).toBe(key);
            expect(its?.startS).toBeCloseTo(startS, 6);
            expect(its?.midS).toBeCloseTo(midS, 6);
            expect(its?.endS).toBeCloseTo(endS, 6);
            expect(its?.freeS).toBeCloseTo(freeS, 6);
          }
          expect(costed.timeline.rests.length).toBe(own.rests.length);
          expect(costed.wallS).toBeCloseTo(own.wallS, 6);
          taken += own.weighed.filter(({ rest: { worth } }) => worth?.pays).length;
          left += own.weighed.filter(({ rest: { worth } }) => worth?.pays === false).length;
          if (problem.head.frames.length > 0) series += 1;
        },
      ),
      { numRuns: 200 },
    );
    // Both sides of the rule were met.
    expect(taken).toBeGreaterThan(20);
    expect(left).toBeGreaterThan(20);
    expect(series).toBeGreaterThan(50);
  });

  it('weighs no fade where the light is not known, and says so of each pair', () => {
    const asked = question(2, { kind: 'none' }, false);
    for (const { pairs, cost, swaps } of must(namedOrders(orderRequest(asked), USUAL_WEIGHTS))) {
      expect(pairs.length).toBeGreaterThan(0);
      expect(pairs.every(({ fade }) => fade === null)).toBe(true);
      expect(cost.fade).toBe(0);
      expect(cost.swaps).toBeCloseTo(USUAL_WEIGHTS.perSwap * swaps, 9);
    }
  });

  it('weighs no fade between the frames of a flat: its wall is lit by hand', () => {
    const asked = question(4, { kind: 'none' }, true);
    const [first] = asked.plan.sets;
    if (!first) throw new Error('a set');
    const withFlat = (kind: PlanSet['kind']) => {
      const plan = {
        ...asked.plan,
        sets: asked.plan.sets.map((set) => (set.id === first.id ? { ...set, kind } : set)),
      };
      const problem = must(orderProblem(orderRequest({ ...asked, plan })));
      return costedOrder(problem, problem.standing, USUAL_WEIGHTS);
    };
    const [light, flat] = [withFlat('light'), withFlat('flat')];
    expect(flat.cost.fade).toBeLessThan(light.cost.fade);
    expect(flat.pairs.filter(({ set }) => set === first.id).map(({ fade }) => fade)).toEqual(
      light.pairs.filter(({ set }) => set === first.id).map(() => null),
    );
  });

  it('lays the minutes of a set on the middles of its exposures', () => {
    const plan = practicePlan();
    const { frames } = preparePlan(plan, PRACTICE_GEAR);
    const [set] = plan.sets;
    if (!set) throw new Error('a set');
    const at = (minutes: number) => (START + 60_000 * minutes) as UtcMs;
    const stretch = (from: number, to: number) => ({
      fromMs: at(from),
      toMs: at(to),
      rightMs: null,
    });
    const scene = assumedScene({ startMs: START, clearEv100: [ev(3)], cloud: null, dark: [] });
    const planned = { fromMs: at(50), toMs: at(60) };
    const windowOf = (right: readonly ReturnType<typeof stretch>[]) =>
      orderLight(
        scene,
        { startMs: START, sets: [{ set: set.id, right, planned, beyond: 0 as never, mend: null }] },
        frames,
      ).windows.get(set.id);
    // The first set is shot at 64 s: its middle comes 32 s after it starts.
    expect(windowOf([stretch(10, 20)])).toEqual({ fromS: 632, toS: 1232 });
    // Of dusk and dawn the one that is meant.
    expect(windowOf([stretch(700, 710), stretch(10, 20)])).toEqual({ fromS: 632, toS: 1232 });
    expect(windowOf([])).toBeUndefined();
  });

  it('can be handed to a worker as it is', () => {
    const asked = question(1, { kind: 'none' }, true);
    const copy = structuredClone(asked);
    const costs = [asked, copy].map((each) => {
      const problem = must(orderProblem(orderRequest(each)));
      return costedOrder(problem, problem.standing, USUAL_WEIGHTS).cost.total;
    });
    expect(costs[1]).toBe(costs[0]);
    expect(costs[0]).toBeGreaterThan(0);
  });
});
