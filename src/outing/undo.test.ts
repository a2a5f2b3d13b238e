import { describe, expect, it } from 'vitest';
import {
  A,
  B,
  dialled,
  Evening,
  frame,
  gear,
  held,
  planOf,
  s,
} from '../../test/evenings/evening.ts';
import { ev, stops } from '../science/units.ts';
import type { Tap } from './next.ts';

/*
 * Every tap there is, taken back: the state is what it was, to the last field. A new tap without a
 * row here does not compile. Seen to fail: an undo that takes back the newest event alone (of a tap
 * that writes two), and a fold that drops the skipped frames of a set that came back.
 */

type Name = Tap['tap'];
type TapOf<N extends Name> = Extract<Tap, { tap: N }>;

interface Row<N extends Name> {
  /** Up to the moment at which the tap makes sense. */
  readonly before: () => Evening;
  readonly tap: (evening: Evening) => TapOf<N>;
  /** Events that it writes; 1 by default. */
  readonly writes?: number;
}

const FRAMES = [
  frame('one', A, dialled('6.3', '64', '100')),
  frame('one', B, dialled('8', '60', '100'), { visit: 2 }),
  frame('two', B, dialled('8', '0.5', '12800'), { visit: 2 }),
  frame('two', A, dialled('8', '0.5', '12800'), { visit: 3 }),
];
const [body] = gear.bodies;
if (!body) throw new Error('the practice gear is empty');

const fresh = () => new Evening(FRAMES);
const running = () => fresh().tap({ tap: 'set-counter', rig: A, next: 41 }).setUp();
const mounted = () => running().tap({ tap: 'mounted', frame: running().nextKey() });
const toExpose = () => running().untilExpose();
const exposing = () => toExpose().start().pass(5);
const recorded = () => running().shoot();
const bulb = () =>
  new Evening([frame('bulb', A, held('8', 240, '400'))]).setUp().untilExpose().start().pass(100);
const short = () =>
  new Evening([frame('short', A, dialled('8', '0.5', '12800'))]).setUp().untilExpose();
const sideBySide = () => {
  const frames = [A, B].map((rig) => frame('both', rig, dialled('8', '8', '800')));
  return new Evening(frames, planOf(frames, { order: 'side-by-side' })).setUp();
};
const shortSideBySide = () => {
  const frames = [A, B].map((rig) => frame('both', rig, dialled('8', '0.5', '800')));
  return new Evening(frames, planOf(frames, { order: 'side-by-side' })).setUp();
};
const resting = () => {
  const frames = ['one', 'two'].map((set) => frame(set, A, dialled('6.3', '64', '100')));
  return new Evening(frames, planOf(frames, { rest: { offUpToS: s(0) } })).setUp().shoot();
};

const lastMade = (evening: Evening) => {
  const made = evening.state().made.at(-1);
  if (!made) throw new Error('nothing is made');
  return made;
};

