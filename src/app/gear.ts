import type { Body, MeasuredHeat } from '../gear/body.ts';
import { newBody, newLens } from '../gear/defaults.ts';
import {
  type Change,
  copyOfBody,
  copyOfLens,
  deletionOf,
  letterFor,
  signFor,
  type Thing,
  undoOf,
} from '../gear/edit.ts';
import type { BodyId, LensId, RigId } from '../gear/ids.ts';
import type { Lens } from '../gear/lens.ts';
import { readBody, readLens, readRig } from '../gear/parse.ts';
import { type Fault, isFault, type Reader } from '../gear/read.ts';
import type { Offset, Rig } from '../gear/rig.ts';
import { madeOnce } from './desks.ts';
import type { KeptGear } from './keptGear.ts';
import type { Deed, Undo } from './undo.ts';

/** What must be known to make a body; the rest has stated defaults. */
type NewBody = Omit<Parameters<typeof newBody>[1], 'sign'>;
type NewLens = Parameters<typeof newLens>[1];

/**
 * The gear and every act on it. An act shows at once and is written behind it; what cannot be
 * written is kept and said (`Saving`). Nothing absurd gets in: an act that breaks a rule changes
 * nothing and returns the fault.
 */
export interface GearDesk {
  addBody(own: NewBody): BodyId | Fault;
  changeBody(id: BodyId, change: Partial<Body>): Fault | null;
  copyBody(id: BodyId, name: string): BodyId | Fault;
  deleteBody(id: BodyId): void;
  /** Back to the stated range of one figure of how a body warms. */
  forgetHeat(id: BodyId, figure: keyof MeasuredHeat): void;

  addLens(own: NewLens): LensId | Fault;
  changeLens(id: LensId, change: Partial<Lens>): Fault | null;
  copyLens(id: LensId, name: string): LensId | Fault;
  deleteLens(id: LensId): void;

  addRig(bodyId: BodyId, lensId: LensId): RigId | Fault;
  changeRig(id: RigId, change: Partial<Omit<Rig, 'offsets'>>): Fault | null;
  deleteRig(id: RigId): void;

  addOffset(id: RigId, offset: Offset): Fault | null;
  deleteOffset(id: RigId, index: number): void;
}

/** What the desk needs of the app. */
export interface GearWorld {
  readonly gear: Pick<KeptGear, 'gear' | 'apply'>;
  readonly undo: Pick<Undo, 'offer'>;
  readonly newId: () => string;
}

export function createGearDesk({ gear: { gear, apply }, undo, newId }: GearWorld): GearDesk {
  /** Parses before it puts. */
  const put = <T extends Thing['value']>(
    reader: Reader<T>,
    value: T,
    thing: (value: T) => Thing,
  ): Fault | T['id'] => {
    const read = reader(value);
    if (isFault(read)) return read;
    apply([{ thing: thing(read), deleted: false }]);
    return read.id;
  };
  const asFault = (result: Fault | string): Fault | null => (isFault(result) ? result : null);

  const putBody = (body: Body) => put(readBody, body, (value) => ({ kind: 'body', value }));
  const putLens = (lens: Lens) => put(readLens, lens, (value) => ({ kind: 'lens', value }));
  const putRig = (rig: Rig) => put(readRig, rig, (value) => ({ kind: 'rig', value }));

  /** @throws RangeError if the screen shows a thing that is not there. */
  const find = <T extends { readonly id: string }>(things: readonly T[], id: T['id']): T => {
    const thing = things.find((candidate) => candidate.id === id);
    if (thing === undefined) throw new RangeError(`no such thing in the gear: ${id}`);
    return thing;
  };
  const bodyOf = (id: BodyId) => find(gear.peek().bodies, id);
  const lensOf = (id: LensId) => find(gear.peek().lenses, id);
  const rigOf = (id: RigId) => find(gear.peek().rigs, id);

  const remove = (thing: Thing, deed: Deed) => {
    const before = gear.peek();
    const changes = deletionOf(before, thing);
    apply(changes);
    undo.offer(deed, () => apply(undoOf(before, changes)));
  };

  /** A thing that has lost a part of it. */
  const removeFrom = (thing: Thing, part: 'offset' | 'heat') => {
    const before = gear.peek();
    const changes: Change[] = [{ thing, deleted: false }];
    apply(changes);
    undo.offer({ act: 'deleted', thing: part, name: '' }, () => apply(undoOf(before, changes)));
  };

  return {
    addBody: (own) => putBody(newBody(newId() as BodyId, { ...own, sign: signFor(gear.peek()) })),
    changeBody: (id, change) => asFault(putBody({ ...bodyOf(id), ...change })),
    copyBody: (id, name) => putBody(copyOfBody(gear.peek(), bodyOf(id), newId() as BodyId, name)),
    deleteBody(id) {
      const value = bodyOf(id);
      remove({ kind: 'body', value }, { act: 'deleted', thing: 'body', name: value.name });
    },
    forgetHeat(id, figure) {
      const body = bodyOf(id);
      const value = { ...body, heat: { ...body.heat, [figure]: null } };
      removeFrom({ kind: 'body', value }, 'heat');
    },

    addLens: (own) => putLens(newLens(newId() as LensId, own)),
    changeLens: (id, change) => asFault(putLens({ ...lensOf(id), ...change })),
    copyLens: (id, name) => putLens(copyOfLens(lensOf(id), newId() as LensId, name)),
    deleteLens(id) {
      const value = lensOf(id);
      remove({ kind: 'lens', value }, { act: 'deleted', thing: 'lens', name: value.name });
    },

    addRig(bodyId, lensId) {
      const body = bodyOf(bodyId);
      const rig: Rig = {
        id: newId() as RigId,
        letter: letterFor(gear.peek(), body.sign),
        bodyId,
        lensId,
        offsets: [],
        // A practice rig is only what came with the practice outing.
        invented: false,
      };
      return putRig(rig);
    },
    changeRig: (id, change) => asFault(putRig({ ...rigOf(id), ...change })),
    deleteRig(id) {
      const value = rigOf(id);
      remove({ kind: 'rig', value }, { act: 'deleted', thing: 'rig', name: value.letter });
    },

    addOffset(id, offset) {
      const rig = rigOf(id);
      return asFault(putRig({ ...rig, offsets: [...rig.offsets, offset] }));
    },
    deleteOffset(id, index) {
      const rig = rigOf(id);
      const value = { ...rig, offsets: rig.offsets.filter((_, at) => at !== index) };
      removeFrom({ kind: 'rig', value }, 'offset');
    },
  };
}

/** The one desk of an app. */
export const gearDesk = madeOnce(createGearDesk);
