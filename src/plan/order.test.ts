import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { fNumber, iso, seconds } from '../science/units.ts';
import type { Dialled, PlannedFrame } from './frame.ts';
import type { PlanId, SetId } from './ids.ts';
import { newPlan, newSet } from './newPlan.ts';
import { orderFrames, swapCount, turnsOf } from './order.ts';
import { DEFAULT_PASSES } from './passes.ts';
import { ORDERS, type OrderName, type Plan, type PlanSet, type SetKind } from './plan.ts';

const LETTERS = ['A', 'B', 'C', 'D'] as const;

const dialled: Dialled = {
  settings: { fMark: '8', time: { kind: 'dial', mark: '1' }, isoMark: '100' },
  exact: { n: fNumber(8), t: seconds(1), s: iso(100) },
};

const set = (
  id: string,
  passes: number,
  { kind = 'light' as SetKind, repeats = 1 } = {},
): PlanSet => ({
  ...newSet(id as SetId, 'A' as RigId, dialled.settings),
  kind,
  passes,
  repeats,
});

const plan = (order: OrderName, rigs: number, sets: readonly PlanSet[]): Plan => ({
  ...newPlan('p' as PlanId, 'plan', LETTERS.slice(0, rigs) as readonly string[] as RigId[]),
  order,
  sets,
});

const framesOf = (from: Plan): readonly PlannedFrame[] => orderFrames(from, () => dialled);

/** 'A B B A': the rig of each frame. */
const letters = (frames: readonly PlannedFrame[]): string => frames.map(({ rig }) => rig).join(' ');

const byDefault = (order: OrderName, rigs: number, sets = 1): Plan =>
  plan(
    order,
    rigs,
    Array.from({ length: sets }, (_, index) => set(`s${index}`, DEFAULT_PASSES[order])),
  );

describe('one set', () => {
  const cases: readonly [OrderName, number, string, number][] = [
    ['rig-by-rig', 2, 'A B', 1],
    ['forward', 2, 'A B', 1],
    ['forward', 4, 'A B C D', 3],
    ['mirror', 2, 'A B B A', 2],
    ['mirror', 3, 'A B C C B A', 4],
    ['alternate', 2, 'A B A B', 3],
    ['alternate', 3, 'A B C A B C', 5],
    ['double-mirror', 2, 'A B B A B A A B', 5],
    ['double-mirror', 3, 'A B C C B A C B A A B C', 9],
    ['side-by-side', 3, 'A B C', 0],
  ];
  it.each(cases)('%s with %i rigs is %s, %i swaps', (order, rigs, expected, swaps) => {
    const frames = framesOf(byDefault(order, rigs));
    expect(letters(frames)).toBe(expected);
    expect(swapCount(frames)).toBe(swaps);
  });

  it('goes on by the same pattern past its usual passes', () => {
    expect(letters(framesOf(plan('mirror', 2, [set('s', 3)])))).toBe('A B B A A B');
    expect(letters(framesOf(plan('double-mirror', 2, [set('s', 8)])))).toBe(
      'A B B A B A A B B A A B A B B A',
    );
  });

  it('makes all repeats of a turn before the rig comes off', () => {
    const frames = framesOf(plan('mirror', 2, [set('s', 2, { repeats: 2 })]));
    expect(letters(frames)).toBe('A A B B B B A A');
    expect(frames.map(({ pass, repeat }) => `${pass}.${repeat}`).join(' ')).toBe(
      '1.1 1.2 1.1 1.2 2.1 2.2 2.1 2.2',
    );
    expect(swapCount(frames)).toBe(2);
  });
});

