import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, DarkFrame } from '../gear/body.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { Gear } from '../gear/rig.ts';
import { must } from '../science/refusal.ts';
import { duration, type Seconds, seconds } from '../science/units.ts';
import type { PlannedFrame } from './frame.ts';
import type { SetId } from './ids.ts';
import { swapCount } from './order.ts';
import { ORDERS, type Plan, type PlanSet, type Rest, type RestRule } from './plan.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';
import { restOwed } from './rest.ts';
import { timelineOf } from './timeline.ts';

const PRACTICE_PLAN = practicePlan();

const [alder, birch, cedar] = PRACTICE_GEAR.rigs.map(({ id }) => id);
if (!alder || !birch || !cedar) throw new Error('three practice rigs');

const ALLOWANCES = {
  swapS: duration(80),
  reframeS: duration(20),
  dialChangeS: duration(10),
  settleS: duration(4),
  writeS: duration(1),
};
const NO_REST: Rest = { kind: 'none' };

/** Self-timers of 2 s and no in-camera dark frame, unless a rule for Alder is given. */
const gear = (darkFrame: DarkFrame = { kind: 'never' }): Gear => ({
  ...PRACTICE_GEAR,
  bodies: PRACTICE_GEAR.bodies.map(
    (body): Body => ({
      ...body,
      darkFrame: body.sign === 'A' ? darkFrame : { kind: 'never' },
    }),
  ),
});

const first = PRACTICE_PLAN.sets[0] as PlanSet;
const set = (id: string, change: Partial<PlanSet> = {}): PlanSet => ({
  ...first,
  id: id as SetId,
  hold: { kind: 'same-exposure' },
  passes: 1,
  settings: { fMark: '8', time: { kind: 'dial', mark: '16' }, isoMark: '200' },
  ...change,
});

const plan = (change: Partial<Plan>): Plan => ({
  ...PRACTICE_PLAN,
  rigs: [alder, birch],
  order: 'forward',
  allowances: ALLOWANCES,
  rest: NO_REST,
  sets: [set('s')],
  ...change,
});

const long = { fMark: '8', time: { kind: 'dial', mark: '64' }, isoMark: '200' } as const;

describe('the course of a list', () => {
  it('runs through dial, settle, self-timer, exposure, write, swap', () => {
    const { frames, swaps, wallS } = preparePlan(plan({}), gear()).timeline;
    // Alder: dial 10, settle 4, timer 2, 16 s, write 1; swap 100; Birch the same.
    expect(frames.map(({ startS, midS, endS, freeS }) => [startS, midS, endS, freeS])).toEqual([
      [16, 24, 32, 33],
      [149, 157, 165, 166],
    ]);
    expect(swaps).toEqual([{ rig: birch, fromS: 33, toS: 133 }]);
    expect(wallS).toBe(166);
  });

  it('turns the dials only where the settings changed', () => {
    const sets = [set('a'), set('b'), set('c', { settings: long })];
    const { timeline } = preparePlan(plan({ rigs: [alder], sets }), gear());
    // Frames of 23 s (4 + 2 + 16 + 1) and 71 s, a dial change before the first and the third.
    expect(timeline.wallS).toBe(10 + 23 + 23 + 10 + 71);
  });

  it('waits for the body’s own dark frame by its rule', () => {
    const sets = [set('a'), set('b', { settings: long })];
    const wall = (rule: DarkFrame) =>
      preparePlan(plan({ rigs: [alder], sets }), gear(rule)).timeline.wallS;
    const without = wall({ kind: 'never' });
    expect(wall({ kind: 'always' })).toBe(without + 16 + 64);
    expect(wall({ kind: 'from', fromS: seconds(30) })).toBe(without + 64);
    expect(wall({ kind: 'from', fromS: seconds(64) })).toBe(without + 64);
  });

  it('starts all rigs by one tap when they stand side by side, and waits for the slowest', () => {
    const sets = [set('s', { repeats: 2, settings: long })];
    const { timeline, frames } = preparePlan(
      plan({ order: 'side-by-side', sets }),
      gear({ kind: 'always' }),
    );
    expect(swapCount(frames)).toBe(0);
    // Both dialled in turn, 20; settle 4, timer 2; Alder 64 + 64 of dark + 1 of write = 155.
    expect(timeline.frames.map(({ rig, startS }) => [rig, startS])).toEqual([
      [alder, 26],
      [birch, 26],
      [alder, 161],
      [birch, 161],
    ]);
    expect(timeline.frames.map(({ endS }) => endS)).toEqual([90, 86, 225, 221]);
    expect(timeline.wallS).toBe(290);
  });

  it('refuses frames of a rig that is gone', () => {
    const { frames } = preparePlan(plan({}), gear());
    const without = { ...gear(), rigs: PRACTICE_GEAR.rigs.filter(({ id }) => id !== birch) };
    expect(timelineOf(plan({}), without, frames)).toEqual({ refused: true, rule: 'rig-gone' });
  });
});

