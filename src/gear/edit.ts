import type { Body } from './body.ts';
import type { BodyId, LensId, RigId } from './ids.ts';
import type { Lens } from './lens.ts';
import { LETTERS, type Letter } from './letter.ts';
import type { Gear, Rig } from './rig.ts';

/*
 * Changes to gear as values, so that one act can be stored in one transaction
 * and taken back in another.
 */

/** One stored thing of Gear. */
export type Thing =
  | { readonly kind: 'body'; readonly value: Body }
  | { readonly kind: 'lens'; readonly value: Lens }
  | { readonly kind: 'rig'; readonly value: Rig };

/** A thing put (added or replaced by its id) or deleted. */
export interface Change {
  readonly thing: Thing;
  readonly deleted: boolean;
}

/** Everything in gear, bodies and lenses before the rigs that need them. */
export const thingsOf = (gear: Gear): readonly Thing[] => [
  ...gear.bodies.map((value): Thing => ({ kind: 'body', value })),
  ...gear.lenses.map((value): Thing => ({ kind: 'lens', value })),
  ...gear.rigs.map((value): Thing => ({ kind: 'rig', value })),
];

/**
 * The changes that take `changes` back, seen from the gear before them: what was
 * deleted or replaced is put again, what was new is deleted. Order in the lists is
 * not part of it.
 */
export function undoOf(before: Gear, changes: readonly Change[]): readonly Change[] {
  const stood = thingsOf(before);
  return changes
    .map(({ thing }): Change => {
      const was = stood.find(
        ({ kind, value }) => kind === thing.kind && value.id === thing.value.id,
      );
      return was ? { thing: was, deleted: false } : { thing, deleted: true };
    })
    .reverse();
}

/** The rigs that need a body or a lens. */
export const rigsWith = (gear: Gear, part: BodyId | LensId): readonly Rig[] =>
  gear.rigs.filter((rig) => rig.bodyId === part || rig.lensId === part);

/**
 * The deletion of a thing. A body or lens takes the rigs that stand on it along,
 * first, in the same act: a rig without a part is nothing, and one undo brings
 * all of it back.
 */
export function deletionOf(gear: Gear, thing: Thing): readonly Change[] {
  const rigs = thing.kind === 'rig' ? [] : rigsWith(gear, thing.value.id);
  return [...rigs.map((value): Thing => ({ kind: 'rig', value })), thing].map((gone) => ({
    thing: gone,
    deleted: true,
  }));
}

/** A body under a new id and name. The copy of an invented body is its owner's own. */
export const copyOfBody = (gear: Gear, body: Body, id: BodyId, name: string): Body => ({
  ...body,
  id,
  name,
  sign: nextLetter(
    gear.bodies.map(({ sign }) => sign),
    body.sign,
  ),
  invented: false,
});

/** A lens under a new id and name. The copy of an invented lens is its owner's own. */
export const copyOfLens = (lens: Lens, id: LensId, name: string): Lens => ({
  ...lens,
  id,
  name,
  invented: false,
});

/** A rig of the same parts, with their offsets, under the next letter. */
export const copyOfRig = (gear: Gear, rig: Rig, id: RigId): Rig => ({
  ...rig,
  id,
  letter: letterFor(gear, rig.letter),
});

/**
 * The letter for one more: the preferred one if it is free, else the first free
 * one, else the preferred one again; then the shot list must not take both.
 */
function nextLetter(taken: readonly Letter[], preferred: Letter): Letter {
  if (!taken.includes(preferred)) return preferred;
  return LETTERS.find((letter) => !taken.includes(letter)) ?? preferred;
}

/** The letter of a new rig, by preference its body's. */
export const letterFor = (gear: Gear, preferred: Letter): Letter =>
  nextLetter(
    gear.rigs.map(({ letter }) => letter),
    preferred,
  );

/** The letter of a new body. */
export const signFor = (gear: Gear): Letter =>
  nextLetter(
    gear.bodies.map(({ sign }) => sign),
    LETTERS[0],
  );