describe('an arrangement of turns', () => {
  const turn = (id: string, rig: string | null) => ({ set: id as SetId, rig: rig as RigId | null });
  const two = plan('mirror', 2, [set('s', 2), set('t', 1)]);
  const keys = (from: Plan) => framesOf(from).map(({ set: of, rig, pass }) => `${of}${rig}${pass}`);

  it('stands before the named order, and passes are numbered as they come', () => {
    const arranged = [
      turn('t', 'B'),
      turn('s', 'B'),
      turn('s', 'B'),
      turn('s', 'A'),
      turn('t', 'A'),
      turn('s', 'A'),
    ];
    expect(keys({ ...two, arranged })).toEqual(['tB1', 'sB1', 'sB2', 'sA1', 'tA1', 'sA2']);
    expect(swapCount(framesOf({ ...two, arranged }))).toBe(1);
  });

  it('passes over what the list no longer has and puts what it lacks last, as it stood', () => {
    const arranged = [turn('t', 'B'), turn('gone', 'A'), turn('t', 'B'), turn('s', 'C')];
    expect(keys({ ...two, arranged })).toEqual(['tB1', 'sA1', 'sB1', 'sB2', 'sA2', 'tA1']);
  });

  it('made of the turns that stand changes nothing', () => {
    for (const order of ORDERS) {
      const named = byDefault(order, 3, 3);
      const arranged = turnsOf(named, framesOf(named));
      expect(framesOf({ ...named, arranged })).toEqual(framesOf(named));
    }
  });

  it('moves whole sets where all rigs stand side by side', () => {
    const beside = { ...two, order: 'side-by-side' as const };
    const arranged = [turn('t', null), turn('s', null)];
    expect(keys({ ...beside, arranged })).toEqual(['tA1', 'tB1', 'sA1', 'sB1', 'sA2', 'sB2']);
  });
});

describe('one rig at a time', () => {
  it('does all passes of all sets before the rig leaves', () => {
    const once = { ...plan('rig-by-rig', 2, [set('s', 2), set('t', 1)]), oneRigAtATime: true };
    expect(letters(framesOf(once))).toBe('A A A B B B');
    expect(swapCount(framesOf(once))).toBe(1);
  });
});

describe('a capped series', () => {
  it('comes first, all rigs at once, whatever the order, and costs no swap', () => {
    const warm = set('warm', 1, { kind: 'capped-series', repeats: 2 });
    const frames = framesOf(plan('mirror', 2, [set('s', 2), warm]));
    expect(letters(frames)).toBe('A B A B A B B A');
    expect(frames.slice(0, 4).every(({ set: of }) => of === warm.id)).toBe(true);
    expect(swapCount(frames)).toBe(2);
  });
});

describe('several sets', () => {
  const cases: readonly [OrderName, number, string, number][] = [
    ['rig-by-rig', 2, 'A A A B B B', 1],
    ['forward', 2, 'A B B A A B', 3],
    ['mirror', 2, 'A B B A A B B A A B B A', 6],
    ['alternate', 2, 'A B A B B A B A A B A B', 9],
    ['double-mirror', 2, 'A B B A B A A B B A A B A B B A A B B A B A A B', 15],
    ['side-by-side', 2, 'A B A B A B', 0],
  ];
  it.each(cases)('three sets %s with %i rigs are %s, %i swaps', (order, rigs, expected, swaps) => {
    const frames = framesOf(byDefault(order, rigs, 3));
    expect(letters(frames)).toBe(expected);
    expect(swapCount(frames)).toBe(swaps);
  });

  it('lets one visit cover the end of a set and the start of the next', () => {
    const frames = framesOf(byDefault('mirror', 2, 2));
    expect(frames.map(({ visit }) => visit)).toEqual([1, 2, 2, 3, 3, 4, 4, 5]);
  });

  it('turns the whole list round for a second pass rig by rig', () => {
    const frames = framesOf(plan('rig-by-rig', 2, [set('s0', 2), set('s1', 2)]));
    expect(frames.map(({ set: id, rig, pass }) => `${id}${rig}${pass}`).join(' ')).toBe(
      's0A1 s1A1 s0B1 s1B1 s0B2 s1B2 s0A2 s1A2',
    );
    expect(swapCount(frames)).toBe(2);
  });

  it('passes over a rig that cannot be set in one of them', () => {
    const frames = orderFrames(byDefault('forward', 3, 2), (id, rig) =>
      id === 's0' && rig === 'B' ? null : dialled,
    );
    expect(letters(frames)).toBe('A C C B A');
  });
});

describe('capped darks', () => {
  const withDarks = [
    set('light', 2, { repeats: 2 }),
    set('dark', 9, { kind: 'capped-dark', repeats: 3 }),
    set('next', 2),
  ];
  const names = (frames: readonly PlannedFrame[]) =>
    frames.map(({ set: id, rig, pass }) => `${id}${rig}${pass}`).join(' ');

  it('follow straight after each turn of their set, as often as they repeat', () => {
    const frames = framesOf(plan('mirror', 2, withDarks));
    expect(names(frames)).toBe(
      [
        'lightA1 lightA1 darkA1 darkA1 darkA1 lightB1 lightB1 darkB1 darkB1 darkB1',
        'lightB2 lightB2 darkB2 darkB2 darkB2 lightA2 lightA2 darkA2 darkA2 darkA2',
        'nextA1 nextB1 nextB2 nextA2',
      ].join(' '),
    );
  });

  it('are shot side by side as their lights are', () => {
    const frames = framesOf(plan('side-by-side', 2, [set('light', 1), withDarks[1] as PlanSet]));
    expect(names(frames)).toBe('lightA1 lightB1 darkA1 darkB1 darkA1 darkB1 darkA1 darkB1');
  });

  it('have no frames before every other set', () => {
    const first = set('dark', 1, { kind: 'capped-dark' });
    expect(names(framesOf(plan('forward', 2, [first, set('light', 1)])))).toBe('lightA1 lightB1');
  });
});

