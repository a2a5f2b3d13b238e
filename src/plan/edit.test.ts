import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { addSet, changeOrder, changeRigs, changeSet, copySet, deleteSet, moveSet } from './edit.ts';
import type { SetId } from './ids.ts';
import type { Plan } from './plan.ts';
import { practicePlan } from './practicePlan.ts';

const PRACTICE_PLAN = practicePlan();

const ids = ({ sets }: Plan): readonly string[] => sets.map(({ id }) => id.at(-1) ?? '');
const id = (index: number): SetId => PRACTICE_PLAN.sets[index]?.id as SetId;
const frozen = structuredClone(PRACTICE_PLAN);

describe('editing the shot list', () => {
  const [first] = PRACTICE_PLAN.sets;
  if (!first) throw new Error('a set');

  it('adds at the end or at a place', () => {
    const added = { ...first, id: 'x9' as SetId };
    expect(ids(addSet(PRACTICE_PLAN, added))).toEqual(['1', '2', '3', '4', '9']);
    expect(ids(addSet(PRACTICE_PLAN, added, 1))).toEqual(['1', '9', '2', '3', '4']);
  });

  it('copies to straight after the original', () => {
    const copied = copySet(PRACTICE_PLAN, id(1), 'x9' as SetId);
    expect(ids(copied)).toEqual(['1', '2', '9', '3', '4']);
    expect(copied.sets[2]).toEqual({ ...PRACTICE_PLAN.sets[1], id: 'x9' });
  });

  it('moves to a place counted without the set itself', () => {
    expect(ids(moveSet(PRACTICE_PLAN, id(0), 2))).toEqual(['2', '3', '1', '4']);
    expect(ids(moveSet(PRACTICE_PLAN, id(3), 0))).toEqual(['4', '1', '2', '3']);
    expect(ids(moveSet(PRACTICE_PLAN, id(1), -5))).toEqual(['2', '1', '3', '4']);
    expect(ids(moveSet(PRACTICE_PLAN, id(1), 99))).toEqual(['1', '3', '4', '2']);
  });

  it('keeps every set in any move', () => {
    fc.assert(
      fc.property(fc.nat({ max: 3 }), fc.integer({ min: -2, max: 6 }), (from, to) => {
        const moved = moveSet(PRACTICE_PLAN, id(from), to);
        expect(ids(moved).toSorted()).toEqual(['1', '2', '3', '4']);
        expect(moved.sets[Math.min(Math.max(to, 0), 3)]?.id).toBe(id(from));
      }),
    );
  });

  it('deletes and changes one set', () => {
    expect(ids(deleteSet(PRACTICE_PLAN, id(1)))).toEqual(['1', '3', '4']);
    const changed = changeSet(PRACTICE_PLAN, id(2), (set) => ({ ...set, repeats: 5 }));
    expect(changed.sets.map(({ repeats }) => repeats)).toEqual([1, 1, 5, 1]);
  });

  it('leaves a plan as it is where the set is not there', () => {
    const gone = 'gone' as SetId;
    expect(copySet(PRACTICE_PLAN, gone, 'x9' as SetId)).toEqual(PRACTICE_PLAN);
    expect(moveSet(PRACTICE_PLAN, gone, 0)).toEqual(PRACTICE_PLAN);
    expect(deleteSet(PRACTICE_PLAN, gone)).toEqual(PRACTICE_PLAN);
  });

  it('gives usual passes to an order’s sets and keeps a chosen number', () => {
    const chosen = changeSet(PRACTICE_PLAN, id(0), (set) => ({ ...set, passes: 3 }));
    const changed = changeOrder(chosen, 'double-mirror');
    expect(changed.order).toBe('double-mirror');
    expect(changed.sets.map(({ passes }) => passes)).toEqual([3, 4, 4, 4]);
  });

  it('hands the reference to the first rig when it is taken out', () => {
    const [a, b] = PRACTICE_PLAN.rigs as [RigId, RigId];
    const references = (plan: Plan) => new Set(plan.sets.map(({ reference }) => reference));
    expect(references(changeRigs(PRACTICE_PLAN, [b, a]))).toEqual(new Set([a]));
    expect(references(changeRigs(PRACTICE_PLAN, [b]))).toEqual(new Set([b]));
    expect(references(changeRigs(PRACTICE_PLAN, []))).toEqual(new Set([a]));
  });

  it('never touches the plan it was given, so that undo is keeping it', () => {
    expect(PRACTICE_PLAN).toEqual(frozen);
  });
});
