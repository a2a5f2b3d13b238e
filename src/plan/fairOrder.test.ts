import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CaseSize, orderCase } from '../../test/arbitraries/orders.ts';
import { mulberry32, seed } from '../science/mulberry32.ts';
import { isRefusal, must } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { duration, ev, type Seconds } from '../science/units.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import { type FoundOrder, fairOrder, type SearchEffort, type SearchProgress } from './fairOrder.ts';
import { frameHeat, heatsOf } from './heat.ts';
import { heatCourseOf } from './heatCourse.ts';
import { heatAbove } from './heatLimit.ts';
import type { SetId } from './ids.ts';
import { boundTables, leastCost } from './orderBound.ts';
import { costedOrder, costOfRun, namedOrders, namedStarts } from './orderCost.ts';
import { type OrderProblem, type OrderRequest, orderProblem } from './orderProblem.ts';
import { runOrder, startState, takeTurn } from './orderRun.ts';
import type { Mounting } from './plan.ts';
import { timelineOf } from './timeline.ts';

const SMALL: CaseSize = { leastTurns: 2, mostTurns: 8, mostRepeats: 2, darks: true };
const MIDDLE: CaseSize = { leastTurns: 4, mostTurns: 24, mostRepeats: 2, darks: true };
const QUICK: SearchEffort = { walks: 1, tries: 20, steps: 1_000_000 };
const BRIEF: SearchEffort = { walks: 1, tries: 3, steps: 2000 };

const anySeed = fc.integer({ min: 0, max: 2 ** 31 });
/** A case is told by its seed, so that a counterexample can be read. */
const anyCase = (size: CaseSize, mounting: Mounting = 'swaps') =>
  anySeed.map((from) => ({
    [fc.toStringMethod]: () => `orderCase(${from})`,
    of: orderCase(mulberry32(seed(from)), size, mounting),
  }));

function found(
  problem: OrderProblem,
  effort: SearchEffort = QUICK,
  starts: readonly (readonly number[])[] = [],
): FoundOrder {
  const search = fairOrder(problem, USUAL_WEIGHTS, seed(1), effort, starts);
  for (;;) {
    const step = search.next();
    if (step.done) return must(step.value);
  }
}

const costOf = (problem: OrderProblem, order: readonly number[]): number => {
  const state = startState(problem);
  runOrder(problem, order, state);
  return costOfRun(problem, state, USUAL_WEIGHTS).total;
};

/** All orders of the turns of a problem, by plain counting out. */
function* allOrders(problem: OrderProblem): Generator<readonly number[]> {
  const left = problem.kinds.map(({ count }) => count);
  const order: number[] = [];
  function* deeper(): Generator<readonly number[]> {
    if (order.length === problem.turns) yield order;
    for (const { index } of problem.kinds) {
      if (left[index] === 0) continue;
      left[index] = (left[index] ?? 0) - 1;
      order.push(index);
      yield* deeper();
      order.pop();
      left[index] = (left[index] ?? 0) + 1;
    }
  }
  yield* deeper();
}

/** The turns in an order that chance decides. */
function shuffled(problem: OrderProblem, from: number): readonly number[] {
  const random = mulberry32(seed(from));
  return problem.standing
    .map((kind) => ({ kind, lot: random() }))
    .sort((a, b) => a.lot - b.lot)
    .map(({ kind }) => kind);
}

