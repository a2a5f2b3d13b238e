import { describe, expect, it } from 'vitest';
import {
  A,
  B,
  dialled,
  Evening,
  frame,
  held,
  planOf,
  refusedFor,
  s,
  twoSets,
} from '../../test/evenings/evening.ts';
import { exposurePhase } from './exposure.ts';
import { allResting } from './rest.ts';

describe('the walk', () => {
  it('goes mount, dial, expose, record, and swaps only when the rig changes', () => {
    const evening = new Evening(twoSets());
    expect(evening.step().kind).toBe('set-up');
    evening.setUp();
    const seen: string[] = [];
    while (evening.state().queue.length > 0 || evening.state().open.length > 0) {
      const step = evening.step();
      seen.push(step.kind);
      if (step.kind === 'mount') evening.tap({ tap: 'mounted', frame: evening.nextKey() });
      else if (step.kind === 'dial') evening.tap({ tap: 'dialled', frame: evening.nextKey() });
      else if (step.kind === 'expose')
        evening.tap({ tap: step.short ? 'taken' : 'start', frame: evening.nextKey() });
      else if (step.kind === 'open')
        evening.pass(70).tap({ tap: 'record', made: evening.openId() });
      else throw new Error(`unexpected step ${step.kind}`);
    }
    expect(seen).toEqual([
      ...['mount', 'dial', 'expose', 'open'],
      ...['mount', 'dial', 'expose', 'open'],
      ...['dial', 'expose'],
      ...['mount', 'dial', 'expose'],
    ]);
    expect(evening.step().kind).toBe('list-done');
    expect(evening.state().made).toHaveLength(4);
    expect(evening.state().made.every((made) => made.recordedAt !== null)).toBe(true);
  });

  it('marks only the dials that must be turned', () => {
    const evening = new Evening([
      frame('one', A, dialled('6.3', '64', '100')),
      frame('two', A, dialled('6.3', '32', '200')),
    ]).setUp();
    evening.shoot();
    expect(evening.step()).toMatchObject({
      kind: 'dial',
      changed: { f: false, time: true, iso: true },
    });
  });

  it('does not ask to dial again for a repeat', () => {
    const settings = dialled('6.3', '2', '100');
    const evening = new Evening([
      frame('one', A, settings),
      frame('one', A, settings, { repeat: 2 }),
    ]).setUp();
    evening.shoot();
    expect(evening.step().kind).toBe('expose');
  });

  it('starts every rig that stands side by side with one tap', () => {
    const frames = [
      frame('one', A, dialled('6.3', '64', '100')),
      frame('one', B, dialled('8', '60', '100')),
    ];
    const evening = new Evening(frames, planOf(frames, { order: 'side-by-side' })).setUp();
    evening.untilExpose().start();
    expect(evening.state().open).toHaveLength(2);
    // Birch ends after 2 s lead-in and 60 s, Alder four seconds later.
    evening.pass(61.5);
    const phases = () => {
      const step = evening.step();
      return step.kind === 'open' ? step.frames.map(({ phase }) => phase.phase) : [step.kind];
    };
    expect(phases()).toEqual(['running', 'to-record']);
    evening.tap({ tap: 'record', made: evening.state().open[1] as never });
    expect(phases()).toEqual(['running']);
    evening.pass(4).tap({ tap: 'record', made: evening.openId() });
    expect(phases()).toEqual(['list-done']);
  });
});

describe('the timer', () => {
  const long = () =>
    new Evening([frame('one', A, dialled('6.3', '64', '100'))]).setUp().untilExpose();

  it('counts the lead-in, then the exposure, from the stored instant', () => {
    const evening = long().start();
    const phase = () => {
      const [made] = evening.state().made;
      if (!made) throw new Error('nothing made');
      return exposurePhase(made, evening.now());
    };
    expect(phase()).toMatchObject({ phase: 'lead-in', leftS: 1 });
    evening.pass(11);
    expect(phase()).toMatchObject({ phase: 'running', leftS: 54 });
    evening.reload(30);
    expect(phase()).toMatchObject({ phase: 'running', leftS: 24 });
    evening.jump(30);
    expect(phase()).toMatchObject({ phase: 'to-record', closedSinceS: 6 });
  });

  it('says unknown when the clock was set back, never a time below zero', () => {
    const evening = long().start();
    evening.reload(-3600);
    const [made] = evening.state().made;
    expect(made && exposurePhase(made, evening.now()).phase).toBe('unknown');
  });

  it('lets bulb run over until a hand closes it, and records as planned with that tap', () => {
    const evening = new Evening([frame('one', A, held('6.3', 240, '100'))]).setUp().untilExpose();
    evening.start();
    evening.pass(1 + 240 + 9);
    expect(evening.step()).toMatchObject({
      kind: 'open',
      frames: [{ phase: { phase: 'held-open', leftS: -9 } }],
    });
    evening.tap({ tap: 'closed', made: evening.openId() });
    const [made] = evening.state().made;
    expect(made?.recordedAt).toEqual(made?.closedAt);
    expect(made?.settings).toEqual(held('6.3', 240, '100'));
  });

  it('refuses to record what is still open, and to close before the shutter opened', () => {
    const evening = long().start();
    const made = evening.openId();
    expect(refusedFor(evening.try({ tap: 'closed-otherwise', made }))).toBe('shutter-not-open');
    evening.pass(5);
    expect(refusedFor(evening.try({ tap: 'record', made }))).toBe('shutter-still-open');
    evening.tap({ tap: 'closed-otherwise', made });
    expect(evening.step()).toMatchObject({ frames: [{ phase: { phase: 'to-record' } }] });
  });

  it('a pause never stops an exposure', () => {
    const evening = long().start().tap({ tap: 'pause' });
    expect(evening.step().kind).toBe('open');
    evening.pass(70).tap({ tap: 'record', made: evening.openId() });
    expect(evening.step().kind).toBe('paused');
    evening.tap({ tap: 'resume' });
    expect(evening.step().kind).toBe('list-done');
  });
});

