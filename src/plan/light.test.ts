import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CURVED_DUSK, EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, frame, gear, planOf } from '../../test/evenings/evening.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import { duration, minutesBetween, type Stops, stops, type UtcMs } from '../science/units.ts';
import { type PlanLight, planLight, withPredictedFade } from './light.ts';
import type { Plan, PlanEvening, PlanSet } from './plan.ts';
import { preparePlan } from './prepare.ts';

/*
 * Under EV 8 - 0.2 a minute f/8, 1 s, ISO 100 is made for EV 6 and right at minute 10, within a stop
 * from minute 5 to 15. Its first shutter opens 22 s after the start: 15 s for the dials, 5 to
 * settle, 2 of self-timer.
 */

const SCENE = assumedScene(EVEN_DUSK);
const SIDE = { fromMs: minutesOn(0), toMs: minutesOn(110) };

const evening = (startMs: UtcMs | null): PlanEvening => ({
  site: PRACTICE_SITE.id,
  date: '2027-02-12',
  startMs,
  cloud: 'clear',
});
function listOf(change: Partial<Plan> = {}, ofSet: Partial<PlanSet> = {}): Plan {
  const frames = [
    frame('base', A, dialled('8', '1', '100')),
    frame('base', B, dialled('8', '1', '100')),
  ];
  const plan = planOf(frames);
  return { ...plan, ...change, sets: plan.sets.map((set) => ({ ...set, ...ofSet })) };
}
function lightOf(plan: Plan, scene: Scene = SCENE): PlanLight {
  const light = planLight(plan, gear, preparePlan(plan, gear), scene, SIDE);
  if (!light) throw new Error('no light');
  return light;
}
const minuteOf = (at: UtcMs | null | undefined): number =>
  at === null || at === undefined ? Number.NaN : minutesBetween(minutesOn(0), at);

describe('the minutes of a set', () => {
  it('are those in which its reference comes out within the tolerance', () => {
    const [set] = lightOf(listOf()).sets;
    expect(set?.right).toHaveLength(1);
    // By the mean of the second, which is that of its middle.
    expect(minuteOf(set?.right[0]?.fromMs)).toBeCloseTo(5 - 0.5 / 60, 2);
    expect(minuteOf(set?.right[0]?.rightMs)).toBeCloseTo(10 - 0.5 / 60, 2);
    expect(minuteOf(set?.right[0]?.toMs)).toBeCloseTo(15 - 0.5 / 60, 2);
  });

  it('come ten minutes later for a set that is meant two stops under', () => {
    const [set] = lightOf(listOf({}, { targetOffset: stops(-2) })).sets;
    expect(minuteOf(set?.right[0]?.rightMs)).toBeCloseTo(20, 1);
  });

  it('narrow with the tolerance', () => {
    const light = { tolerance: stops(0.2), mostFade: stops(1 / 3) };
    const [set] = lightOf(listOf({ light })).sets;
    expect(minuteOf(set?.right[0]?.toMs)).toBeCloseTo(11, 1);
  });
});

describe('when to start', () => {
  it('is the latest minute at which every set still fits', () => {
    const { best, startMs, sets } = lightOf(listOf());
    expect(best.fits).toBe(true);
    expect(minuteOf(best.startMs)).toBe(14);
    expect(startMs).toBe(best.startMs);
    expect(sets[0]).toMatchObject({ beyond: 0, mend: null });
  });

  it('is the smallest total miss where nothing fits, by an independent count', () => {
    const spread = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(spread, spread, (one, two) => {
        const base = listOf();
        const [set] = base.sets;
        if (!set) throw new Error('a set');
        const plan: Plan = {
          ...base,
          light: { tolerance: stops(0.1), mostFade: stops(1) },
          sets: [one, two].map((offset, place) => ({
            ...set,
            id: `set-${place}` as PlanSet['id'],
            targetOffset: offset as Stops,
          })),
        };
        const prepared = preparePlan(plan, gear);
        const total = (minute: number): number =>
          [one, two].reduce((sum, offset, place) => {
            const at = prepared.frames.findIndex(
              (each) => each.rig === A && each.set === `set-${place}`,
            );
            const after = (prepared.timeline.frames[at]?.midS ?? Number.NaN) / 60;
            const miss = 8 - 0.2 * (minute + after) - 6 - offset;
            return sum + Math.max(0, Math.abs(miss) - 0.1);
          }, 0);
        const best = lightOf(plan).best;
        const least = Math.min(...Array.from({ length: 111 }, (_, minute) => total(minute)));
        expect(total(minuteOf(best.startMs))).toBeCloseTo(least, 6);
        expect(best.fits).toBe(least < 1e-9);
      }),
      { numRuns: 25 },
    );
  });

  it('tells how sure the light is, never a bare minute', () => {
    // The model alone knows a scene under a stated sky to two stops, one sigma.
    expect(lightOf(listOf()).within).toBeCloseTo(3.2, 1);
  });
});

