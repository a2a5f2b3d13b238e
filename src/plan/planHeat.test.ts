import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body } from '../gear/body.ts';
import { NOTHING_MEASURED } from '../gear/bodyHeat.ts';
import { darkFrameS } from '../gear/darkFrame.ts';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { assemble, type Gear } from '../gear/rig.ts';
import { must } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { kelvins, tolerance } from '../science/sensorUnits.ts';
import { type Ranged, type Stated, UNMEASURED, usualModel } from '../science/thermalRange.ts';
import { duration, parseStopsPerMinute, ratio, seconds } from '../science/units.ts';
import { restBefore } from './heat.ts';
import { behindAt, heatCourseOf } from './heatCourse.ts';
import type { PlanId, SetId } from './ids.ts';
import {
  DEFAULT_ALLOWANCES,
  DEFAULT_HEAT_LIMIT,
  DEFAULT_REST,
  newPlan,
  newSet,
} from './newPlan.ts';
import { nextFrameOf } from './nextFrame.ts';
import { ORDERS, type Plan, type Rest } from './plan.ts';
import { planHeat } from './planHeat.ts';
import { preparePlan } from './prepare.ts';
import { rhythmsOf } from './rhythm.ts';

const [a, b] = PRACTICE_GEAR.rigs.map(({ id }) => id) as [RigId, RigId];

/** Lenses that keep their focus or not, no self-timer. */
const gearWith = (focusSurvivesPowerOff: boolean, change: Partial<Body> = {}): Gear => ({
  ...PRACTICE_GEAR,
  bodies: PRACTICE_GEAR.bodies.map((body) => ({
    ...body,
    selfTimer: { ...body.selfTimer, usedS: null },
    darkFrame: { kind: 'never' },
    ...change,
  })),
  lenses: PRACTICE_GEAR.lenses.map((lens) => ({ ...lens, focusSurvivesPowerOff })),
});
const gear = gearWith(true);

const bulb = (s: number) =>
  ({ fMark: '8', time: { kind: 'bulb', seconds: seconds(s) }, isoMark: '200' }) as const;
const dial = (mark: string) =>
  ({ fMark: '8', time: { kind: 'dial', mark }, isoMark: '200' }) as const;

/** As in the reference's worked example: 60 s frames, 20 s on before each, 120 s to swap. */
const plan = (change: Partial<Plan> = {}): Plan => ({
  ...newPlan('p' as PlanId, 'p', [a, b]),
  sets: [
    {
      ...newSet('s' as SetId, a, dial('64')),
      passes: 2,
      hold: { kind: 'free', settings: { [a]: bulb(60), [b]: dial('60') } },
      settings: bulb(60),
    },
  ],
  allowances: {
    swapS: duration(90),
    reframeS: duration(30),
    dialChangeS: duration(0),
    settleS: duration(20),
    writeS: duration(0),
  },
  rest: { kind: 'none' },
  ...change,
});
const LIMIT: Rest = { kind: 'limit', limit: DEFAULT_HEAT_LIMIT };
const heatOf = (of: Plan, on: Gear = gear) => {
  const prepared = preparePlan(of, on);
  return { prepared, heat: planHeat(of, on, prepared) };
};

