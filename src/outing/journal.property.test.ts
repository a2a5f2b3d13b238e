import fc from 'fast-check';
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
} from '../../test/evenings/evening.ts';
import { fold } from './fold.ts';
import type { Tap } from './next.ts';
import { inOrder, standing } from './sequence.ts';
import { stepAt } from './step.ts';

/*
 * A hand that does anything at any time: acts are drawn blindly and many make
 * no sense where they fall. What the run makes of them must hold whatever comes.
 */

const FRAMES = [
  frame('one', A, dialled('6.3', '64', '100')),
  frame('one', B, dialled('8', '60', '100'), { visit: 2 }),
  frame('two', B, dialled('8', '0.5', '12800'), { visit: 2 }),
  frame('two', A, held('8', 240, '12800'), { visit: 3 }),
  frame('two', A, held('8', 240, '12800'), { visit: 3, repeat: 2 }),
];

type Act =
  | { readonly kind: 'tap'; readonly choose: (evening: Evening) => Tap | null }
  | { readonly kind: 'undo' }
  | { readonly kind: 'wait'; readonly s: number }
  | { readonly kind: 'reload'; readonly s: number };

const tap = (choose: (evening: Evening) => Tap | null): Act => ({ kind: 'tap', choose });
const always = (what: Tap): Act => tap(() => what);
const onNext = (
  kind: 'mounted' | 'dialled' | 'start' | 'taken' | 'skip-frame' | 'swap-next-two',
): Act =>
  tap((evening) => {
    const [waiting] = evening.state().queue;
    return waiting ? { tap: kind, frame: waiting.key } : null;
  });
const onOpen = (make: (made: Evening['openId'] extends () => infer R ? R : never) => Tap): Act =>
  tap((evening) => {
    const [made] = evening.state().open;
    return made ? make(made) : null;
  });

const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 12, arbitrary: fc.constant(onNext('mounted')) },
  { weight: 12, arbitrary: fc.constant(onNext('dialled')) },
  { weight: 12, arbitrary: fc.constant(onNext('start')) },
  { weight: 8, arbitrary: fc.constant(onNext('taken')) },
  { weight: 12, arbitrary: fc.constant(onOpen((made) => ({ tap: 'record', made }))) },
  { weight: 6, arbitrary: fc.constant(onOpen((made) => ({ tap: 'closed', made }))) },
  { weight: 4, arbitrary: fc.constant(onOpen((made) => ({ tap: 'closed-otherwise', made }))) },
  { weight: 8, arbitrary: fc.constant<Act>({ kind: 'undo' }) },
  {
    weight: 12,
    arbitrary: fc.integer({ min: 1, max: 300 }).map((s): Act => ({ kind: 'wait', s })),
  },
  {
    weight: 4,
    arbitrary: fc.integer({ min: -4000, max: 4000 }).map((s): Act => ({ kind: 'reload', s })),
  },
  {
    weight: 14,
    arbitrary: fc.constantFrom<Act>(
      always({ tap: 'tick', rig: A, item: 'focus-fixed', done: true }),
      always({ tap: 'tick', rig: B, item: 'focus-fixed', done: true }),
      always({ tap: 'begin-frames' }),
      onNext('skip-frame'),
      onNext('swap-next-two'),
      always({ tap: 'drop-set', set: 'one' as never }),
      always({ tap: 'extra-shot', rig: A }),
      always({ tap: 'set-counter', rig: B, next: 9998 }),
      always({ tap: 'battery-changed', rig: A }),
      always({ tap: 'skip-rest', rig: A }),
      always({ tap: 'pause' }),
      always({ tap: 'resume' }),
      always({ tap: 'end' }),
      always({ tap: 'note', text: 'wind', made: null }),
      tap((evening) => {
        const made = evening.state().made.at(-1);
        return made ? { tap: 'retake', frame: made.planned.key } : null;
      }),
      tap((evening) => {
        const made = evening.state().made.at(-1);
        return made ? { tap: 'discard', made: made.id } : null;
      }),
    ),
  },
);