describe('the course of an order', () => {
  it('is that of the timeline, where the rests are by the rule of thumb', () => {
    fc.assert(
      fc.property(
        anyCase(MIDDLE),
        fc.constantFrom('swaps' as const, 'side-by-side' as const),
        ({ of: request }, mounting) => {
          fc.pre(request.rest.kind !== 'limit' && request.notBefore.size === 0);
          fc.pre(mounting === 'swaps' || request.plan.order !== 'rig-by-rig');
          const plan = mounting === 'swaps' ? request.plan : { ...request.plan, order: mounting };
          const problem = must(orderProblem({ ...request, plan, mounting }));
          const { frames, timeline } = costedOrder(problem, problem.standing, USUAL_WEIGHTS);
          const own = must(timelineOf(plan, request.gear, frames));
          expect(timeline.frames.map(({ key }) => key)).toEqual(own.frames.map(({ key }) => key));
          for (const [index, { startS, midS, endS, freeS }] of timeline.frames.entries()) {
            const its = own.frames[index];
            expect(startS).toBeCloseTo(its?.startS ?? Number.NaN, 6);
            expect(midS).toBeCloseTo(its?.midS ?? Number.NaN, 6);
            expect(endS).toBeCloseTo(its?.endS ?? Number.NaN, 6);
            expect(freeS).toBeCloseTo(its?.freeS ?? Number.NaN, 6);
          }
          expect(timeline.swaps.length).toBe(own.swaps.length);
          expect(timeline.wallS).toBeCloseTo(own.wallS, 6);
        },
      ),
    );
  });

  it('heats each frame as its rig’s own course does', () => {
    fc.assert(
      fc.property(anyCase(MIDDLE), ({ of: request }) => {
        const problem = must(orderProblem(request));
        const { frames, timeline } = costedOrder(problem, problem.standing, USUAL_WEIGHTS);
        const course = must(heatCourseOf(request.plan, request.gear, frames, timeline));
        const heats = heatsOf(course, request.thermal);
        let place = 0;
        runOrder(problem, problem.standing, startState(problem), {
          swap: () => {},
          rest: () => {},
          frame: (_, _start, _end, _free, heat) => {
            const frame = frames[place];
            place += 1;
            const of = frame && frameHeat(heats, frame.rig, frame.key);
            expect(heat).toBeCloseTo(of?.usual ?? Number.NaN, 6);
            expect(of?.least).toBeLessThanOrEqual(heat + 1e-9);
            expect(of?.most).toBeGreaterThanOrEqual(heat - 1e-9);
          },
        });
        expect(place).toBe(frames.length);
      }),
    );
  });

  it('lets no rest be shorter than its rule or limit asks', () => {
    let limited = 0;
    fc.assert(
      fc.property(anyCase(MIDDLE), anySeed, ({ of: request }, from) => {
        fc.pre(request.rest.kind !== 'none');
        // Where nobody knows the light, no rest is known to cost more than it wins.
        const problem = must(orderProblem({ ...request, light: null }));
        const order = shuffled(problem, from);
        const { frames, timeline } = costedOrder(problem, order, USUAL_WEIGHTS);
        const capped = new Set(
          request.plan.sets.filter(({ kind }) => kind === 'capped-dark').map(({ id }) => id),
        );
        const { rest } = request;
        if (rest.kind === 'thumb') {
          for (const [index, frame] of frames.entries()) {
            const earlier = frames.slice(0, index).findLastIndex(({ rig }) => rig === frame.rig);
            const [before, now] = [timeline.frames[earlier], timeline.frames[index]];
            const exposed = frames[earlier]?.exact.t ?? 0;
            if (!before || !now || capped.has(frame.set) || exposed <= rest.rule.offUpToS) continue;
            const least = Math.min(exposed * rest.rule.factor, rest.rule.longestS);
            expect(now.startS - before.endS).toBeGreaterThanOrEqual(least - 1e-6);
          }
          return;
        }
        // Under a limit every frame is cool enough unless its rig cannot get there, or the longest
        // rest was not long enough.
        if (rest.kind !== 'limit') return;
        const heats = heatsOf(
          must(heatCourseOf(request.plan, request.gear, frames, timeline)),
          request.thermal,
        );
        for (const [index, frame] of frames.entries()) {
          const rig = problem.rigs.find(({ id }) => id === frame.rig);
          const own = timeline.rests.filter(
            (span) =>
              span.rig === frame.rig && span.toS <= (timeline.frames[index]?.startS ?? 0) + 1e-6,
          );
          const longest = Math.max(0, ...own.map(({ fromS, toS }) => toS - fromS));
          if (rig?.waits !== 'off' || capped.has(frame.set) || longest >= rest.longestS - 1e-6)
            continue;
          limited += 1;
          const settling = duration(request.plan.allowances.settleS + rig.timerS);
          const rested = restedMidHeat(rig.model, {
            t: frame.exact.t,
            leadIn: [{ mode: 'idle', lasts: settling }],
          });
          expect(frameHeat(heats, frame.rig, frame.key)?.usual).toBeLessThanOrEqual(
            heatAbove(rested, rest.ratioOf(frame)) + 1e-6,
          );
        }
      }),
      { numRuns: 200 },
    );
    expect(limited).toBeGreaterThan(100);
  });
});