describe('the heat of a plan', () => {
  it('leaves B 0.050 stop of dark current over A in A B B A, as worked by hand, with its range', () => {
    const { prepared, heat } = heatOf(plan());
    const usual = prepared.frames.map(({ key }) => heat.frames.get(key)?.usual);
    [0.111, 0.111, 0.289, 0.188].forEach((expected, at) => {
      expect(usual[at]).toBeCloseTo(expected, 3);
    });
    const [pair] = heat.pairs;
    expect(pair).toMatchObject({ reference: a, other: b });
    expect(pair?.byHistory.usual).toBeCloseTo(0.05, 3);
    expect(pair?.byHistory.least).toBeLessThan(0.02);
    expect(pair?.byHistory.most).toBeGreaterThan(0.1);
    expect(pair?.withBodies.least).toBeLessThan(pair?.byHistory.least ?? Number.NaN);
    expect(pair?.withBodies.most).toBeGreaterThan(pair?.byHistory.most ?? Number.NaN);
  });

  it('is evened out by the 400 s that A had, whatever the bodies are like', () => {
    const of = plan();
    const { frames, timeline } = preparePlan(of, gear);
    const course = must(heatCourseOf(of, gear, frames, timeline));
    const [, firstOfB] = timeline.frames;
    const next = nextFrameOf(of, found(assemble(gear, b)).body, seconds(60));
    const spansOf = (rig: RigId) => found(course.get(rig));
    // A's second frame is its last span, of which half lies behind its middle.
    const ofA = spansOf(a).slice(0, -1);
    const rest = restBefore(
      { behind: behindAt(spansOf(b), firstOfB?.freeS ?? seconds(1)), mode: 'off', next },
      UNMEASURED,
      (model) => {
        let heat = 0;
        for (const { mode, lasts } of [...ofA, { mode: 'exposing', lasts: 30 } as const]) {
          const plateau = model.plateaus[mode];
          heat = plateau + (heat - plateau) * Math.exp(-lasts / model.tau);
        }
        return heat as ReturnType<typeof restedMidHeat>;
      },
    );
    expect(rest.usual).toBeCloseTo(400, 6);
    expect(rest.least).toBeCloseTo(400, 6);
    expect(rest.most).toBeCloseTo(400, 6);
  });

  it('has no pairs in a capped series, in which nothing is compared', () => {
    const [set] = plan().sets;
    if (!set) throw new Error('a set');
    const { heat, prepared } = heatOf(
      plan({ sets: [{ ...set, id: 'warm' as SetId, kind: 'capped-series' }, set] }),
    );
    expect(heat.pairs.map((pair) => pair.set)).toEqual(['s']);
    expect(heat.frames.size).toBe(prepared.frames.length);
  });

  it('is drawn as a course that rises while it exposes and falls while it waits', () => {
    const { prepared, heat } = heatOf(plan());
    const points = heat.courses.get(b) ?? [];
    const [, first] = prepared.timeline.frames;
    expect(points[0]).toEqual({ atS: 0, heat: 0 });
    expect(points.at(-1)?.atS).toBeCloseTo(prepared.timeline.frames[2]?.freeS ?? Number.NaN, 6);
    for (const [at, { atS, heat: there }] of points.entries()) {
      const before = points[at - 1];
      if (!before || !first) continue;
      expect(atS).toBeGreaterThan(before.atS);
      if (before.atS >= first.startS && atS <= first.endS)
        expect(there).toBeGreaterThan(before.heat);
    }
  });
});

describe('rests by the limit', () => {
  /** In light so dim that the noise of the shadows is the dark current's in part. */
  const dim = { ...dial('60'), isoMark: '12800' };
  const warm = plan({
    order: 'rig-by-rig',
    rest: LIMIT,
    sets: [
      { ...newSet('s' as SetId, b, dim), hold: { kind: 'same-exposure' }, passes: 1, repeats: 3 },
    ],
  });

  it('are suggestions until a body is measured, with a range that is wider than one figure', () => {
    const { heat } = heatOf(warm);
    const [rest] = heat.rests;
    expect(rest).toMatchObject({ isSuggestion: true, isProposed: true, mode: 'off' });
    expect(rest?.range.usual).toBeCloseTo(rest?.rest.s ?? Number.NaN, 6);
    expect(rest?.range.least).toBeLessThan(rest?.rest.s ?? 0);
    expect(rest?.range.most ?? Number.POSITIVE_INFINITY).toBeGreaterThan(rest?.rest.s ?? 0);

    const stated = <T extends number>({ usual }: Ranged<T>): Stated<T> => ({
      usual,
      least: usual,
      most: usual,
      from: 'a capped series',
    });
    const measured = gearWith(true, {
      heat: {
        ...NOTHING_MEASURED,
        tau: stated(UNMEASURED.tau),
        doubling: stated(UNMEASURED.doubling),
        exposing: stated({ ...UNMEASURED.exposing, usual: kelvins(10) }),
      },
    });
    expect(heatOf(warm, measured).heat.rests.every(({ isSuggestion }) => !isSuggestion)).toBe(true);
  });

  it('are on, not off, for a lens that loses its focus, and last longer', () => {
    const flats = plan({
      order: 'rig-by-rig',
      rest: { kind: 'limit', limit: { ...DEFAULT_HEAT_LIMIT, unknownRatio: ratio(1.45) } },
      sets: warm.sets.map((set) => ({ ...set, kind: 'flat', repeats: 16 })),
    });
    const [off] = heatOf(flats).heat.rests;
    const [on] = heatOf(flats, gearWith(false)).heat.rests;
    expect(off?.mode).toBe('off');
    expect(on?.mode).toBe('idle');
    expect(on?.rest.s).toBeGreaterThan(off?.rest.s ?? Number.NaN);
  });

  it('are none where the body must stay on and no rest is enough, which is told', () => {
    const { prepared, heat } = heatOf(warm, gearWith(false));
    expect(prepared.timeline.rests).toEqual([]);
    expect(heat.rests.length).toBeGreaterThan(0);
    for (const { range, rest, isProposed } of heat.rests) {
      expect(range.usual).toBeNull();
      expect(rest.s).toBe(0);
      expect(isProposed).toBe(false);
    }
  });

  it('are not taken where the fade costs more than they win, and both are told', () => {
    const fast = must(parseStopsPerMinute(-0.4));
    const prepared = preparePlan(warm, gear, () => fast);
    expect(prepared.timeline.rests).toEqual([]);
    const { rests } = planHeat(warm, gear, prepared);
    expect(rests.length).toBeGreaterThan(0);
    for (const { isProposed, rest } of rests) {
      expect(isProposed).toBe(false);
      expect(rest.worth?.costs).toBeGreaterThan(rest.worth?.wins ?? Number.NaN);
    }
    const slow = must(parseStopsPerMinute(-0.001));
    expect(preparePlan(warm, gear, () => slow).timeline.rests.length).toBeGreaterThan(0);
  });
});

