import type { Change } from './edit.ts';
import type { Gear } from './rig.ts';

const without = <T extends { readonly id: string }>(things: readonly T[], gone: T): readonly T[] =>
  things.filter((thing) => thing.id !== gone.id);

/** A replaced thing keeps its place, a new one stands last. */
const including = <T extends { readonly id: string }>(
  things: readonly T[],
  put: T,
): readonly T[] =>
  things.some((thing) => thing.id === put.id)
    ? things.map((thing) => (thing.id === put.id ? put : thing))
    : [...things, put];

function changed(gear: Gear, { thing, deleted }: Change): Gear {
  const one = deleted ? without : including;
  switch (thing.kind) {
    case 'body':
      return { ...gear, bodies: one(gear.bodies, thing.value) };
    case 'lens':
      return { ...gear, lenses: one(gear.lenses, thing.value) };
    case 'rig':
      return { ...gear, rigs: one(gear.rigs, thing.value) };
  }
}

/** The gear after some changes, in their order. */
export const applyChanges = (gear: Gear, changes: readonly Change[]): Gear =>
  changes.reduce(changed, gear);
