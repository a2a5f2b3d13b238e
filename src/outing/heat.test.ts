import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { A, B, dialled, Evening, frame, held, planOf, s } from '../../test/evenings/evening.ts';
import { longEvening } from '../../test/evenings/longEvening.ts';
import type { Body } from '../gear/body.ts';
import { thermalRangeOf } from '../gear/bodyHeat.ts';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { assemble } from '../gear/rig.ts';
import { heatsOf } from '../plan/heat.ts';
import { heatCourseOf } from '../plan/heatCourse.ts';
import { waitsIn } from '../plan/nextFrame.ts';
import { timelineOf } from '../plan/timeline.ts';
import { type HeatMode, heatThrough, type ThermalModel } from '../science/heat.ts';
import { must } from '../science/refusal.ts';
import { doublings } from '../science/sensorUnits.ts';
import { usualModel } from '../science/thermalRange.ts';
import { duration } from '../science/units.ts';
import type { OutingEvent } from './events.ts';
import { fold } from './fold.ts';
import { heatsInside, heatsNow, historyOf, sharesAfter } from './heat.ts';
import { inOrder } from './sequence.ts';
import type { RunState } from './state.ts';

const FRAMES = [
  frame('one', A, dialled('6.3', '64', '100')),
  frame('one', B, dialled('8', '60', '100'), { visit: 2 }),
  frame('two', A, held('8', 240, '12800'), { visit: 3 }),
  frame('two', B, dialled('8', '60', '12800'), { visit: 4 }),
  frame('two', A, held('8', 240, '12800'), { visit: 5, repeat: 2 }),
];

const PRACTICE_BODY = PRACTICE_GEAR.bodies[0] as Body;

const partsOf = (state: RunState, rig: RigId) => {
  const parts = assemble(state.gear, rig);
  if (!parts) throw new Error('no such rig');
  return parts;
};

/** Heat at the middle of a frame, which must be known. */
function inside(state: RunState, place: number) {
  const made = state.made[place];
  if (!made) throw new Error('no such frame');
  const heats = heatsInside(historyOf(state), made.planned.rig, made.id);
  if ('why' in heats) throw new Error(heats.why);
  return heats;
}

/** dy/dt = (Y - y)/tau in steps of a hundredth of a second: nothing of the closed form. */
function byEuler(
  { tau, plateaus }: ThermalModel,
  segments: readonly (readonly [HeatMode, number])[],
): number {
  let y = 0;
  for (const [mode, lasts] of segments) {
    const steps = Math.round(lasts * 100);
    for (let step = 0; step < steps; step += 1) y += ((plateaus[mode] - y) * 0.01) / tau;
  }
  return y;
}