describe('what the rule of thumb leaves', () => {
  // The sheet's table: settled frame over the first, equal rest.
  it.each([
    [15, 0.74],
    [60, 0.68],
    [120, 0.59],
    [240, 0.45],
    [480, 0.25],
  ])('after many frames of %i s is +%f stop of dark current', (t, leaves) => {
    const of = plan({
      rigs: [a],
      sets: plan().sets.map((set) => ({
        ...set,
        settings: bulb(t),
        hold: { kind: 'same-exposure' },
      })),
    });
    const { frames } = preparePlan(of, gear);
    const rule = { ...DEFAULT_REST, offUpToS: duration(0) };
    const [rhythm] = rhythmsOf(rule, gear, of.sets, frames);
    expect(rhythm).toMatchObject({ rig: a, t, rest: t });
    // The sheet's frames are many, not endlessly many.
    expect(Math.abs((rhythm?.leaves.usual ?? Number.NaN) - leaves)).toBeLessThan(0.006);
    expect(rhythm?.leaves.least).toBeGreaterThan(0);
  });

  it('is all that exposing gives where the rule asks for no rest', () => {
    const { frames } = preparePlan(plan(), gear);
    const [rhythm] = rhythmsOf(DEFAULT_REST, gear, plan().sets, frames);
    expect(rhythm?.rest).toBe(0);
    // To the plateau of 10 K over 6.5 K a doubling, from a first frame at 0.0933.
    expect(rhythm?.leaves.usual).toBeCloseTo((10 / 6.5) * Math.exp(-60 / 960), 6);
  });
});

