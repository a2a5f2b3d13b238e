import { describe, expect, it } from 'vitest';
import { exactSettings } from '../gear/positions.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { ev100 } from '../science/exposure.ts';
import { must } from '../science/refusal.ts';
import type { PlanId, SetId } from './ids.ts';
import { newPlan } from './newPlan.ts';
import { DEFAULT_PASSES } from './passes.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';
import { stopsStart } from './problems.ts';
import { READY_LISTS, type ReadyListName, readyList } from './readyLists.ts';

const PRACTICE_PLAN = practicePlan();

const [alder, birch, cedar] = PRACTICE_GEAR.rigs.flatMap(
  ({ id }) => assemble(PRACTICE_GEAR, id) ?? [],
) as [Assembled, Assembled, Assembled];

const counting = () => {
  let count = 0;
  return () => {
    count += 1;
    return `set-${count}` as SetId;
  };
};

const listOf = (name: ReadyListName, ...rigs: Assembled[]) =>
  must(readyList(name, rigs, counting()));

const ev = (rig: Assembled, settings: Settings): number => {
  const { n, t, s } = must(exactSettings(rig, settings));
  return ev100(n, t, s);
};

const seconds = ({ time }: Settings): string =>
  time.kind === 'dial' ? time.mark : `${time.seconds} s bulb`;

describe('the ready lists', () => {
  it('go down two stops at a time at base ISO', () => {
    const { order, sets } = listOf('base-iso-latitude', alder, birch);
    expect(order).toBe('mirror');
    expect(sets.map(({ targetOffset }) => targetOffset)).toEqual([0, -2, -4]);
    expect(sets.map(({ settings }) => settings.isoMark)).toEqual(['100', '100', '100']);
    const [well, under, far] = sets.map(({ settings }) => ev(alder, settings));
    expect((under ?? 0) - (well ?? 0)).toBeCloseTo(2, 9);
    expect((far ?? 0) - (well ?? 0)).toBeCloseTo(4, 9);
    expect(sets.every(({ repeats }) => repeats === 2)).toBe(true);
  });

  it('take as base the lowest ISO that every rig has', () => {
    const base = (...rigs: Assembled[]) =>
      listOf('base-iso-latitude', ...rigs).sets[0]?.settings.isoMark;
    expect(base(alder)).toBe('64');
    expect(base(alder, birch)).toBe('100');
    expect(base(alder, birch, cedar)).toBe('200');
    expect(base(cedar, alder)).toBe('200');
  });

  it('climb from ISO 1600 to 12800 at one exposure', () => {
    const { sets } = listOf('high-iso-ladder', alder, birch);
    expect(sets.map(({ settings }) => settings.isoMark)).toEqual(['1600', '3200', '6400', '12800']);
    expect(new Set(sets.map(({ settings }) => ev(alder, settings).toFixed(9))).size).toBe(1);
    expect(sets.every(({ repeats }) => repeats === 2)).toBe(true);
  });

  it('warm each rig by itself for 15, 60 and 240 s, a capped dark after each', () => {
    const { order, sets } = listOf('long-exposure-heat', alder, cedar);
    expect(order).toBe('rig-by-rig');
    expect(sets.map(({ kind }) => kind)).toEqual([
      'light',
      'capped-dark',
      'light',
      'capped-dark',
      'light',
      'capped-dark',
    ]);
    expect(sets.map(({ settings }) => seconds(settings))).toEqual([
      '16',
      '16',
      '64',
      '64',
      '240 s bulb',
      '240 s bulb',
    ]);
    expect(new Set(sets.map(({ settings }) => settings.isoMark))).toEqual(new Set(['400']));
  });

  it('leave out what the reference cannot come near', () => {
    const { sets } = listOf('long-exposure-heat', birch, alder);
    expect(sets.map(({ settings }) => seconds(settings))).toEqual(['15', '15', '60', '60']);
  });

  it('refuse to be made for no rigs', () => {
    expect(readyList('mixed-dusk', [], counting())).toEqual({ refused: true, rule: 'no-rigs' });
  });

  const pairs = [
    [alder, birch],
    [birch, alder],
    [cedar, birch],
    [birch, cedar, alder],
  ];
  it.each(READY_LISTS.flatMap((name) => pairs.map((rigs) => ({ name, rigs }))))(
    'can be started as they come: $name',
    ({ name, rigs }) => {
      const list = listOf(name, ...rigs);
      const plan = {
        ...newPlan(
          'p' as PlanId,
          'plan',
          rigs.map(({ rig }) => rig.id),
        ),
        ...list,
      };
      const { problems, frames } = preparePlan(plan, PRACTICE_GEAR);
      expect(problems.filter(stopsStart)).toEqual([]);
      expect(frames.length).toBe(
        list.sets.length * rigs.length * DEFAULT_PASSES[list.order] * (list.sets[0]?.repeats ?? 0),
      );
      expect(new Set(list.sets.map(({ id }) => id)).size).toBe(list.sets.length);
    },
  );
});

describe('the practice plan', () => {
  it('is the mixed dusk list: well exposed, two under, ISO 12800 over and far under', () => {
    expect(
      PRACTICE_PLAN.sets.map(({ intent, targetOffset, settings }) => [
        intent,
        targetOffset,
        `f/${settings.fMark} ${seconds(settings)} s ISO ${settings.isoMark}`,
      ]),
    ).toEqual([
      ['Base ISO, well exposed', 0, 'f/6.3 64 s ISO 100'],
      ['Base ISO, two stops under', -2, 'f/6.3 60 s bulb s ISO 100'],
      ['ISO 12800, over', 1, 'f/6.3 8 s ISO 12800'],
      ['ISO 12800, far under', -4, 'f/6.3 0.5 s ISO 12800'],
    ]);
  });

  it('lets the scene fade no faster than dusk does at 55 degrees', () => {
    const { timeline, frames } = preparePlan(PRACTICE_PLAN, PRACTICE_GEAR);
    const middles = PRACTICE_PLAN.sets.map((set) => {
      const mids = timeline.frames.flatMap(({ midS }, index) =>
        frames[index]?.set === set.id ? [midS] : [],
      );
      return {
        minutes: mids.reduce((sum, mid) => sum + mid, 0) / mids.length / 60,
        scene: ev(alder, set.settings) + set.targetOffset,
      };
    });
    for (const [index, { minutes, scene }] of middles.entries()) {
      const before = middles[index - 1];
      if (!before) continue;
      const fade = (scene - before.scene) / (minutes - before.minutes);
      // Evening twilight at 47 to 60 degrees, sun at -6 to -12: 0.13 to 0.27 stop a minute.
      expect(fade).toBeLessThan(-0.1);
      expect(fade).toBeGreaterThan(-0.3);
    }
  });

  it('is marked as invented, like all its gear', () => {
    expect(PRACTICE_PLAN.invented).toBe(true);
    expect(PRACTICE_GEAR.rigs.every(({ invented }) => invented)).toBe(true);
  });
});