describe('heat from what really happened', () => {
  it('is that of the modes a rig went through, integrated by hand in small steps', () => {
    const evening = new Evening(FRAMES).setUp();
    // The focus of A is ticked 1 s after the start: no more of its live view fits.
    evening.pass(97).tap({ tap: 'mounted', frame: evening.nextKey() });
    evening.pass(19).tap({ tap: 'dialled', frame: evening.nextKey() });
    evening.pass(39).start();
    const state = evening.state();
    const leadIn = state.made[0]?.leadInS ?? Number.NaN;
    evening.pass(leadIn + 64 - 1 + 5).tap({ tap: 'record', made: evening.openId() });
    const model = usualModel(thermalRangeOf(partsOf(state, A).body));
    const [mounted = 0, dials = 0, started = 0] = state.acts
      .filter(({ rig, what }) => rig === A && what !== 'focused')
      .map(({ at }) => (at.wallMs - state.startedAt.wallMs) / 1000);
    expect([mounted, dials, started]).toEqual([101, 121, 161]);
    // Its lens loses the focus without power, so that it waits switched on.
    expect(waitsIn(partsOf(state, A).lens)).toBe('idle');
    const toMiddle = [
      ['live-view', 1],
      ['idle', 70],
      ['live-view', 30],
      ['idle', 5],
      ['idle', 15],
      ['idle', 35],
      ['idle', 5 + leadIn],
      ['exposing', 32],
    ] as const;
    expect(inside(evening.state(), 0).usual).toBeCloseTo(byEuler(model, toMiddle), 4);
  });

  it('counts an overrun of bulb: a minute more warms as a minute more does', () => {
    const shot = (overrun: number) => {
      const evening = new Evening(FRAMES).setUp().shoot().shoot().untilExpose().start();
      const leadIn = evening.state().made.at(-1)?.leadInS ?? 0;
      evening.pass(leadIn + 240 - 1 + overrun).tap({ tap: 'closed', made: evening.openId() });
      return evening.state();
    };
    const [planned, over] = [shot(0), shot(60)];
    const { tau, plateaus } = usualModel(thermalRangeOf(partsOf(over, A).body));
    const middle = inside(planned, 2).usual;
    // Half of the minute lies before the middle: y moves on towards the plateau by that.
    const expected = plateaus.exposing + (middle - plateaus.exposing) * Math.exp(-30 / tau);
    expect(inside(over, 2).usual).toBeCloseTo(expected, 9);
  });

  it('takes a sensor’s own dark frame for exposing', () => {
    const own = (kind: 'always' | 'never') => {
      const evening = new Evening([FRAMES[0], FRAMES[0]].flatMap((one) => one ?? []));
      const { body } = partsOf(evening.state(), A);
      evening.tap({
        tap: 'correct-gear',
        change: { part: 'body', value: { ...body, darkFrame: { kind } } },
      });
      evening.setUp().shoot().pass(64);
      return heatsNow(historyOf(evening.state()), A, evening.now());
    };
    const [without, withDark] = [own('never'), own('always')];
    const { tau, plateaus } = usualModel(thermalRangeOf(PRACTICE_BODY));
    // Another 64 s exposing in place of 2 s of writing and 62 s of waiting, switched on, up to now.
    const gained = (plateaus.exposing - plateaus.idle) * (1 - Math.exp(-63 / tau));
    expect((withDark?.usual ?? 0) - (without?.usual ?? 0)).toBeCloseTo(gained, 2);
  });

  it('undo takes the heat back, as if the exposure had never been', () => {
    const never = new Evening(FRAMES).setUp().untilExpose();
    const undone = new Evening(FRAMES).setUp().untilExpose();
    const heat = (of: Evening) => heatsNow(historyOf(of.state()), A, of.now());
    undone.start().pass(300);
    const warm = heat(undone)?.usual ?? Number.NaN;
    undone.undo();
    never.pass(302);
    expect(heat(undone)).toEqual(heat(never));
    expect(warm).toBeGreaterThan((heat(undone)?.usual ?? Number.NaN) + 0.05);
  });

  it('a skipped frame never happened', () => {
    const skipped = new Evening(FRAMES).setUp().untilExpose();
    const waited = new Evening(FRAMES).setUp().untilExpose();
    skipped.tap({ tap: 'skip-frame', frame: skipped.nextKey() });
    waited.pass(1);
    for (const rig of [A, B]) {
      expect(heatsNow(historyOf(skipped.state()), rig, skipped.now())).toEqual(
        heatsNow(historyOf(waited.state()), rig, waited.now()),
      );
    }
  });

  it('framing lies between being on and live view', () => {
    const framed = [frame('one', B, dialled('8', '60', '100'))];
    const evening = new Evening(framed);
    const lens = { ...partsOf(evening.state(), B).lens, focusSurvivesPowerOff: true };
    // Its lens keeps the focus: it was off since the second of the set-up sheet.
    evening.tap({ tap: 'correct-gear', change: { part: 'lens', value: lens } }).setUp();
    evening.pass(200).tap({ tap: 'mounted', frame: evening.nextKey() });
    const heats = heatsNow(historyOf(evening.state()), B, evening.now());
    const { tau, liveView, doubling, idle } = thermalRangeOf(partsOf(evening.state(), B).body);
    // Off for a second since, and two seconds of live view 202 s before, when the focus was fixed.
    const view = (x: number, td: number, t: number) =>
      (x / td) *
      (1 - Math.exp(-30 / t) + (1 - Math.exp(-2 / t)) * Math.exp(-202 / t)) *
      Math.exp(-1 / t);
    expect(heats?.usual).toBeCloseTo(view(liveView.usual, doubling.usual, tau.usual), 9);
    const ends = [Math.min(...(heats?.corners ?? [])), Math.max(...(heats?.corners ?? []))];
    expect(ends[0]).toBeCloseTo(view(idle.least, doubling.most, tau.most), 2);
    expect(ends[1]).toBeCloseTo(view(liveView.most, doubling.least, tau.least), 1);
  });

  it('is as a plan predicts it where the evening goes by the plan', () => {
    // Side by side without swaps, so that no framing comes between.
    const together = [1, 2, 3].map((repeat) =>
      frame('one', A, dialled('6.3', '64', '100'), { repeat }),
    );
    const base = planOf(together, { order: 'side-by-side' });
    const plan = { ...base, allowances: { ...base.allowances, reframeS: s(0), dialChangeS: s(0) } };
    const evening = new Evening(together, plan);
    const timeline = must(timelineOf(plan, evening.state().gear, together));
    const course = must(heatCourseOf(plan, evening.state().gear, together, timeline));
    const { body } = partsOf(evening.state(), A);
    const planned = heatsOf(course, () => thermalRangeOf(body)).get(A);
    evening.setUp();
    evening.tap({ tap: 'mounted', frame: evening.nextKey() });
    evening.tap({ tap: 'dialled', frame: evening.nextKey() });
    const startMs = evening.now().wallMs;
    for (const [place, { startS, endS }] of timeline.frames.entries()) {
      const leadIn = body.selfTimer.usedS ?? 0;
      const tapAt = startMs + 1000 * (startS - leadIn);
      evening.pass((tapAt - evening.now().wallMs) / 1000).start();
      evening.pass((startMs + 1000 * endS - evening.now().wallMs) / 1000);
      evening.tap({ tap: 'record', made: evening.openId() });
      const key = together[place]?.key as never;
      expect(inside(evening.state(), place).usual).toBeCloseTo(planned?.usual.get(key) ?? -1, 2);
    }
  });
});