/** All taps, each in the shapes that it can take. */
const TAPS: { readonly [N in Name]: readonly Row<N>[] } = {
  tick: [true, false].map((done) => ({
    before: () => fresh().fixFocus(A),
    tap: () => ({ tap: 'tick', rig: done ? B : A, item: 'focus-fixed', done }),
  })),
  'set-counter': [
    { before: fresh, tap: () => ({ tap: 'set-counter', rig: A, next: 9 }) },
    { before: running, tap: () => ({ tap: 'set-counter', rig: A, next: 9 }) },
  ],
  'begin-frames': [{ before: fresh, tap: () => ({ tap: 'begin-frames' }) }],
  mounted: [running, sideBySide].map((before) => ({
    before,
    tap: (evening) => ({ tap: 'mounted', frame: evening.nextKey() }),
  })),
  dialled: [{ before: mounted, tap: (evening) => ({ tap: 'dialled', frame: evening.nextKey() }) }],
  start: [
    { before: toExpose, tap: (evening) => ({ tap: 'start', frame: evening.nextKey() }) },
    {
      before: () => sideBySide().untilExpose(),
      tap: (evening) => ({ tap: 'start', frame: evening.nextKey() }),
      writes: 2,
    },
  ],
  taken: [
    { before: short, tap: (evening) => ({ tap: 'taken', frame: evening.nextKey() }), writes: 2 },
    {
      before: short,
      tap: (evening) => ({ tap: 'taken', frame: evening.nextKey(), otherwise: true }),
    },
    {
      before: () => shortSideBySide().untilExpose(),
      tap: (evening) => ({ tap: 'taken', frame: evening.nextKey() }),
      writes: 4,
    },
  ],
  closed: [
    { before: bulb, tap: (evening) => ({ tap: 'closed', made: evening.openId() }), writes: 2 },
  ],
  'closed-otherwise': [bulb, () => exposing().pass(10)].map((before) => ({
    before,
    tap: (evening) => ({ tap: 'closed-otherwise', made: evening.openId() }),
  })),
  record: [
    {
      before: () => exposing().pass(70),
      tap: (evening) => ({ tap: 'record', made: evening.openId() }),
    },
    {
      before: () => exposing().pass(70),
      tap: (evening) => ({
        tap: 'record',
        made: evening.openId(),
        settings: dialled('8', '32', '200'),
        fileNumber: 77,
      }),
    },
  ],
  'extra-shot': [
    { before: running, tap: () => ({ tap: 'extra-shot', rig: A }) },
    { before: exposing, tap: () => ({ tap: 'extra-shot', rig: A }) },
  ],
  judge: [
    {
      before: recorded,
      tap: (evening) => ({ tap: 'judge', made: lastMade(evening).id, verdict: 'soft' }),
    },
  ],
  retake: [
    {
      before: recorded,
      tap: (evening) => ({ tap: 'retake', frame: lastMade(evening).planned.key }),
    },
  ],
  'skip-frame': [
    { before: running, tap: (evening) => ({ tap: 'skip-frame', frame: evening.nextKey() }) },
    {
      before: sideBySide,
      tap: (evening) => ({ tap: 'skip-frame', frame: evening.nextKey() }),
      writes: 2,
    },
  ],
  'drop-set': [running, recorded].map((before) => ({
    before,
    tap: () => ({ tap: 'drop-set', set: 'one' as never }),
  })),
  'swap-next-two': [
    { before: running, tap: (evening) => ({ tap: 'swap-next-two', frame: evening.nextKey() }) },
  ],
  rematch: [
    {
      before: running,
      tap: () => ({
        tap: 'rematch',
        set: 'one' as never,
        rigs: FRAMES.slice(0, 2).map(({ rig, settings }) => {
          const turned = frame('one', rig, { ...settings, isoMark: '200' });
          return { rig, settings: turned.settings, exact: turned.exact };
        }),
      }),
    },
  ],
  note: [
    { before: running, tap: () => ({ tap: 'note', text: 'fog', made: null }) },
    {
      before: recorded,
      tap: (evening) => ({ tap: 'note', text: 'fog', made: lastMade(evening).id }),
    },
  ],
  reading: [
    {
      before: running,
      tap: () => ({ tap: 'reading', meter: 'Spot', reading: { kind: 'ev', ev100: ev(-2) } }),
    },
  ],
  'battery-changed': [{ before: recorded, tap: () => ({ tap: 'battery-changed', rig: A }) }],
  'lens-touched': [{ before: recorded, tap: () => ({ tap: 'lens-touched', rig: A }) }],
  'powered-off': [{ before: recorded, tap: () => ({ tap: 'powered-off', rig: A }) }],
  'skip-rest': [{ before: resting, tap: () => ({ tap: 'skip-rest', rig: A }) }],
  'cue-late': [],
  pause: [fresh, running, exposing].map((before) => ({ before, tap: () => ({ tap: 'pause' }) })),
  resume: [
    { before: () => running().tap({ tap: 'pause' }), tap: () => ({ tap: 'resume' }) },
    { before: () => fresh().tap({ tap: 'pause' }), tap: () => ({ tap: 'resume' }) },
  ],
  end: [running, recorded, () => running().shootAll(), () => running().tap({ tap: 'pause' })].map(
    (before) => ({ before, tap: () => ({ tap: 'end' }) }),
  ),
  discard: [
    { before: recorded, tap: (evening) => ({ tap: 'discard', made: lastMade(evening).id }) },
    {
      before: () => running().shootAll().tap({ tap: 'end' }),
      tap: (evening) => ({ tap: 'discard', made: lastMade(evening).id }),
    },
  ],
  correct: [
    {
      before: recorded,
      tap: (evening) => ({
        tap: 'correct',
        made: lastMade(evening).id,
        change: { field: 'isoMark', value: '200' },
      }),
    },
  ],
  'correct-gear': [
    {
      before: recorded,
      tap: () => ({ tap: 'correct-gear', change: { part: 'body', value: { ...body, name: 'X' } } }),
    },
  ],
  'clock-framed': [{ before: running, tap: () => ({ tap: 'clock-framed', rig: B }) }],
  'match-files': [
    {
      before: recorded,
      tap: (evening) => ({
        tap: 'match-files',
        files: [{ made: lastMade(evening).id, file: null }],
        clocks: [],
      }),
    },
  ],
  'take-values': [
    {
      before: recorded,
      tap: (evening) => {
        const frame = lastMade(evening).id;
        return {
          tap: 'take-values',
          changes: [
            { frame, field: 'isoMark', value: '200' },
            { frame, field: 'fMark', value: '8' },
          ],
        };
      },
    },
  ],
  'even-up': [
    {
      before: recorded,
      tap: () => ({
        tap: 'even-up',
        found: {
          set: 'one' as never,
          rig: B,
          pass: null,
          needed: { stops: stops(0.8), sigma: null, by: 'typed' },
        },
      }),
    },
  ],
};