describe('the cost of an order', () => {
  it('is the sum of its parts, worked out again from the frames', () => {
    fc.assert(
      fc.property(anyCase(MIDDLE), anySeed, ({ of: request }, from) => {
        const problem = must(orderProblem(request));
        const order = shuffled(problem, from);
        const costed = costedOrder(problem, order, USUAL_WEIGHTS);
        const { frames, timeline, pairs, cost } = costed;
        // By hand, from the frames and the light itself, not from the table or the run.
        let fade = 0;
        let outside = 0;
        for (const set of request.plan.sets.filter(({ kind }) => kind !== 'capped-dark')) {
          const mids = (rig: string) =>
            frames.flatMap((frame, index) => {
              const times = timeline.frames[index];
              return frame.set === set.id && frame.rig === rig && times ? [times.midS] : [];
            });
          const mean = (values: readonly number[]) =>
            values.reduce((sum, value) => sum + value, 0) / values.length;
          const light = (rig: string) => mean(mids(rig).map((at) => request.light(at as Seconds)));
          for (const rig of request.plan.rigs) {
            if (rig !== set.reference) fade += Math.abs(light(rig) - light(set.reference));
          }
          const window = request.windows.get(set.id);
          if (window) {
            const all = request.plan.rigs.flatMap((rig) => mids(rig));
            outside += mean(
              all.map((at) => Math.max(0, (window.fromS ?? 0) - at, at - (window.toS ?? 0)) / 60),
            );
          }
        }
        expect(cost.fade).toBeCloseTo(USUAL_WEIGHTS.fadePerStop * fade, 3);
        expect(cost.outside).toBeCloseTo(USUAL_WEIGHTS.outsidePerMinute * outside, 6);
        expect(cost.swaps).toBeCloseTo(USUAL_WEIGHTS.perSwap * timeline.swaps.length, 9);
        expect(cost.wall).toBeCloseTo((USUAL_WEIGHTS.wallPerMinute * timeline.wallS) / 60, 9);
        const heat = pairs.reduce((sum, pair) => sum + Math.abs(pair.heat), 0);
        expect(cost.heat).toBeCloseTo(USUAL_WEIGHTS.heatPerStop * heat, 9);
        expect(cost.total).toBeCloseTo(
          cost.fade + cost.heat + cost.outside + cost.swaps + cost.wall,
          9,
        );
        for (const { fade: left } of pairs) {
          if (!left) throw new Error('the light is known and falls on every set');
          expect(left.linear + left.curved).toBeCloseTo(left.whole, 9);
        }
        expect(frames.map(({ key }) => key).toSorted()).toEqual(
          request.frames.map(({ key }) => key).toSorted(),
        );
      }),
    );
  });

  it('has no curved part where the fade is steady', () => {
    fc.assert(
      fc.property(anyCase({ ...SMALL, darks: false }), ({ of: request }) => {
        const steady = { ...request, light: (at: Seconds) => ev(3 - at / 600) };
        const orders = must(namedOrders(steady, USUAL_WEIGHTS));
        const left = orders.flatMap(({ pairs }) => pairs.map(({ fade }) => fade));
        expect(left.length).toBeGreaterThan(0);
        for (const fade of left) {
          expect(fade?.curved).toBeCloseTo(0, 6);
          expect(fade?.linear).toBeCloseTo(fade?.whole ?? Number.NaN, 6);
        }
      }),
    );
  });

  it('never rises when a window is made wider', () => {
    fc.assert(
      fc.property(
        anyCase(MIDDLE),
        anySeed,
        fc.integer({ min: 0, max: 900 }),
        fc.integer({ min: 0, max: 900 }),
        ({ of: request }, from, earlier, later) => {
          fc.pre(request.windows.size > 0);
          const order = shuffled(must(orderProblem(request)), from);
          expect(costOf(must(orderProblem(widened(request, earlier, later))), order)).toBeLessThan(
            costOf(must(orderProblem(request)), order) + 1e-9,
          );
        },
      ),
    );
  });
});