describe('what makes it uncertain', () => {
  it('a battery change, from there on and for that rig alone', () => {
    const evening = new Evening(FRAMES).setUp().shoot().shoot();
    evening.tap({ tap: 'battery-changed', rig: A });
    evening.shoot().shoot();
    const state = evening.state();
    const whys = state.made.map(({ planned, id }) => {
      const heats = heatsInside(historyOf(state), planned.rig, id);
      return 'why' in heats ? heats.why : null;
    });
    expect(whys).toEqual([null, null, 'battery-changed', null]);
  });

  it('a clock that ran backwards over a reload, for every rig', () => {
    const evening = new Evening(FRAMES).setUp().shoot().reload(-1000).shoot();
    const state = evening.state();
    const [, second] = state.made;
    expect(heatsInside(historyOf(state), B, second?.id as never)).toEqual({ why: 'clock-set' });
    expect(heatsNow(historyOf(state), A, evening.now())).toBeNull();
  });

  it('two clocks that disagree widen the range by what either says, and no more', () => {
    const waiting = (evening: Evening) => evening.shoot();
    const short = waiting(new Evening(FRAMES).setUp().shoot().shoot().pass(10));
    const long = waiting(new Evening(FRAMES).setUp().shoot().shoot().pass(310));
    const either = waiting(new Evening(FRAMES).setUp().shoot().shoot().pass(10).jump(300));
    const [a, b, c] = [short, long, either].map((evening) => inside(evening.state(), 2));
    // The steady clock saw the short wait, the wall clock the long one.
    expect(c?.usual).toBeCloseTo(b?.usual ?? -1, 9);
    expect(c?.corners).toHaveLength(2 * (a?.corners.length ?? 0));
    const expected = [...(b?.corners ?? []), ...(a?.corners ?? [])];
    for (const [place, heat] of (c?.corners ?? []).entries()) {
      expect(heat).toBeCloseTo(expected[place] ?? -1, 9);
    }
  });
});

