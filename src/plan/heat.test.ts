import { describe, expect, it } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { Gear } from '../gear/rig.ts';
import { noiseFromDarkRatio } from '../science/noise.ts';
import { must } from '../science/refusal.ts';
import { restedMidHeat } from '../science/sensorRest.ts';
import { doublings, electrons, tolerance } from '../science/sensorUnits.ts';
import {
  DARK_CURRENT_AT_20,
  type ThermalRange,
  UNMEASURED,
  usualModel,
} from '../science/thermalRange.ts';
import {
  duration,
  ev,
  fNumber,
  iso,
  parseStopsPerMinute,
  ratio,
  seconds,
  stops,
} from '../science/units.ts';
import { USUAL_WEIGHTS } from './costWeights.ts';
import { frameHeat, heatsOf, pairHeats, restBefore } from './heat.ts';
import { heatCourseOf } from './heatCourse.ts';
import { darkLimit, heatAbove } from './heatLimit.ts';
import type { PlanId, SetId } from './ids.ts';
import { DEFAULT_HEAT_LIMIT, newPlan, newSet } from './newPlan.ts';
import { orderFrames } from './order.ts';
import type { OrderName, Plan } from './plan.ts';
import { restWorth } from './restWorth.ts';
import { SHADOWS_BELOW, shadowCounts, USUAL_READ_NOISE } from './shadows.ts';
import { timelineOf } from './timeline.ts';

const [a, b] = PRACTICE_GEAR.rigs.map(({ id }) => id) as [RigId, RigId];

/** As in the reference's worked example: lenses that keep their focus, no self-timer, no dark frame. */
const gear: Gear = {
  ...PRACTICE_GEAR,
  bodies: PRACTICE_GEAR.bodies.map((body) => ({
    ...body,
    selfTimer: { ...body.selfTimer, usedS: null },
    darkFrame: { kind: 'never' },
  })),
  lenses: PRACTICE_GEAR.lenses.map((lens) => ({ ...lens, focusSurvivesPowerOff: true })),
};
const settings = { fMark: '8', time: { kind: 'dial', mark: '60' }, isoMark: '200' } as const;
const exact = { n: fNumber(8), t: seconds(60), s: iso(200) };

/** 60 s frames, 20 s on before each, 120 s to swap. */
const planOf = (order: OrderName): Plan => ({
  ...newPlan('p' as PlanId, 'p', [a, b]),
  sets: [{ ...newSet('s' as SetId, a, settings), passes: 2 }],
  order,
  allowances: {
    swapS: duration(90),
    reframeS: duration(30),
    dialChangeS: duration(0),
    settleS: duration(20),
    writeS: duration(0),
  },
  rest: { kind: 'none' },
});

function workedOut(order: OrderName, thermal: (rig: RigId) => ThermalRange = () => UNMEASURED) {
  const plan = planOf(order);
  const frames = orderFrames(plan, () => ({ settings, exact }));
  const timeline = must(timelineOf(plan, gear, frames));
  const course = must(heatCourseOf(plan, gear, frames, timeline));
  const heats = heatsOf(course, thermal);
  return { plan, frames, course, heats, pairs: pairHeats(plan, frames, heats) };
}

describe('the heat of a list', () => {
  it('is uneven in A B B A and even in A B A B, as worked by hand', () => {
    const mirror = workedOut('mirror');
    const of = (rig: RigId, pass: number) => {
      const frame = mirror.frames.find((each) => each.rig === rig && each.pass === pass);
      return frame && frameHeat(mirror.heats, rig, frame.key)?.usual;
    };
    expect(of(a, 1)).toBeCloseTo(0.111, 3);
    expect(of(a, 2)).toBeCloseTo(0.188, 3);
    expect(of(b, 1)).toBeCloseTo(0.111, 3);
    expect(of(b, 2)).toBeCloseTo(0.289, 3);
    const [pair] = mirror.pairs;
    expect(pair?.byHistory.usual).toBeCloseTo(0.05, 3);
    expect(pair?.byHistory.least).toBeGreaterThan(0);

    const [even] = workedOut('alternate').pairs;
    expect(even?.byHistory).toEqual({ usual: 0, least: 0, most: 0 });
    // Two bodies that nobody has measured may differ all the same, either way.
    expect(even?.withBodies.least).toBeLessThan(-0.2);
    expect(even?.withBodies.most).toBeGreaterThan(0.2);
  });

  it('of measured bodies is their own', () => {
    const warm: ThermalRange = {
      ...UNMEASURED,
      exposing: { ...UNMEASURED.exposing, usual: UNMEASURED.exposing.most },
    };
    const [pair] = workedOut('alternate', (rig) => (rig === b ? warm : UNMEASURED)).pairs;
    expect(pair?.byHistory.usual).toBeGreaterThan(0.05);
  });

  it('is refused for frames of another list', () => {
    const plan = planOf('mirror');
    const frames = orderFrames(plan, () => ({ settings, exact }));
    const timeline = must(timelineOf(plan, gear, frames));
    expect(heatCourseOf(plan, gear, frames.toReversed(), timeline)).toEqual({
      refused: true,
      rule: 'frames-differ',
    });
    expect(heatCourseOf(plan, { ...gear, rigs: [] }, frames, timeline)).toEqual({
      refused: true,
      rule: 'rig-gone',
    });
  });
});