describe('a set outside of its minutes', () => {
  const late = () => lightOf(listOf({ evening: evening(minutesOn(20)) })).sets[0];

  it('is told how far it lies beyond the tolerance', () => {
    // EV 8 - 0.2 x (20 + 22.5 s) = 3.925 against 6: 2.075 too dark, a stop of it tolerated.
    expect(late()?.beyond).toBeCloseTo(-1.075, 3);
    const early = lightOf(listOf({ evening: evening(minutesOn(1)) })).sets[0];
    expect(early?.beyond).toBeCloseTo(0.725, 3);
  });

  it('is mended by the nearest start, another time or another ISO', () => {
    const mend = late()?.mend;
    expect(minuteOf(mend?.startMs)).toBe(14);
    const turned = Object.fromEntries(
      (mend?.turned ?? []).map(({ dial, settings, miss }) => [dial, { settings, miss }]),
    );
    expect(turned['time']?.settings.time).toEqual({ kind: 'dial', mark: '4' });
    expect(turned['iso']?.settings.isoMark).toBe('400');
    expect(turned['iso']?.miss).toBeCloseTo(-0.075, 3);
    expect(turned['f-number']?.settings.fMark).toBe('4');
  });

  it('has no start to mend it under a sky that never has its light', () => {
    const dark = lightOf(
      listOf({ evening: evening(minutesOn(20)) }),
      assumedScene(skyOf((minute) => -5 - minute / 100, 120)),
    ).sets[0];
    expect(dark?.right).toEqual([]);
    expect(dark?.mend?.startMs).toBeNull();
  });
});

describe('what does not look at the light', () => {
  it('is a wall and a capped dark', () => {
    for (const kind of ['flat', 'capped-dark'] as const) {
      const plan = listOf({}, { kind });
      expect(planLight(plan, gear, preparePlan(plan, gear), SCENE, SIDE)).toBeNull();
    }
  });
});

describe('the fade that is predicted for a pair', () => {
  const fadeOf = (plan: Plan, scene: Scene = SCENE) => {
    const prepared = preparePlan(plan, gear);
    const [table] = withPredictedFade(plan, gear, prepared, scene, minutesOn(10)).table;
    if (table?.kind !== 'compared') throw new Error('compared');
    const differences = table.others[0]?.differences;
    const before = prepared.table[0];
    if (before?.kind !== 'compared') throw new Error('compared');
    return {
      fade: differences?.lines.find(({ cause }) => cause === 'fade')?.difference,
      differences,
      before: before.others[0]?.differences,
      times: prepared.timeline.frames,
    };
  };

  it('is the light lost between its frames, with its width and marked as the model’s', () => {
    const { fade, times } = fadeOf(listOf());
    const minutes = ((times[1]?.startS ?? 0) - (times[0]?.startS ?? 0)) / 60;
    expect(minutes).toBeGreaterThan(1);
    if (!fade?.known) throw new Error('known');
    expect(fade.stops).toBeCloseTo(-0.2 * minutes, 6);
    expect(fade.estimate?.from).toBe('model');
    expect(fade.estimate?.sigma).toBeGreaterThan(0.05);
  });

  it('enters the sum and what is left after the hold', () => {
    const { fade, differences, before } = fadeOf(listOf());
    if (!fade?.known || !differences || !before) throw new Error('known');
    expect(differences.sum.stops - before.sum.stops).toBeCloseTo(fade.stops, 9);
    expect(differences.sum.missing).not.toContain('fade');
    expect(before.sum.missing).toContain('fade');
  });

  it('stays unknown where the evening runs past its sky', () => {
    const { fade } = fadeOf(listOf(), assumedScene(skyOf(() => 3, 11)));
    expect(fade).toEqual({ known: false, why: 'no-sky' });
  });
});

describe('a swap against the fade', () => {
  const slow = (change: Partial<Plan> = {}): Plan => ({
    ...listOf(),
    allowances: { ...listOf().allowances, swapS: duration(300), reframeS: duration(0) },
    light: { tolerance: stops(1), mostFade: stops(0.5) },
    evening: evening(minutesOn(10)),
    ...change,
  });

  it('is said when the light changes too much during the swap of every pair', () => {
    const { swap } = lightOf(slow());
    // 5 minutes of 0.2 stop.
    expect(swap?.least).toBeCloseTo(1, 6);
    expect(swap?.most).toBeCloseTo(1, 6);
    // 0.5 stop at 0.2 a minute is two and a half minutes.
    expect(Math.abs((swap?.quickS ?? 0) - 150)).toBeLessThanOrEqual(1);
  });

  it('names the orders that cancel a steady fade, and no other', () => {
    expect(lightOf(slow()).swap?.orders).toEqual(['mirror', 'double-mirror']);
  });

  it('names the next start from which on the light changes slowly enough', () => {
    expect(lightOf(slow()).swap?.laterMs).toBeNull();
    const curved = assumedScene(CURVED_DUSK);
    const plan = slow({ evening: evening(minutesOn(40)) });
    const laterMs = lightOf(plan, curved).swap?.laterMs;
    // |10/35 sech²((t - 45)/35)| falls to 0.1 a minute at t = 45 + 35 arcosh(√2.857) = 84.07.
    expect(minuteOf(laterMs)).toBeGreaterThanOrEqual(84);
    expect(minuteOf(laterMs)).toBeLessThanOrEqual(87);
  });

  it('is not said within the limit, side by side, or with nothing to swap', () => {
    expect(lightOf(slow({ light: { tolerance: stops(1), mostFade: stops(1.1) } })).swap).toBeNull();
    expect(lightOf(slow({ order: 'side-by-side' })).swap).toBeNull();
    expect(lightOf(slow({ rigs: [A] })).swap).toBeNull();
  });
});