describe('the shares of the modes', () => {
  const segment = fc.record({
    mode: fc.constantFrom<HeatMode>('off', 'idle', 'exposing', 'live-view'),
    lasts: fc.double({ min: 0, max: 3000, noNaN: true }),
  });
  const plateau = fc.double({ min: 0, max: 6, noNaN: true }).map(doublings);

  it('give the heat of any model, exactly', () => {
    fc.assert(
      fc.property(
        fc.array(segment, { maxLength: 30 }),
        fc.double({ min: 30, max: 3000, noNaN: true }),
        plateau,
        plateau,
        plateau,
        (segments, t, idle, exposing, live) => {
          const tau = duration(t);
          const plateaus = { off: doublings(0), idle, exposing, 'live-view': live };
          const end = segments.reduce(
            (shares, { mode, lasts }) => sharesAfter(shares, mode, lasts, tau),
            { off: 1, idle: 0, exposing: 0, 'live-view': 0 },
          );
          const sum = end.idle * idle + end.exposing * exposing + end['live-view'] * live;
          const steps = segments.map(({ mode, lasts }) => ({ mode, lasts: duration(lasts) }));
          const { end: expected } = heatThrough({ tau, plateaus }, doublings(0), steps);
          expect(sum).toBeCloseTo(expected, 9);
          expect(end.off + end.idle + end.exposing + end['live-view']).toBeCloseTo(1, 12);
        },
      ),
    );
  });
});

describe('the heat of a journal', () => {
  /** An evening with acts of all kinds. */
  const eventful = () => {
    const evening = new Evening(FRAMES).setUp().shoot();
    evening
      .tap({ tap: 'extra-shot', rig: A })
      .tap({ tap: 'pause' })
      .pass(50)
      .tap({ tap: 'resume' });
    evening.tap({ tap: 'powered-off', rig: B }).shoot().reload(20).shoot().shoot();
    return evening;
  };

  it('does not depend on the order in which its events are read, nor on who wrote the rest', () => {
    const { events } = eventful();
    const other: OutingEvent[] = events.map((event) => ({
      ...event,
      writer: 'other-phone' as typeof event.writer,
      id: `other-${event.id}` as typeof event.id,
    }));
    const state = (all: readonly OutingEvent[]) => {
      const run = fold(inOrder(all));
      if (!run) throw new Error('nothing to fold');
      return run.made.map(({ id, planned }) => heatsInside(historyOf(run), planned.rig, id));
    };
    const notes = other.filter(({ kind }) => kind === 'setup-ticked');
    const all = [...events, ...notes];
    fc.assert(
      fc.property(fc.shuffledSubarray(all, { minLength: all.length }), (shuffled) => {
        expect(state(shuffled)).toEqual(state(all));
      }),
      { numRuns: 30 },
    );
  });

  it('is never below the rested state nor above the warmest plateau, at any prefix', () => {
    const { events } = eventful();
    for (let length = 1; length <= events.length; length += 1) {
      const run = fold(events.slice(0, length)) as RunState;
      for (const { id, planned } of run.made) {
        const heats = heatsInside(historyOf(run), planned.rig, id);
        if ('why' in heats) continue;
        const { liveView, doubling } = thermalRangeOf(partsOf(run, planned.rig).body);
        expect(Math.min(heats.usual, ...heats.corners)).toBeGreaterThanOrEqual(0);
        expect(Math.max(heats.usual, ...heats.corners)).toBeLessThanOrEqual(
          liveView.most / doubling.least,
        );
      }
    }
  });

  it('costs a journal of two thousand frames less than two folds of it', () => {
    const events = longEvening({
      repeats: 50,
      sets: 20,
      rigs: 2,
      time: '1/10',
      setsLeft: 0,
      tries: 1,
      name: 'Two thousand',
      ended: false,
    });
    const timed = <T>(work: () => T): readonly [number, T] => {
      const from = process.hrtime.bigint();
      const found = work();
      return [Number(process.hrtime.bigint() - from) / 1e6, found];
    };
    const folds: number[] = [];
    const heats: number[] = [];
    for (let round = 0; round < 15; round += 1) {
      const [foldMs, run] = timed(() => fold(events) as RunState);
      const [heatMs, history] = timed(() => historyOf(run));
      expect(history.rigs.size).toBe(2);
      expect(run.made).toHaveLength(2000);
      folds.push(foldMs);
      heats.push(heatMs);
    }
    expect(Math.min(...heats)).toBeLessThan(2 * Math.min(...folds));
  });
});