describe('the rest before a frame', () => {
  const next = { t: seconds(60), leadIn: [] };
  const behind = [{ mode: 'exposing', lasts: seconds(60) }] as const;

  it('after 60 s for 1.10 is 101 s, and from 0 to 526 s over the corners', () => {
    const rest = restBefore({ behind, mode: 'off', next }, UNMEASURED, (model) =>
      heatAbove(restedMidHeat(model, next), ratio(1.1)),
    );
    expect(rest.usual).toBeCloseTo(101.3, 1);
    expect(rest.least).toBe(0);
    expect(rest.most).toBeCloseTo(525.8, 1);
  });

  it('is none that is enough where the body must stay on and the limit lies under idling', () => {
    const rest = restBefore({ behind, mode: 'idle', next }, UNMEASURED, (model) =>
      heatAbove(restedMidHeat(model, next), ratio(1.01)),
    );
    expect(rest.usual).toBeNull();
    expect(rest.most).toBeNull();
  });

  it('is proposed where it wins more than the fade it costs', () => {
    const worth = (fade: number) =>
      restWorth(
        seconds(120),
        must(parseStopsPerMinute(fade)),
        { without: doublings(0.4), with: doublings(0.1) },
        USUAL_WEIGHTS,
      );
    expect(worth(-0.02)).toMatchObject({ pays: true });
    expect(worth(-0.2)).toMatchObject({ pays: false });
    expect(worth(-0.2).wins).toBeCloseTo(0.25 * 0.3, 9);
    expect(worth(-0.2).costs).toBeCloseTo(0.4 + 0.004, 9);
  });
});

describe('the limit on heat', () => {
  const [body] = PRACTICE_GEAR.bodies;
  if (!body) throw new Error('a body');
  const shadows = (scene: number) =>
    shadowCounts(body, exact, {
      scene: ev(scene),
      below: SHADOWS_BELOW,
      read: USUAL_READ_NOISE,
      dark: DARK_CURRENT_AT_20.usual,
      heat: doublings(0),
    });

  it('is a quarter more where the signal is unknown or has no dark current', () => {
    expect(darkLimit(null, DEFAULT_HEAT_LIMIT)).toBe(1.25);
    const none = { ...shadows(0), dark: electrons(0) };
    expect(darkLimit(none, DEFAULT_HEAT_LIMIT)).toBe(1.25);
  });

  it('lets the noise of the shadows change by what is tolerated, and less in less light', () => {
    for (const scene of [0, -2, -4]) {
      const tolerated = { ...DEFAULT_HEAT_LIMIT, tolerated: tolerance(0.05) };
      const limit = darkLimit(shadows(scene), tolerated);
      expect(must(noiseFromDarkRatio(shadows(scene), limit))).toBeCloseTo(0.05, 9);
      expect(limit).toBeGreaterThan(darkLimit(shadows(scene - 1), tolerated));
    }
  });

  it('counts electrons by the light: a stop less is half, and a metered frame is at mid-tone', () => {
    expect(shadows(1).signal / shadows(0).signal).toBeCloseTo(2, 9);
    // f/8, 60 s at EV100 0: 0.0635 lx s at mid-tone (q 0.65, K 12.5 of ISO 100), 4 stops under it a
    // sixteenth; 28.1 um2 of pixel; 2500 e.
    const midtone = (0.6516 * 0.125 * 60) / 64;
    const pixel = (43.8 * 32.9 * 1e6) / (8272 * 6200);
    expect(shadows(0).signal).toBeCloseTo((midtone / 16) * pixel * 2500, 0);
    expect(shadows(0).dark).toBeCloseTo(6, 9);
    expect(stops(4)).toBe(SHADOWS_BELOW);
    expect(usualModel(UNMEASURED).tau).toBe(480);
  });
});