describe('a short frame', () => {
  it('set otherwise waits for what was set, without a lead-in that is long over', () => {
    const evening = new Evening([frame('one', A, dialled('8', '0.5', '12800'))]).setUp();
    evening.untilExpose();
    evening.tap({ tap: 'taken', frame: evening.nextKey(), otherwise: true });
    expect(evening.step()).toMatchObject({
      kind: 'open',
      frames: [{ phase: { phase: 'to-record' } }],
    });
    const made = evening.openId();
    evening.tap({ tap: 'record', made, settings: dialled('8', '0.4', '12800') });
    expect(evening.state().made[0]?.settings?.time).toEqual({ kind: 'dial', mark: '0.4' });
  });
});

describe('second taps', () => {
  it('one start, one record, whatever the glove does', () => {
    const evening = new Evening(twoSets()).setUp().untilExpose().start();
    expect(refusedFor(evening.try({ tap: 'start', frame: evening.nextKey() }))).toBe(
      'not-exposing',
    );
    evening.pass(70);
    const made = evening.openId();
    evening.tap({ tap: 'record', made });
    expect(refusedFor(evening.try({ tap: 'record', made }))).toBe('frame-not-open');
  });
});

describe('undo', () => {
  it('takes back the newest tap, and again the one before', () => {
    const evening = new Evening(twoSets()).setUp();
    const before = evening.step();
    evening
      .tap({ tap: 'mounted', frame: evening.nextKey() })
      .tap({ tap: 'dialled', frame: evening.nextKey() });
    evening.undo();
    expect(evening.step().kind).toBe('dial');
    evening.undo();
    expect(evening.step()).toEqual(before);
  });

  it('takes back all that one tap wrote', () => {
    const evening = new Evening([frame('one', A, dialled('8', '0.5', '12800'))]).setUp();
    evening.tap({ tap: 'set-counter', rig: A, next: 41 }).shoot();
    expect(evening.state().made).toHaveLength(1);
    expect(evening.state().rigs.get(A)?.nextFile).toBe(42);
    evening.undo();
    expect(evening.state().made).toHaveLength(0);
    expect(evening.state().rigs.get(A)?.nextFile).toBe(41);
    expect(evening.step()).toMatchObject({ kind: 'expose' });
  });

  it('an exposure undone while it runs never happened: no file number, no rest', () => {
    const frames = [frame('one', A, dialled('6.3', '64', '100'))];
    const evening = new Evening(frames, planOf(frames, { rest: { offUpToS: s(0) } }));
    evening.setUp().untilExpose().start();
    evening.pass(30).undo();
    expect(evening.step().kind).toBe('expose');
    expect(allResting(evening.state(), evening.now())).toEqual([]);
  });

  it('reaches back to the start of the outing and no further', () => {
    const evening = new Evening(twoSets()).setUp();
    for (let tap = 0; tap < 10; tap += 1) evening.undo();
    expect(evening.step().kind).toBe('set-up');
    expect(evening.state().queue).toHaveLength(4);
  });
});

describe('file numbers', () => {
  it('count up by themselves, over extra shots and the roll-over', () => {
    const settings = dialled('8', '0.5', '12800');
    const evening = new Evening([
      frame('one', A, settings),
      frame('one', A, settings, { repeat: 2 }),
      frame('one', A, settings, { repeat: 3 }),
    ]).setUp();
    evening.tap({ tap: 'set-counter', rig: A, next: 9997 }).shoot();
    evening.tap({ tap: 'extra-shot', rig: A }).shoot().shoot();
    expect(evening.state().made.map(({ fileNumber }) => fileNumber)).toEqual([9997, 9999, 1]);
  });

  it('stay unknown when nobody stated the first', () => {
    const evening = new Evening(twoSets()).setUp().shootAll();
    expect(evening.state().made.map(({ fileNumber }) => fileNumber)).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });
});