describe('rests', () => {
  const THUMB: RestRule = { factor: 1, offUpToS: duration(30), longestS: duration(600) };
  const RULE: Rest = { kind: 'thumb', rule: THUMB };

  it('hold the next frame of the rig back by what is still owed', () => {
    const sets = [set('s', { repeats: 2, settings: long })];
    const { timeline } = preparePlan(plan({ rigs: [alder], sets, rest: RULE }), gear());
    // Ends at 80, free at 81: one second of the 64 has passed.
    expect(timeline.rests).toEqual([{ rig: alder, fromS: 81, toS: 144 }]);
    expect(timeline.frames[1]?.startS).toBe(150);
  });

  it('count the swap and the other rig’s frame as rest', () => {
    const sets = [set('s', { passes: 2, settings: long })];
    const { timeline } = preparePlan(plan({ order: 'alternate', sets, rest: RULE }), gear());
    expect(timeline.rests).toEqual([]);
  });

  it('are not waited for between a frame and its capped dark', () => {
    const sets = [set('s', { settings: long }), set('d', { kind: 'capped-dark' }), set('t')];
    const { timeline } = preparePlan(plan({ rigs: [alder], sets, rest: RULE }), gear());
    const [light, dark, next] = timeline.frames;
    // Settle 4 and self-timer 2 after the light frame is free.
    expect((dark?.startS ?? 0) - (light?.freeS ?? 0)).toBe(6);
    expect(timeline.rests).toEqual([
      { rig: alder, fromS: 10 + (dark?.freeS ?? 0), toS: (dark?.endS ?? 0) + 64 },
    ]);
    expect((next?.startS ?? 0) - (dark?.endS ?? 0)).toBe(64 + 6);
  });

  const owed = (exposed: number, sinceEnd: number, change: Partial<RestRule> = {}) =>
    restOwed({ ...THUMB, ...change }, duration(exposed), duration(sinceEnd));

  // The trade's rule of thumb; common practice, no source.
  it('are as long as the exposure, less what has passed', () => {
    expect(owed(240, 0)).toBe(240);
    expect(owed(240, 100)).toBe(140);
    expect(owed(240, 240)).toBe(0);
    expect(owed(240, 900)).toBe(0);
  });

  it('follow the factor and the two limits', () => {
    expect(owed(240, 0, { factor: 1.5 })).toBe(360);
    expect(owed(1200, 0)).toBe(600);
    expect(owed(30, 0)).toBe(0);
    expect(owed(30.1, 0)).toBe(30.1);
  });
});

