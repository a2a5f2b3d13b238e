import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { arrange, deleteSet } from './edit.ts';
import type { SetId } from './ids.ts';
import { turnsOf } from './order.ts';
import type { TurnPlace } from './plan.ts';
import { practicePlan } from './practicePlan.ts';
import { preparePlan } from './prepare.ts';
import { comesBack, isOfAnotherList, moveTurn, sameTurns } from './turnMoves.ts';

const anyTurn = fc.record({
  set: fc.constantFrom('one', 'two', 'three') as fc.Arbitrary<SetId>,
  rig: fc.constantFrom('a', 'b', null) as fc.Arbitrary<RigId | null>,
});
const anyList = fc
  .array(anyTurn, { minLength: 2, maxLength: 12 })
  .chain((turns) =>
    fc.tuple(
      fc.constant(turns),
      fc.subarray(['one', 'two', 'three'] as SetId[]),
      fc.nat(turns.length - 1),
      fc.nat(turns.length - 1),
    ),
  );
const sorted = (turns: readonly TurnPlace[]) =>
  turns.map(({ set, rig }) => `${set}/${rig}`).toSorted();
/** 'a1' is rig a in set one. */
const turns = (...short: readonly string[]): readonly TurnPlace[] =>
  short.map((each) => ({ set: each.slice(1) as SetId, rig: each.slice(0, 1) as RigId }));

describe('moving a turn by hand', () => {
  it('leaves the turns of locked sets where they stand, and loses none', () => {
    let moves = 0;
    fc.assert(
      fc.property(anyList, ([list, locked, from, to]) => {
        const moved = moveTurn(list, locked, from, to);
        expect(sorted(moved)).toEqual(sorted(list));
        for (const [place, turn] of list.entries()) {
          if (locked.includes(turn.set)) expect(moved[place]).toBe(turn);
        }
        const own = list[from];
        if (own && locked.includes(own.set)) expect(moved).toEqual(list);
        // The others keep their order among themselves.
        const others = (of: readonly TurnPlace[]) => of.filter((turn) => turn !== own);
        const free = (of: readonly TurnPlace[]) =>
          others(of).filter(({ set }) => !locked.includes(set));
        expect(free(moved)).toEqual(free(list));
        if (moved.some((turn, place) => turn !== list[place])) moves += 1;
      }),
    );
    expect(moves).toBeGreaterThan(20);
  });

  it('is taking out and putting in where nothing is locked', () => {
    fc.assert(
      fc.property(anyList, ([list, , from, to]) => {
        const plain = [...list];
        plain.splice(to, 0, ...plain.splice(from, 1));
        expect(moveTurn(list, [], from, to)).toEqual(plain);
      }),
    );
  });

  it('steps over what is locked, and stops at the last free place', () => {
    const list = turns('a1', 'a2', 'b1', 'b2');
    expect(moveTurn(list, ['2' as SetId], 0, 1)).toEqual(turns('b1', 'a2', 'a1', 'b2'));
    expect(moveTurn(list, ['2' as SetId], 2, 1)).toEqual(turns('b1', 'a2', 'a1', 'b2'));
    expect(moveTurn(list, ['2' as SetId], 0, 3)).toEqual(turns('b1', 'a2', 'a1', 'b2'));
  });
});

describe('turns', () => {
  it('tell a rig that comes back from one that has its one time', () => {
    expect(comesBack(turns('a1', 'a2', 'b1', 'b2'))).toBe(false);
    expect(comesBack(turns('a1', 'b1', 'a2'))).toBe(true);
    expect(comesBack([])).toBe(false);
  });

  it('of an arrangement fit its list until a set or a pass comes or goes', () => {
    const plan = practicePlan();
    const framesOf = (of: typeof plan) => preparePlan(of, PRACTICE_GEAR).frames;
    expect(isOfAnotherList(plan, framesOf(plan))).toBe(false);
    const own = moveTurn(turnsOf(plan, framesOf(plan)), [], 0, 5);
    const arranged = arrange(plan, own);
    expect(sameTurns(turnsOf(arranged, framesOf(arranged)), own)).toBe(true);
    expect(isOfAnotherList(arranged, framesOf(arranged))).toBe(false);
    const [first] = plan.sets;
    if (!first) throw new Error('a set');
    const without = deleteSet(arranged, first.id);
    expect(isOfAnotherList(without, framesOf(without))).toBe(true);
    const more = {
      ...arranged,
      sets: arranged.sets.map((set) => (set === first ? { ...set, passes: 3 } : set)),
    };
    expect(isOfAnotherList(more, framesOf(more))).toBe(true);
    const kept = arrange(more, turnsOf(more, framesOf(more)));
    expect(isOfAnotherList(kept, framesOf(kept))).toBe(false);
  });
});
