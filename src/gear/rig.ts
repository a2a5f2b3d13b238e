import type { Stops } from '../science/units.ts';
import type { Body } from './body.ts';
import type { BodyId, LensId, RigId } from './ids.ts';
import type { Lens } from './lens.ts';
import type { Letter } from './letter.ts';

/** What a rig really gives against its marks, found on an evenly lit wall. */
export interface Offset {
  /** The ISO it was found at; null = taken for every ISO. */
  readonly isoMark: string | null;
  /** Positive: the rig renders brighter than its marks say. */
  readonly stops: Stops;
  /** Calendar date, YYYY-MM-DD. */
  readonly date: string;
  /** How it was found, in the owner's words. */
  readonly how: string;
}

/** A body with the lens on it, as it stands on the tripod. */
export interface Rig {
  readonly id: RigId;
  readonly letter: Letter;
  readonly bodyId: BodyId;
  readonly lensId: LensId;
  readonly offsets: readonly Offset[];
  readonly invented: boolean;
}

/** Everything under Gear. */
export interface Gear {
  readonly bodies: readonly Body[];
  readonly lenses: readonly Lens[];
  readonly rigs: readonly Rig[];
}

/** A rig with its parts looked up. */
export interface Assembled {
  readonly rig: Rig;
  readonly body: Body;
  readonly lens: Lens;
}

/** The rig with its body and lens; null if a part is gone. */
export function assemble(gear: Gear, id: RigId): Assembled | null {
  const rig = gear.rigs.find((candidate) => candidate.id === id);
  const body = gear.bodies.find((candidate) => candidate.id === rig?.bodyId);
  const lens = gear.lenses.find((candidate) => candidate.id === rig?.lensId);
  return rig && body && lens ? { rig, body, lens } : null;
}