describe('any list', () => {
  const anySeconds = fc.integer({ min: 0, max: 120 }).map(duration);
  const anyDark = fc.constantFrom<DarkFrame>(
    { kind: 'never' },
    { kind: 'always' },
    { kind: 'from', fromS: seconds(10) },
  );
  const anyPlan: fc.Arbitrary<Plan> = fc
    .record({
      rigs: fc.subarray([alder, birch, cedar], { minLength: 1 }),
      order: fc.constantFrom(...ORDERS),
      allowances: fc.record({
        swapS: anySeconds,
        reframeS: anySeconds,
        dialChangeS: anySeconds,
        settleS: anySeconds,
        writeS: anySeconds,
      }),
      rest: fc.oneof(
        fc.constant<Rest>({ kind: 'none' }),
        fc.record({
          kind: fc.constant('thumb' as const),
          rule: fc.record({
            factor: fc.integer({ min: 0, max: 3 }),
            offUpToS: anySeconds,
            longestS: anySeconds,
          }),
        }),
      ),
      picks: fc.array(
        fc.record({
          mark: fc.constantFrom('1', '8', '32', '64'),
          dark: fc.boolean(),
          passes: fc.integer({ min: 1, max: 3 }),
          repeats: fc.integer({ min: 1, max: 3 }),
        }),
        { minLength: 1, maxLength: 4 },
      ),
    })
    .map(({ picks, ...change }) =>
      plan({
        ...change,
        sets: picks.map(({ mark, dark, passes, repeats }, index) =>
          set(`s${index}`, {
            kind: dark && index > 0 ? 'capped-dark' : 'light',
            reference: change.rigs[0] ?? alder,
            settings: {
              ...long,
              time: { kind: 'dial', mark: change.rigs[0] === alder ? mark : '8' },
            },
            passes,
            repeats,
          }),
        ),
      }),
    );

  const bodyOf = (frame: PlannedFrame): Body => {
    const rig = PRACTICE_GEAR.rigs.find(({ id }) => id === frame.rig);
    const body = PRACTICE_GEAR.bodies.find(({ id }) => id === rig?.bodyId);
    if (!body) throw new Error('a body');
    return body;
  };

  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

  it('adds up: one tripod’s wall time is its exposures, waits and acts', () => {
    fc.assert(
      fc.property(anyPlan, anyDark, (any, rule) => {
        fc.pre(any.order !== 'side-by-side');
        const { frames, timeline } = preparePlan(any, gear(rule));
        const dialled = new Map<string, string>();
        let changes = 0;
        for (const { rig, settings } of frames) {
          const marks = JSON.stringify(settings);
          if (dialled.get(rig) !== marks) changes += 1;
          dialled.set(rig, marks);
        }
        const darks = frames.map((frame) => {
          const { t } = frame.exact;
          const takes =
            bodyOf(frame).sign === 'A' &&
            (rule.kind === 'always' || (rule.kind === 'from' && t >= rule.fromS));
          return takes ? t : 0;
        });
        const { swapS, reframeS, dialChangeS, settleS, writeS } = any.allowances;
        expect(timeline.wallS).toBeCloseTo(
          sum(frames.map(({ exact }) => exact.t)) +
            sum(darks) +
            sum(frames.map((frame) => bodyOf(frame).selfTimer.usedS ?? 0)) +
            sum(timeline.rests.map(({ fromS, toS }) => toS - fromS)) +
            swapCount(frames) * (swapS + reframeS) +
            changes * dialChangeS +
            frames.length * (settleS + writeS),
          6,
        );
        expect(timeline.swaps.length).toBe(swapCount(frames));
      }),
    );
  });

  it('gives each frame its exposure, in order, none over another of its rig', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        const { frames, timeline } = preparePlan(any, gear());
        expect(timeline.frames.map(({ key }) => key)).toEqual(frames.map(({ key }) => key));
        const freeFrom = new Map<string, Seconds>();
        for (const [index, { rig, startS, midS, endS, freeS }] of timeline.frames.entries()) {
          expect(endS - startS).toBeCloseTo(frames[index]?.exact.t ?? Number.NaN, 6);
          expect(midS).toBeCloseTo((startS + endS) / 2, 6);
          expect(startS).toBeGreaterThanOrEqual(freeFrom.get(rig) ?? 0);
          freeFrom.set(rig, freeS);
        }
        expect(timeline.wallS).toBe(Math.max(...timeline.frames.map(({ freeS }) => freeS)));
      }),
    );
  });

  it('never starts a frame before its rig has rested, but for capped darks', () => {
    fc.assert(
      fc.property(anyPlan, anyDark, (any, dark) => {
        const { frames } = preparePlan(any, gear(dark));
        const { frames: times } = must(timelineOf(any, gear(dark), frames));
        const darks = new Set(
          any.sets.filter(({ kind }) => kind === 'capped-dark').map(({ id }) => id),
        );
        for (const [index, frame] of frames.entries()) {
          const earlier = frames.slice(0, index).findLastIndex(({ rig }) => rig === frame.rig);
          const [before, time] = [times[earlier], times[index]];
          const exposed = frames[earlier]?.exact.t;
          if (!before || !time || exposed === undefined || darks.has(frame.set)) continue;
          const rule = any.rest.kind === 'thumb' ? any.rest.rule : null;
          const least =
            rule && exposed > rule.offUpToS ? Math.min(exposed * rule.factor, rule.longestS) : 0;
          expect(time.startS - before.endS).toBeGreaterThanOrEqual(least - 1e-6);
        }
      }),
    );
  });
});