function play(acts: readonly Act[]): Evening {
  const evening = new Evening(FRAMES, planOf(FRAMES, { rest: { offUpToS: s(0) } }));
  evening.setUp();
  for (const { kind, ...rest } of acts) {
    if (kind === 'undo') evening.undo();
    else if (kind === 'wait' && 's' in rest) evening.pass(rest.s);
    else if (kind === 'reload' && 's' in rest) evening.reload(rest.s);
    else if ('choose' in rest) {
      const chosen = rest.choose(evening);
      if (chosen && refusedFor(evening.try(chosen)) === null) evening.tap(chosen);
    }
  }
  return evening;
}

const evenings = fc.array(act, { maxLength: 60 });

describe('whatever a hand does', () => {
  it('every prefix of the journal gives a legal state and a step', () => {
    fc.assert(
      fc.property(evenings, (acts) => {
        const evening = play(acts);
        const events = inOrder(evening.events);
        for (let length = 1; length <= events.length; length += 1) {
          const state = fold(events.slice(0, length));
          if (!state) throw new Error('a journal with a start must fold');
          const planned = new Set(FRAMES.map(({ key }) => key));
          const keys = state.queue.map(({ key }) => key);
          expect(new Set(keys).size).toBe(keys.length);
          expect(keys.every((key) => planned.has(key))).toBe(true);
          expect(state.open.every((id) => state.made.some((made) => made.id === id))).toBe(true);
          // Nothing of the list is ever lost: it waits, was made, or was left with a word.
          for (const key of planned) {
            const somewhere =
              keys.includes(key) ||
              state.made.some((made) => made.planned.key === key) ||
              state.skipped.some(({ frame: left }) => left.key === key);
            expect(somewhere).toBe(true);
          }
          expect(stepAt(state, evening.now()).kind).toBeTypeOf('string');
        }
      }),
      { numRuns: 150 },
    );
  });

  it('never has two frames of one rig open, nor opens one while another waits for its record', () => {
    fc.assert(
      fc.property(evenings, (acts) => {
        const evening = play(acts);
        expect(evening.state().open.length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 150 },
    );
  });

  it('undoing every tap leads back to the untouched list', () => {
    fc.assert(
      fc.property(evenings, (acts) => {
        const evening = play(acts);
        const taps = standing(inOrder(evening.events)).length;
        for (let count = 0; count < taps; count += 1) evening.undo();
        const state = evening.state();
        expect(state.queue).toEqual(FRAMES);
        expect(state.made).toEqual([]);
        expect(state.phase).toBe('setting-up');
      }),
      { numRuns: 60 },
    );
  });

  it('one tap less undone: undo gives back exactly the state before the tap', () => {
    fc.assert(
      fc.property(
        evenings,
        fc.constantFrom<Tap['tap']>('note', 'pause', 'extra-shot'),
        (acts, kind) => {
          const evening = play(acts);
          const before = evening.state();
          const what: Tap =
            kind === 'note'
              ? { tap: 'note', text: 'cloud', made: null }
              : kind === 'extra-shot'
                ? { tap: 'extra-shot', rig: A }
                : { tap: 'pause' };
          if (refusedFor(evening.try(what)) !== null) return;
          evening.pass(1).tap(what).undo();
          expect(evening.state()).toEqual(before);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe('the order of events', () => {
  it('does not depend on the order in which they are read', () => {
    fc.assert(
      fc.property(evenings, evenings, fc.infiniteStream(fc.nat()), (one, two, shuffle) => {
        const first = play(one).events;
        const second = play(two).events.map((event) => ({
          ...event,
          writer: 'other-phone' as typeof event.writer,
          id: `other-${event.id}` as typeof event.id,
        }));
        const both = [...first, ...second];
        const shuffled = both
          .map((event) => ({ event, rank: shuffle.next().value }))
          .sort((a, b) => a.rank - b.rank)
          .map(({ event }) => event);
        expect(inOrder(shuffled)).toEqual(inOrder(both));
        expect(inOrder(both).filter(({ writer }) => writer !== 'other-phone')).toEqual(first);
      }),
      { numRuns: 40 },
    );
  });
});