describe('any list', () => {
  const anySeconds = fc.integer({ min: 0, max: 90 }).map(duration);
  const anyPlan = fc
    .record({
      order: fc.constantFrom(...ORDERS.filter((order) => order !== 'side-by-side')),
      times: fc.array(fc.constantFrom('1', '8', '30', '60'), { minLength: 1, maxLength: 3 }),
      passes: fc.integer({ min: 1, max: 3 }),
      repeats: fc.integer({ min: 1, max: 3 }),
      swapS: anySeconds,
      dialChangeS: anySeconds,
      settleS: anySeconds,
      writeS: anySeconds,
      limit: fc.record({
        tolerated: fc.constantFrom(0.005, 0.02, 0.1).map(tolerance),
        unknownRatio: fc.constantFrom(1.05, 1.25, 2).map(ratio),
        longestS: fc.constantFrom(30, 600, 7200).map(duration),
      }),
    })
    .map(({ order, times, passes, repeats, limit, ...allowances }) =>
      plan({
        order,
        rest: { kind: 'limit', limit },
        allowances: { ...DEFAULT_ALLOWANCES, ...allowances },
        sets: times.map((mark, at) => ({
          ...newSet(`s${at}` as SetId, b, { ...dial(mark), isoMark: '12800' }),
          hold: { kind: 'same-exposure' },
          passes,
          repeats,
        })),
      }),
    );
  const anyGear = fc
    .record({ keeps: fc.boolean(), dark: fc.boolean(), timer: fc.constantFrom(null, 2, 10) })
    .map(({ keeps, dark, timer }) =>
      gearWith(keeps, {
        darkFrame: dark ? { kind: 'from', fromS: seconds(20) } : { kind: 'never' },
        selfTimer: {
          choicesS: [],
          usedS: timer === null ? null : duration(timer),
          survivesPowerOff: false,
        },
      }),
    );

  it('is as warm as small steps through its evening make it', () => {
    fc.assert(
      fc.property(anyPlan, anyGear, (of, on) => {
        const { prepared, heat } = heatOf(of, on);
        const { frames, timeline } = prepared;
        fc.pre(timeline.wallS < 7200);
        for (const rig of of.rigs) {
          const { body, lens } = found(assemble(on, rig));
          const own = frames.flatMap((frame, at) => {
            const times = timeline.frames[at];
            return frame.rig === rig && times ? [{ frame, times }] : [];
          });
          /** What the rig does and when, told from the clock; else it waits. */
          const acts = own.flatMap(({ frame, times }, index) => {
            const shut = times.endS + darkFrameS(body.darkFrame, frame.exact.t);
            const settles = times.startS - of.allowances.settleS - (body.selfTimer.usedS ?? 0);
            const before = own[index - 1]?.frame;
            const turned =
              !before || JSON.stringify(before.settings) !== JSON.stringify(frame.settings);
            const rest = timeline.rests.find(
              (span) => span.rig === rig && Math.abs(span.toS - settles) < 1e-6,
            );
            const dialled = rest?.fromS ?? settles;
            const dialS = turned ? of.allowances.dialChangeS : 0;
            return [
              { mode: 'idle', from: dialled - dialS, to: dialled },
              { mode: 'idle', from: settles, to: times.startS },
              { mode: 'exposing', from: times.startS, to: shut },
              { mode: 'idle', from: shut, to: times.freeS },
            ] as const;
          });
          const waits = lens.focusSurvivesPowerOff ? 'off' : 'idle';
          const kelvin = { off: 0, idle: 3, exposing: 10 };
          const step = 0.5;
          let warm = 0;
          let at = 0;
          let act = 0;
          for (const { frame, times } of own) {
            for (; at < times.midS; at += step) {
              const middle = at + step / 2;
              while ((acts[act]?.to ?? Number.POSITIVE_INFINITY) <= middle) act += 1;
              const now = acts[act];
              const mode = now && middle >= now.from ? now.mode : waits;
              warm += ((kelvin[mode] - warm) * step) / 480;
            }
            expect(Math.abs((heat.frames.get(frame.key)?.usual ?? 9) - warm / 6.5)).toBeLessThan(
              0.005,
            );
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('keeps every frame inside its limit that had the rest it needs, and shortens no rest', () => {
    let rested = 0;
    fc.assert(
      fc.property(anyPlan, anyGear, (of, on) => {
        const { prepared, heat } = heatOf(of, on);
        const { timeline, frames } = prepared;
        if (of.rest.kind !== 'limit') throw new Error('rests by the limit');
        for (const { key, rig, rest, limit, range, isProposed } of heat.rests) {
          const at = frames.findIndex((frame) => frame.key === key);
          const [frame, times] = [frames[at], timeline.frames[at]];
          if (!frame || !times) throw new Error('a rest before no frame');
          const { body } = found(assemble(on, rig));
          const model = usualModel(UNMEASURED);
          const over =
            (heat.frames.get(key)?.usual ?? Number.NaN) -
            restedMidHeat(model, nextFrameOf(of, body, frame.exact.t));
          // Where the fade is not known, no rest is left out but those that would not be enough.
          expect(isProposed).toBe(range.usual !== null);
          expect(over).toBeCloseTo(rest.with, 6);
          if (!isProposed) {
            expect(over).toBeGreaterThan(Math.log2(limit));
            continue;
          }
          const span = timeline.rests.findLast(
            (each) => each.rig === rig && each.toS <= times.startS,
          );
          expect(found(span).toS - found(span).fromS).toBeGreaterThanOrEqual(rest.s - 1e-6);
          const { longestS } = of.rest.limit;
          expect(rest.s).toBeLessThanOrEqual(longestS);
          if (range.usual !== null && range.usual <= longestS) {
            rested += 1;
            expect(over).toBeLessThanOrEqual(Math.log2(limit) + 1e-6);
            expect(rest.s).toBeCloseTo(range.usual, 6);
          } else {
            expect(over).toBeGreaterThan(Math.log2(limit));
          }
        }
      }),
      { numRuns: 100 },
    );
    expect(rested).toBeGreaterThan(50);
  });
});

/** What was looked for, which must be there. */
function found<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error('not found');
  return value;
}
