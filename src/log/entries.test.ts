import { describe, expect, it } from 'vitest';
import { A, B, dialled, Evening, frame, twoSets } from '../../test/evenings/evening.ts';
import type { SetId } from '../plan/ids.ts';
import { EVERYTHING, entriesOf, isWanted, type LogEntry, type Wanted } from './entries.ts';
import { framesOf } from './frames.ts';

const entries = (evening: Evening) => {
  const state = evening.state();
  return entriesOf(state, framesOf(state));
};
const kinds = (evening: Evening) => entries(evening).map(({ kind }) => kind);

describe('the lines of a log', () => {
  it('stand in the order in which things happened', () => {
    const evening = new Evening(twoSets())
      .setUp()
      .tap({ tap: 'note', text: 'fog', made: null })
      .shoot()
      .tap({
        tap: 'reading',
        meter: 'Hand meter',
        reading: { kind: 'ev', ev100: 3 as never },
      })
      .tap({ tap: 'battery-changed', rig: A })
      .shoot();
    expect(kinds(evening)).toEqual(['note', 'frame', 'reading', 'battery-changed', 'frame']);
  });

  it('leave the note of a frame to its frame', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const made = evening.state().made[0]?.id ?? null;
    evening.tap({ tap: 'note', text: 'wind', made });
    expect(kinds(evening)).toEqual(['frame']);
    expect(framesOf(evening.state())[0]?.notes).toEqual(['wind']);
  });

  it('tell in one line what one tap left out', () => {
    const frames = [1, 2, 3].map((repeat) =>
      frame('base', A, dialled('8', '0.5', '100'), { repeat }),
    );
    const evening = new Evening([...frames, frame('high', A, dialled('8', '0.5', '800'))]).setUp();
    evening.shoot().tap({ tap: 'drop-set', set: 'base' as SetId });
    const [first, second] = entries(evening);
    expect(first?.kind).toBe('frame');
    expect(second).toMatchObject({ kind: 'left-out', why: 'set-dropped' });
    expect(second?.kind === 'left-out' && second.frames).toHaveLength(2);
  });

  it('tell what a set was dialled to when it followed the light', () => {
    const frames = [1, 2].flatMap((repeat) =>
      [A, B].map((rig) => frame('base', rig, dialled('8', '0.5', '100'), { repeat })),
    );
    const evening = new Evening(frames).setUp().shoot();
    const rigs = [A, B].map((rig) => {
      const { settings, exact } = frame('base', rig, dialled('8', '0.5', '400'));
      return { rig, settings, exact };
    });
    evening.tap({ tap: 'rematch', set: 'base' as SetId, rigs });
    const found = entries(evening).at(-1);
    if (found?.kind !== 'rematched') throw new Error('rematched');
    expect(found.rematched.set).toBe('base');
    expect(found.rematched.frames.map(({ key }) => key)).toEqual([
      `base/${B}/1/1`,
      `base/${A}/1/2`,
    ]);
    expect(found.rematched.frames.map(({ settings }) => settings.isoMark)).toEqual(['400', '400']);
    expect(isWanted(found, { ...EVERYTHING, rig: A })).toBe(true);
    expect(isWanted(found, { ...EVERYTHING, set: 'other' as SetId })).toBe(false);
    evening.undo();
    expect(kinds(evening)).toEqual(['frame']);
  });

  it('keep frames in their order when the clock is set back between them', () => {
    const evening = new Evening(twoSets()).setUp().shoot().jump(-7200).shoot();
    const made = evening.state().made.map(({ id }) => id);
    const told = entries(evening).map((entry) => entry.kind === 'frame' && entry.frame.id);
    expect(told).toEqual(made);
  });
});

describe('a filter', () => {
  const evening = new Evening(twoSets()).setUp().shootAll();
  const [first, , third] = evening.state().made;
  if (!first || !third) throw new Error('frames are missing');
  evening
    .tap({ tap: 'correct', made: first.id, change: { field: 'isoMark', value: '200' } })
    .tap({ tap: 'discard', made: third.id })
    .tap({ tap: 'note', text: 'fog', made: null });
  const wanted = (wish: Partial<Wanted>) =>
    entries(evening)
      .filter((entry) => isWanted(entry, { ...EVERYTHING, ...wish }))
      .map((entry: LogEntry) => (entry.kind === 'frame' ? entry.frame.planned.key : entry.kind));

  it('shows when a body was switched off, by its rig', () => {
    const off = new Evening(twoSets()).setUp().shoot().tap({ tap: 'powered-off', rig: B }).shoot();
    const told = entries(off);
    expect(told.map(({ kind }) => kind)).toEqual(['frame', 'switched-off', 'frame']);
    const shown = (rig: typeof A) =>
      told.filter((entry) => isWanted(entry, { ...EVERYTHING, rig }));
    expect(shown(B).map(({ kind }) => kind)).toEqual(['switched-off', 'frame']);
    expect(shown(A).map(({ kind }) => kind)).toEqual(['frame']);
  });
  it('that asks for nothing leaves nothing out', () => {
    expect(wanted({})).toHaveLength(5);
  });
  it('takes one rig, one set, or both', () => {
    expect(wanted({ rig: B })).toEqual([`base/${B}/1/1`, `high/${B}/1/1`]);
    expect(wanted({ rig: B, set: 'high' as SetId })).toEqual([`high/${B}/1/1`]);
  });
  it('takes what was not set as planned, or what does not count', () => {
    expect(wanted({ only: 'changed' })).toEqual([first.planned.key]);
    expect(wanted({ only: 'not-counting' })).toEqual([third.planned.key]);
  });
});
