import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn } from '../../../../test/arbitraries/sky.ts';
import type { RigId } from '../../../gear/ids.ts';
import { PRACTICE_GEAR } from '../../../gear/practice.ts';
import type { Gear } from '../../../gear/rig.ts';
import { assumedScene } from '../../../light/scene.ts';
import type { FrameKey, SetId } from '../../../plan/ids.ts';
import type { Plan, PlanSet } from '../../../plan/plan.ts';
import { practicePlan } from '../../../plan/practicePlan.ts';
import { preparePlan } from '../../../plan/prepare.ts';
import { minutesEast, seconds, type UtcMs } from '../../../science/units.ts';
import { axisTicks, type LaneAct, laneActs, lightUnder, nearestFrame } from './lanes.ts';

const HOUR = seconds(3600);

describe('what is drawn in the lanes', () => {
  const base = practicePlan();
  const [first] = base.sets as readonly [PlanSet, ...PlanSet[]];
  const plan: Plan = {
    ...base,
    sets: [first, { ...first, id: 'd' as SetId, kind: 'capped-dark' }],
    rest: { kind: 'thumb', rule: { factor: 3, offUpToS: seconds(1), longestS: HOUR } },
  };
  const gear: Gear = {
    ...PRACTICE_GEAR,
    bodies: PRACTICE_GEAR.bodies.map((body) => ({
      ...body,
      darkFrame: body.sign === 'A' ? { kind: 'always' } : { kind: 'never' },
    })),
  };
  const prepared = preparePlan(plan, gear);
  const acts = laneActs(plan, prepared);
  const count = (act: LaneAct['act']) => acts.filter((each) => each.act === act).length;

  it('is every frame, each under its cap or not, with swaps, rests and the body’s own darks', () => {
    // A B B A, a dark after each light; Alder takes a dark frame of its own after all of its four.
    expect(count('exposure')).toBe(4);
    expect(count('capped')).toBe(4);
    expect(count('own-dark')).toBe(4);
    expect(count('swap')).toBe(2);
    expect(count('rest')).toBe(prepared.timeline.rests.length);
    expect(count('rest')).toBeGreaterThan(0);
    expect(acts.map(({ fromS }) => fromS)).toEqual(
      acts.map(({ fromS }) => fromS).toSorted((a, b) => a - b),
    );
  });

  it('shows a body at its own dark frame for as long as it exposed', () => {
    for (const dark of acts.filter(({ act }) => act === 'own-dark')) {
      expect(dark.toS - dark.fromS).toBeCloseTo(64, 6);
      expect(acts.some(({ frame, toS }) => frame === dark.frame && toS === dark.fromS)).toBe(true);
    }
  });
});

describe('the marks of the axis', () => {
  it('stand at whole steps of the site’s clock, far enough apart to be read', () => {
    const startMs = Date.UTC(2027, 1, 12, 17, 53) as UtcMs;
    // 360 px an hour: 10 minutes are the first step of 50 px or more.
    const utc = axisTicks(HOUR, 360, 50, { startMs, offsetMin: minutesEast(0) });
    expect(utc.map((at) => at / 60)).toEqual([7, 17, 27, 37, 47, 57]);
    const kathmandu = axisTicks(HOUR, 360, 50, { startMs, offsetMin: minutesEast(345) });
    expect(kathmandu.map((at) => at / 60)).toEqual([2, 12, 22, 32, 42, 52]);
  });

  it('are minutes from the start where nobody knows it', () => {
    expect(axisTicks(HOUR, 220, 50, null).map((at) => at / 60)).toEqual([0, 15, 30, 45, 60]);
    expect(axisTicks(seconds(90), 300, 50, null).map((at) => at / 60)).toEqual([0, 1]);
  });
});

describe('the light beneath', () => {
  it('falls as its scene does, with its width, over the whole list', () => {
    // EV 8 - 0.2 a minute.
    const light = lightUnder(assumedScene(EVEN_DUSK), minutesOn(10), HOUR);
    expect(light?.[0]?.ev).toBeCloseTo(6, 2);
    expect(light?.at(-1)?.ev).toBeCloseTo(-6, 2);
    expect(light?.at(-1)?.atS).toBe(3600);
    for (const { ev, low, high } of light ?? []) expect(high - ev).toBeCloseTo(ev - low, 9);
    expect((light?.[0]?.high ?? 0) - (light?.[0]?.low ?? 0)).toBeGreaterThan(4);
  });

  it('is unknown where the sky is not known to the end', () => {
    expect(lightUnder(assumedScene(EVEN_DUSK), minutesOn(100_000), HOUR)).toBeNull();
  });
});

describe('a tap', () => {
  const act = (frame: string | null, fromS: number, toS: number): LaneAct => ({
    act: frame === null ? 'rest' : 'exposure',
    rig: 'r' as RigId,
    fromS: seconds(fromS),
    toS: seconds(toS),
    frame: frame as FrameKey | null,
  });
  const acts = [act('one', 10, 20), act(null, 20, 90), act('two', 90, 100)];

  it('takes the frame that is nearest, never a rest', () => {
    expect(nearestFrame(acts, seconds(15))).toBe('one');
    expect(nearestFrame(acts, seconds(50))).toBe('one');
    expect(nearestFrame(acts, seconds(60))).toBe('two');
    expect(nearestFrame(acts, seconds(500))).toBe('two');
    expect(nearestFrame([act(null, 1, 2)], seconds(1))).toBeNull();
  });
});
