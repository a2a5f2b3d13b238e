import { describe, expect, it } from 'vitest';
import { A, dialled, Evening, frame, held, s, twoSets } from '../../test/evenings/evening.ts';
import { framesOf } from './frames.ts';

const only = (evening: Evening) => {
  const rows = framesOf(evening.state());
  const [row] = rows;
  if (rows.length !== 1 || !row) throw new Error(`expected one frame, found ${rows.length}`);
  return row;
};

describe('a frame of the log', () => {
  it('timed: the body’s exact value, never the stopwatch', () => {
    const evening = new Evening([frame('one', A, dialled('6.3', '64', '100'))]).setUp();
    evening.untilExpose().start().pass(300);
    evening.tap({ tap: 'record', made: evening.openId() });
    const row = only(evening);
    expect(row.openTime).toEqual({ from: 'dial', s: 64 });
    expect(row.exact?.t).toBe(64);
    expect(row.opened.wallMs - (row.closed?.wallMs ?? 0)).toBe(-64_000);
    expect(row.asPlanned).toBe(true);
  });

  it('bulb: what really elapsed, the overrun included', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening
      .untilExpose()
      .start()
      .pass(1 + 240 + 60);
    evening.tap({ tap: 'closed', made: evening.openId() });
    const row = only(evening);
    expect(row.openTime).toEqual({ from: 'hand', s: 300, certainty: 'steady' });
    expect(row.exact?.t).toBe(300);
  });

  it('bulb over a reload: the wall clock bridges it, and the log says so', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().pass(100).reload(141);
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(only(evening).openTime).toEqual({ from: 'hand', s: 240, certainty: 'wall' });
  });

  it('a clock set back: the open time is unknown, never zero', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().reload(-3600);
    evening.tap({ tap: 'closed', made: evening.openId() });
    expect(only(evening).openTime).toEqual({ from: 'unknown' });
    expect(only(evening).exact).toBeNull();
  });

  it('keeps what was planned, what was set, and what was first logged', () => {
    const evening = new Evening([frame('one', A, dialled('8', '0.5', '12800'))]).setUp();
    evening.tap({ tap: 'set-counter', rig: A, next: 7 }).shoot();
    const made = only(evening).id;
    evening.tap({ tap: 'correct', made, change: { field: 'isoMark', value: '10000' } });
    evening.tap({ tap: 'correct', made, change: { field: 'fileNumber', value: 12 } });
    evening.tap({ tap: 'correct', made, change: { field: 'note', value: 'wind' } });
    const row = only(evening);
    expect(row.planned.settings.isoMark).toBe('12800');
    expect(row.firstSettings?.isoMark).toBe('12800');
    expect(row.settings?.isoMark).toBe('10000');
    expect(row.exact?.s).toBeCloseTo(10159.4, 1);
    expect(row.asPlanned).toBe(false);
    expect(row.fileName).toBe('ALD_0012');
    expect(row.notes).toEqual(['wind']);
    evening.tap({ tap: 'correct', made, change: { field: 'isoMark', value: '6400' } });
    expect(only(evening).settings?.isoMark).toBe('6400');
    expect(only(evening).corrections).toHaveLength(4);
  });

  it('a corrected time is taken instead of the one that was measured', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp();
    evening.untilExpose().start().pass(300);
    evening.tap({ tap: 'closed', made: evening.openId() });
    const made = only(evening).id;
    evening.tap({ tap: 'correct', made, change: { field: 'elapsedS', value: s(242) } });
    expect(only(evening).openTime).toEqual({ from: 'correction', s: 242 });
    expect(only(evening).exact?.t).toBe(242);
  });

  it('counts the newest try that was not discarded, and a correction may choose another', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const first = framesOf(evening.state())[0];
    evening.tap({ tap: 'retake', frame: first?.planned.key as never }).shoot();
    const counting = () => framesOf(evening.state()).map(({ counts }) => counts);
    expect(counting()).toEqual([false, true]);
    const second = framesOf(evening.state())[1];
    evening.tap({ tap: 'discard', made: second?.id as never });
    expect(counting()).toEqual([true, false]);
    const made = second?.id as never;
    evening.tap({ tap: 'correct', made, change: { field: 'counts', value: true } });
    expect(framesOf(evening.state())[1]?.counts).toBe(true);
  });

  it('counts one try of a frame, never two, and none that was ruled out', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const frames = () => framesOf(evening.state());
    evening.tap({ tap: 'retake', frame: frames()[0]?.planned.key as never }).shoot();
    const [first, second] = frames().map(({ id }) => id as never);
    const counts = (made: never, value: boolean) =>
      evening.tap({ tap: 'correct', made, change: { field: 'counts', value } });
    counts(first as never, true);
    expect(frames().map((frame) => frame.counts)).toEqual([true, false]);
    counts(second as never, true);
    expect(frames().map((frame) => frame.counts)).toEqual([false, true]);
    counts(second as never, false);
    expect(frames().map((frame) => frame.counts)).toEqual([false, false]);
  });

  it('tells how long the rig had rested', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    evening.tap({ tap: 'retake', frame: evening.state().made[0]?.planned.key as never });
    evening.pass(100).shoot();
    const [first, second] = framesOf(evening.state());
    expect(first?.restedS).toBeNull();
    // 1 s to record, 1 s after each of the two taps, 100 s of waiting, 2 s of lead-in.
    expect(second?.restedS).toBe(104);
  });
});