const rows = Object.entries(TAPS).flatMap(([name, all]) =>
  (all as readonly Row<Name>[]).map((row, at) => ({ name, at: at + 1, ...row })),
);

describe('a tap that is taken back', () => {
  it.each(rows)('$name, $at: leaves the state as it was', ({ before, tap, writes = 1 }) => {
    const evening = before();
    const was = evening.state();
    const step = evening.step();
    const had = evening.events.length;
    evening.tap(tap(evening));
    expect(evening.events.length - had).toBe(writes);
    expect(evening.state()).not.toEqual(was);
    evening.undo();
    expect(evening.state()).toEqual(was);
    expect(evening.step().kind).toBe(step.kind);
  });

  it('is every one there is but the remark of the app itself', () => {
    const untold = Object.entries(TAPS).filter(([, all]) => all.length === 0);
    expect(untold.map(([name]) => name)).toEqual(['cue-late']);
    // Which an undo passes over, for no hand made it.
    const evening = exposing().pass(80);
    evening.tap({ tap: 'cue-late', made: evening.openId(), lateS: s(9) });
    evening.undo();
    expect(evening.state().open).toEqual([]);
    expect(evening.step().kind).toBe('expose');
  });

  it('is offered down to the start of the outing, also after its end', () => {
    const evening = running().shootAll().tap({ tap: 'end' });
    const taps = new Set(evening.events.slice(1).map(({ monoMs }) => monoMs)).size;
    for (let count = 0; count < taps; count += 1) {
      const before = evening.events.length;
      evening.undo();
      expect(evening.events.length).toBeGreaterThan(before);
    }
    const begun = fresh();
    expect(evening.state()).toEqual({ ...begun.state(), startedAt: evening.state().startedAt });
    const left = evening.events.length;
    evening.undo();
    expect(evening.events.length).toBe(left);
  });
});
