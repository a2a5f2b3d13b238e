import { describe, expect, it } from 'vitest';
import { exactSettings } from '../gear/positions.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import { must } from '../science/refusal.ts';
import { heatSeries, seriesIsos, usualSeriesIso } from './heatSeries.ts';
import type { PlanId, SetId } from './ids.ts';
import { aimsOf } from './light.ts';
import { newPlan } from './newPlan.ts';
import { readPlan } from './parse.ts';
import type { Plan } from './plan.ts';
import { preparePlan } from './prepare.ts';
import { stopsStart } from './problems.ts';

const [alder, birch, cedar] = PRACTICE_GEAR.rigs.flatMap(
  ({ id }) => assemble(PRACTICE_GEAR, id) ?? [],
) as [Assembled, Assembled, Assembled];

const planFor = (rig: Assembled, isoMark = '12800'): Plan => {
  let count = 0;
  const list = must(
    heatSeries(rig, isoMark, () => {
      count += 1;
      return `set-${count}` as SetId;
    }),
  );
  return { ...newPlan('p' as PlanId, 'Series', [rig.rig.id]), ...list };
};

const withLongest = (longest: string): Assembled => ({
  ...birch,
  body: { ...birch.body, time: { ...birch.body.time, longest } },
});

describe('the capped series of one body', () => {
  // Heat and noise, section 1.5.
  it('is two shortest frames, twelve of 120 s, and two after each of three waits', () => {
    const { sets, rest } = planFor(cedar);
    expect(rest).toEqual({ kind: 'none' });
    expect(
      sets.map(({ kind, passes, repeats, restBeforeS, settings }) => [
        kind,
        passes,
        repeats,
        restBeforeS,
        must(exactSettings(cedar, settings)).t,
      ]),
    ).toEqual([
      ['capped-series', 1, 2, null, 1 / 4096],
      ['capped-series', 1, 12, null, 120],
      ['capped-series', 1, 2, 240, 120],
      ['capped-series', 1, 2, 480, 120],
      ['capped-series', 1, 2, 960, 120],
    ]);
    expect(new Set(sets.map(({ settings }) => settings.isoMark))).toEqual(new Set(['12800']));
    expect(new Set(sets.map(({ settings }) => settings.fMark))).toEqual(new Set(['22']));
  });

  it.each([alder, birch, cedar])('can be started as it comes: $body.name', (rig) => {
    const plan = planFor(rig);
    expect(readPlan(JSON.parse(JSON.stringify(plan)))).toEqual(plan);
    const { problems, frames } = preparePlan(plan, PRACTICE_GEAR);
    expect(problems.filter(stopsStart)).toEqual([]);
    expect(problems).toContainEqual({ code: 'one-rig' });
    expect(frames.length).toBe(plan.sets.reduce((sum, { repeats }) => sum + repeats, 0));
  });

  it('waits as long as it says from the end of the last frame, and nowhere else', () => {
    const plan = planFor(alder);
    const { frames, timeline } = preparePlan(plan, PRACTICE_GEAR);
    const gaps = frames.flatMap(({ set }, index) => {
      const [before, now] = [timeline.frames[index - 1], timeline.frames[index]];
      return before && now ? [{ set, s: now.startS - before.endS }] : [];
    });
    const waits = gaps.filter(({ s }) => s > 100);
    expect(waits.map(({ set }) => set)).toEqual(['set-3', 'set-4', 'set-5']);
    // Settling (5 s) and the self-timer come after the wait.
    const timer = alder.body.selfTimer.usedS ?? 0;
    expect(waits.map(({ s }) => s - 5 - timer)).toEqual([240, 480, 960]);
    // 18 long frames and 28 minutes of waits take an hour and some.
    expect(timeline.wallS).toBeGreaterThan(18 * 120 + 1680);
    expect(timeline.wallS).toBeLessThan(18 * 120 + 1680 + 20 * 30);
  });

  it('takes as many more frames as a shorter longest time asks for: 24 min in all', () => {
    const warmingOf = (rig: Assembled) => planFor(rig).sets[1];
    expect(warmingOf(birch)).toMatchObject({
      repeats: 24,
      settings: { time: { kind: 'dial', mark: '60' } },
    });
    expect(warmingOf(withLongest('30'))).toMatchObject({ repeats: 45 });
    expect(warmingOf(alder)).toMatchObject({
      repeats: 12,
      settings: { time: { kind: 'bulb', seconds: 120 } },
    });
  });

  it('is refused where no frame is long enough', () => {
    expect(heatSeries(withLongest('15'), '1600', () => 's' as SetId)).toEqual({
      refused: true,
      rule: 'no-long-time',
    });
  });

  it('is measured at ISO 12800, or the highest position below it', () => {
    expect(usualSeriesIso(alder)).toBe('12800');
    const low = { ...alder, body: { ...alder.body, iso: { ...alder.body.iso, highest: '1600' } } };
    expect(usualSeriesIso(low)).toBe('1600');
    expect(seriesIsos(low).at(-1)).toBe('1600');
  });

  it('asks for no light', () => {
    const plan = planFor(alder);
    expect(aimsOf(plan, preparePlan(plan, PRACTICE_GEAR))).toEqual([]);
  });
});