describe('any plan', () => {
  const anySets = fc.array(
    fc.record({
      kind: fc.constantFrom<SetKind>('light', 'capped-dark', 'flat'),
      passes: fc.integer({ min: 1, max: 5 }),
      repeats: fc.integer({ min: 1, max: 3 }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  const anyPlan = fc
    .tuple(fc.constantFrom(...ORDERS), fc.integer({ min: 1, max: 4 }), anySets)
    .map(([order, rigs, picks]) =>
      plan(
        order,
        rigs,
        picks.map(({ kind, passes, repeats }, index) =>
          set(`s${index}`, passes, { kind, repeats }),
        ),
      ),
    );

  /** The passes of each set; a capped dark has those of the set it follows. */
  const expectedKeys = ({ sets, rigs }: Plan): string[] => {
    let passes = 0;
    return sets.flatMap(({ id, kind, passes: own, repeats }) => {
      if (kind !== 'capped-dark') passes = own;
      return rigs.flatMap((rig) =>
        Array.from({ length: passes * repeats }, (_, index) => {
          const [pass, repeat] = [Math.floor(index / repeats) + 1, (index % repeats) + 1];
          return `${id}/${rig}/${pass}/${repeat}`;
        }),
      );
    });
  };

  it('makes every planned frame exactly once', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        const keys = framesOf(any).map(({ key }) => key as string);
        expect(keys.toSorted()).toEqual(expectedKeys(any).toSorted());
      }),
    );
  });

  it('counts a visit up with each change of rig and only then', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        const frames = framesOf(any);
        let visit = 1;
        for (const [index, frame] of frames.entries()) {
          const before = frames[index - 1];
          if (any.order !== 'side-by-side' && before && before.rig !== frame.rig) visit += 1;
          expect(frame.visit).toBe(visit);
        }
      }),
    );
  });

  it('starts each set with the rig that is mounted', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        fc.pre(any.order !== 'side-by-side' && any.order !== 'rig-by-rig');
        const frames = framesOf(any);
        for (const { id, kind } of any.sets) {
          const start = frames.findIndex((frame) => frame.set === id);
          const before = frames[start - 1];
          if (kind !== 'capped-dark' && before) expect(frames[start]?.rig).toBe(before.rig);
        }
      }),
    );
  });

  it('shoots a capped dark with the rig, pass and settings of the frame before it', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        fc.pre(any.order !== 'side-by-side');
        const darks = new Set(
          any.sets.filter(({ kind }) => kind === 'capped-dark').map(({ id }) => id),
        );
        const frames = framesOf(any);
        for (const [index, frame] of frames.entries()) {
          if (!darks.has(frame.set)) continue;
          expect(frames[index - 1]).toMatchObject({
            rig: frame.rig,
            pass: frame.pass,
            visit: frame.visit,
            settings: frame.settings,
          });
        }
      }),
    );
  });

  it('cancels a steady drift in every set shot in a mirror, whichever rig it starts with', () => {
    fc.assert(
      fc.property(anyPlan, (any) => {
        fc.pre(any.order === 'mirror' || any.order === 'double-mirror');
        const frames = framesOf(any);
        for (const { id, kind, passes } of any.sets) {
          if (kind === 'capped-dark' || passes % 2 === 1) continue;
          const own = frames.filter((frame) => frame.set === id);
          const meanPlace = (rig: RigId) => {
            const places = own.flatMap((frame, place) => (frame.rig === rig ? [place] : []));
            return places.reduce((sum, place) => sum + place, 0) / places.length;
          };
          const [first, ...others] = any.rigs.map(meanPlace);
          for (const other of others) expect(other).toBeCloseTo(first ?? Number.NaN, 9);
        }
      }),
    );
  });
});