describe('changes of the list', () => {
  it('a retake comes next and is a further made frame', () => {
    const evening = new Evening(twoSets()).setUp().shoot();
    const [first] = evening.state().made;
    evening.tap({ tap: 'judge', made: first?.id as never, verdict: 'moved' });
    evening.tap({ tap: 'retake', frame: first?.planned.key as never });
    expect(evening.step().kind).toBe('expose');
    evening.shoot();
    expect(evening.state().made.map(({ attempt }) => attempt)).toEqual([1, 2]);
    expect(evening.state().queue).toHaveLength(3);
  });

  it('swaps the next two, drops a set, skips a frame, and keeps a word of each', () => {
    const evening = new Evening(twoSets()).setUp();
    const keys = () => evening.state().queue.map(({ key }) => key);
    const [one, two, three, four] = keys();
    evening.tap({ tap: 'swap-next-two', frame: evening.nextKey() });
    expect(keys()).toEqual([two, one, three, four]);
    evening.tap({ tap: 'skip-frame', frame: evening.nextKey() });
    expect(keys()).toEqual([one, three, four]);
    evening.tap({ tap: 'drop-set', set: 'high' as never });
    expect(keys()).toEqual([one]);
    expect(evening.state().dropped).toEqual(['high']);
    expect(evening.state().skipped.map(({ why }) => why)).toEqual([
      'skipped',
      'set-dropped',
      'set-dropped',
    ]);
  });
});

describe('rest', () => {
  const frames = [
    frame('one', A, dialled('6.3', '64', '100')),
    frame('one', A, dialled('6.3', '64', '100'), { repeat: 2 }),
  ];
  const plan = planOf(frames, { rest: { offUpToS: s(0) } });

  it('is asked for by the rule of thumb, and what passed anyway counts', () => {
    const evening = new Evening(frames, plan).setUp().shoot();
    // One second passed since the shutter closed and one since the record.
    expect(evening.step()).toMatchObject({ kind: 'rest', resting: { leftS: 63, owedS: 64 } });
    evening.pass(63);
    expect(evening.step().kind).toBe('expose');
  });

  it('can be skipped, and the skip is logged with what was left', () => {
    const evening = new Evening(frames, plan).setUp().shoot();
    evening.tap({ tap: 'skip-rest', rig: A });
    expect(evening.step().kind).toBe('expose');
    expect(evening.state().restsSkipped).toMatchObject([{ rig: A, leftS: 63 }]);
  });

  it('is not asked for before a capped dark, which stands for the warmth of its frame', () => {
    const dark = frame('dark', A, dialled('6.3', '64', '100'));
    const list = [frames[0], dark].flatMap((one) => one ?? []);
    const base = planOf(list, { rest: { offUpToS: s(0) } });
    const sets = base.sets.map((set) =>
      set.id === 'dark' ? { ...set, kind: 'capped-dark' as const } : set,
    );
    const evening = new Evening(list, { ...base, sets }).setUp().shoot();
    expect(evening.step()).toMatchObject({ kind: 'expose', frames: [{ set: 'dark' }] });
  });

  it('is off by default up to 64 s', () => {
    const evening = new Evening(frames, planOf(frames, { rest: {} })).setUp().shoot();
    expect(evening.step().kind).toBe('expose');
  });
});

describe('focus', () => {
  it('is asked for again when a lens that forgets it lost power, and only then', () => {
    const evening = new Evening(twoSets()).setUp().untilExpose();
    evening.tap({ tap: 'battery-changed', rig: A });
    const survives = evening.state().gear.lenses[0]?.focusSurvivesPowerOff;
    expect(evening.step().kind).toBe(survives ? 'expose' : 'focus');
    evening.untilExpose().tap({ tap: 'lens-touched', rig: A });
    expect(evening.step()).toMatchObject({ kind: 'focus', why: 'lens-touched' });
    evening.fixFocus(A);
    expect(evening.step().kind).toBe('expose');
  });
});

describe('the end', () => {
  it('waits for an open frame, and afterwards only the past can be set right', () => {
    const evening = new Evening(twoSets()).setUp().untilExpose().start();
    expect(refusedFor(evening.try({ tap: 'end' }))).toBe('frame-open');
    evening.pass(70).tap({ tap: 'record', made: evening.openId() }).tap({ tap: 'end' });
    expect(refusedFor(evening.try({ tap: 'pause' }))).toBe('outing-ended');
    expect(refusedFor(evening.try({ tap: 'begin-frames' }))).toBe('outing-ended');
    const made = evening.state().made[0]?.id as never;
    evening.tap({ tap: 'correct', made, change: { field: 'isoMark', value: '125' } });
    expect(evening.state().corrections).toHaveLength(1);
    evening.undo().undo();
    expect(evening.state().phase).toBe('running');
  });
});
