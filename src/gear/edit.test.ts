import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyGear } from '../../test/arbitraries/gear.ts';
import { applyChanges } from './applyChanges.ts';
import type { Body } from './body.ts';
import { copyOfBody, copyOfRig, deletionOf, letterFor, signFor, thingsOf, undoOf } from './edit.ts';
import type { BodyId, RigId } from './ids.ts';
import { readGear } from './parse.ts';
import { PRACTICE_GEAR } from './practice.ts';
import type { Gear, Rig } from './rig.ts';

const [alder] = PRACTICE_GEAR.bodies as readonly [Body];
const [rigA] = PRACTICE_GEAR.rigs as readonly [Rig];

/** The same things, whatever their order. */
const sorted = (gear: Gear) =>
  thingsOf(gear).toSorted((a, b) => (a.value.id < b.value.id ? -1 : 1));

describe('changes to gear', () => {
  it('take the rigs along when a body goes, and bring all back in one undo', () => {
    const changes = deletionOf(PRACTICE_GEAR, { kind: 'body', value: alder });
    const after = applyChanges(PRACTICE_GEAR, changes);
    expect(after.bodies.map(({ name }) => name)).toEqual(['Birch 36', 'Cedar 17']);
    expect(after.rigs.map(({ letter }) => letter)).toEqual(['B', 'C']);
    expect(after.lenses).toHaveLength(3);
    const back = applyChanges(after, undoOf(PRACTICE_GEAR, changes));
    expect(sorted(back)).toEqual(sorted(PRACTICE_GEAR));
  });

  it('put back the older value of a replaced thing and remove an added one', () => {
    const renamed = { kind: 'body', value: { ...alder, name: 'Alder old' } } as const;
    const added = { kind: 'body', value: { ...alder, id: 'new' as BodyId } } as const;
    const changes = [renamed, added].map((thing) => ({ thing, deleted: false }));
    const after = applyChanges(PRACTICE_GEAR, changes);
    expect(after.bodies.map(({ name }) => name)).toEqual([
      'Alder old',
      'Birch 36',
      'Cedar 17',
      'Alder 44',
    ]);
    expect(applyChanges(after, undoOf(PRACTICE_GEAR, changes))).toEqual(PRACTICE_GEAR);
  });

  it('leave gear whole whatever is deleted, and undo to the same things', () => {
    const gearAndThing = anyGear.chain((gear) =>
      fc.constantFrom(...thingsOf(gear)).map((thing) => ({ gear, thing })),
    );
    fc.assert(
      fc.property(gearAndThing, ({ gear, thing }) => {
        const changes = deletionOf(gear, thing);
        const after = applyChanges(gear, changes);
        expect(readGear(after)).toEqual(after);
        expect(thingsOf(after).some(({ value }) => value.id === thing.value.id)).toBe(false);
        expect(sorted(applyChanges(after, undoOf(gear, changes)))).toEqual(sorted(gear));
      }),
    );
  });
});

describe('copies and letters', () => {
  it('make the copy of an invented body its owner’s own, under the next letter', () => {
    const copy = copyOfBody(PRACTICE_GEAR, alder, 'b9' as BodyId, 'Mine');
    expect(copy).toEqual({ ...alder, id: 'b9', name: 'Mine', sign: 'D', invented: false });
  });

  it('give the first free letter, and the preferred one again once all are taken', () => {
    expect(letterFor({ ...PRACTICE_GEAR, rigs: [] }, 'C')).toBe('C');
    expect(letterFor(PRACTICE_GEAR, 'A')).toBe('D');
    const four = { ...PRACTICE_GEAR, rigs: [...PRACTICE_GEAR.rigs, { ...rigA, letter: 'D' }] };
    expect(letterFor(four as Gear, 'B')).toBe('B');
    expect(copyOfRig(PRACTICE_GEAR, rigA, 'r9' as RigId)).toEqual({
      ...rigA,
      id: 'r9',
      letter: 'D',
    });
    expect(signFor({ ...PRACTICE_GEAR, bodies: [] })).toBe('A');
  });
});