const widened = (request: OrderRequest, earlier: number, later: number): OrderRequest => ({
  ...request,
  windows: new Map(
    [...request.windows].map(([set, { fromS, toS }]) => [
      set,
      {
        fromS: fromS === null ? null : ((fromS - earlier) as Seconds),
        toS: toS === null ? null : ((toS + later) as Seconds),
      },
    ]),
  ),
});

describe('the bound', () => {
  it('never says more than an order costs that goes on from there', () => {
    fc.assert(
      fc.property(
        anyCase(MIDDLE),
        fc.constantFrom('swaps' as const, 'side-by-side' as const),
        anySeed,
        ({ of: request }, mounting, from) => {
          const problem = must(orderProblem({ ...request, mounting }));
          const order = shuffled(problem, from);
          const tables = boundTables(problem);
          const state = startState(problem);
          const cost = costOf(problem, order);
          expect(leastCost(problem, tables, USUAL_WEIGHTS, state)).toBeLessThanOrEqual(cost + 1e-9);
          for (const index of order) {
            const kind = problem.kinds[index];
            if (kind) takeTurn(problem, state, kind);
            const least = leastCost(problem, tables, USUAL_WEIGHTS, state);
            expect(least).toBeLessThanOrEqual(cost + 1e-9);
          }
          expect(leastCost(problem, tables, USUAL_WEIGHTS, state)).toBeCloseTo(cost, 9);
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('the search', { timeout: 60_000 }, () => {
  it('finds the cheapest of all orders, counted out', () => {
    fc.assert(
      fc.property(anyCase(SMALL), ({ of: request }) => {
        const problem = must(orderProblem(request));
        let cheapest = Number.POSITIVE_INFINITY;
        for (const order of allOrders(problem)) {
          cheapest = Math.min(cheapest, costOf(problem, order));
        }
        const { order, cost, proven, least } = found(problem, {
          walks: 0,
          tries: 0,
          steps: 1_000_000,
        });
        expect(proven).toBe(true);
        expect(cost).toBeCloseTo(cheapest, 9);
        expect(least).toBe(cost);
        expect(costOf(problem, order)).toBeCloseTo(cost, 9);
      }),
      { numRuns: 25 },
    );
  });

  it('reports the cost that its order has, and one no higher than any named order’s', () => {
    fc.assert(
      fc.property(anyCase({ ...MIDDLE, mostTurns: 16 }), ({ of: request }) => {
        const problem = must(orderProblem(request));
        const starts = namedStarts(request, problem);
        const { order, cost, least } = found(problem, BRIEF, starts);
        expect(costOf(problem, order)).toBeCloseTo(cost, 12);
        expect(costedOrder(problem, order, USUAL_WEIGHTS).cost.total).toBeCloseTo(cost, 12);
        expect(cost).toBeLessThanOrEqual(costOf(problem, problem.standing) + 1e-9);
        for (const { name, cost: its } of must(namedOrders(request, USUAL_WEIGHTS))) {
          if (name !== 'side-by-side') expect(cost).toBeLessThanOrEqual(its.total + 1e-9);
        }
        expect(least).toBeLessThanOrEqual(cost);
      }),
      { numRuns: 10 },
    );
  });

  it('leaves locked sets in their places', () => {
    let moved = 0;
    fc.assert(
      fc.property(anyCase(MIDDLE), fc.integer({ min: 1, max: 3 }), ({ of: request }, first) => {
        const locked = new Set([`set-${first}` as SetId]);
        const problem = must(orderProblem({ ...request, locked }));
        const { order } = found(problem, BRIEF);
        const placesOf = (turns: readonly number[]) =>
          turns.map((kind) => {
            const set = problem.sets[problem.kinds[kind]?.set ?? -1];
            return set && locked.has(set.id) ? kind : null;
          });
        expect(placesOf(order)).toEqual(placesOf(problem.standing));
        if (order.some((kind, place) => kind !== problem.standing[place])) moved += 1;
      }),
      { numRuns: 15 },
    );
    expect(moved).toBeGreaterThan(2);
  });

  it('never finds a dearer order when a lock is taken off or a window made wider', () => {
    fc.assert(
      fc.property(anyCase(SMALL), ({ of: request }) => {
        const exact = (of: OrderRequest) => {
          const { cost, proven } = found(must(orderProblem(of)), {
            walks: 0,
            tries: 0,
            steps: 1_000_000,
          });
          expect(proven).toBe(true);
          return cost;
        };
        const free = exact(request);
        expect(free).toBeLessThan(
          exact({ ...request, locked: new Set(['set-1' as SetId]) }) + 1e-9,
        );
        expect(exact(widened(request, 300, 300))).toBeLessThan(free + 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it('brings no rig back to the tripod where each has its one time', () => {
    fc.assert(
      fc.property(anyCase(MIDDLE, 'one-rig-at-a-time'), ({ of: request }) => {
        const problem = must(orderProblem(request));
        const { order } = found(problem, BRIEF);
        const { swaps } = costedOrder(problem, order, USUAL_WEIGHTS);
        expect(swaps).toBe(request.plan.rigs.length - 1);
      }),
      { numRuns: 10 },
    );
  });

  it('refuses a lock that one rig at a time cannot keep', () => {
    const request = Array.from({ length: 200 }, (_, from) =>
      orderCase(mulberry32(seed(from)), MIDDLE, 'one-rig-at-a-time'),
    ).find(({ plan }) => plan.order === 'alternate' && (plan.sets[0]?.passes ?? 1) > 1);
    if (!request) throw new Error('a case with passes');
    const locked = new Set(request.plan.sets.map(({ id }) => id));
    const search = fairOrder(
      must(orderProblem({ ...request, locked })),
      USUAL_WEIGHTS,
      seed(1),
      QUICK,
    );
    const step = search.next();
    expect(step).toEqual({ done: true, value: { refused: true, rule: 'locked-against-mounting' } });
  });

  it('is the same again from the same seed, and can be left at any time', () => {
    const large: CaseSize = { leastTurns: 24, mostTurns: 32, mostRepeats: 1, darks: false };
    const problem = must(orderProblem(orderCase(mulberry32(seed(5)), large)));
    const effort = { walks: 1, tries: 3, steps: 20_000 };
    const looks = () => {
      const seen: SearchProgress[] = [];
      const search = fairOrder(problem, USUAL_WEIGHTS, seed(7), effort);
      for (let step = search.next(); !step.done; step = search.next()) seen.push(step.value);
      return seen;
    };
    const [once, again] = [looks(), looks()];
    expect(again).toEqual(once);
    expect(once.length).toBeGreaterThan(5);
    for (const [index, { share, cost, order }] of once.entries()) {
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
      if (Number.isFinite(cost)) {
        expect(costOf(problem, order)).toBeCloseTo(cost, 9);
        expect(cost).toBeLessThanOrEqual((once[index - 1]?.cost ?? cost) + 1e-9);
      }
    }
    const left = fairOrder(problem, USUAL_WEIGHTS, seed(7), effort);
    left.next();
    expect(left.return(null as never)).toEqual({ done: true, value: null });
  });
});

describe('a problem', () => {
  it('is refused without frames, with a rig that is gone, or a set that is gone', () => {
    const request = orderCase(mulberry32(seed(3)), SMALL);
    const no = (change: Partial<OrderRequest>) => {
      const problem = orderProblem({ ...request, ...change });
      return isRefusal(problem) ? problem.rule : null;
    };
    expect(no({})).toBeNull();
    expect(no({ frames: [] })).toBe('no-frames');
    expect(no({ gear: { ...request.gear, rigs: [] } })).toBe('rig-gone');
    expect(no({ plan: { ...request.plan, sets: [] } })).toBe('set-gone');
    const [first, ...others] = request.frames;
    if (!first) throw new Error('a frame');
    const longer = { ...first, exact: { ...first.exact, t: duration(7) } };
    const passes = request.frames.filter(({ set, rig }) => set === first.set && rig === first.rig);
    const several = new Set(passes.map(({ pass }) => pass)).size > 1;
    expect(no({ frames: [longer, ...others] })).toBe(several ? 'passes-differ' : null);
  });
});
