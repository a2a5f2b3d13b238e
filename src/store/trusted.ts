import type { Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { Plan } from '../plan/plan.ts';
import type { EventReader, Kept, StoredEvent } from './contract.ts';
import { StoreFailure } from './fault.ts';
import type { KeptGear } from './schema.ts';

/*
 * The one place where what lies in the database gets its type back without being
 * parsed. It may, because only this store writes there, everything that reaches
 * it from outside was parsed before, and older events pass through the reader.
 */

/** @throws StoreFailure 'newer' for an event that a newer version of the app wrote. */
export function trustedEvent(stored: StoredEvent, reader: EventReader): OutingEvent {
  if (stored.v > reader.version)
    throw new StoreFailure('newer', `event ${stored.id} has version ${stored.v}`);
  return stored.v < reader.version ? reader.upcast(stored) : (stored as OutingEvent);
}

export function trustedGear(kept: readonly KeptGear[]): Gear {
  const present = kept.filter((record) => !record.deleted);
  const valuesOf = (kind: KeptGear['kind']): readonly unknown[] =>
    present.filter((record) => record.kind === kind).map((record) => record.value);
  return {
    bodies: valuesOf('body') as Gear['bodies'],
    lenses: valuesOf('lens') as Gear['lenses'],
    rigs: valuesOf('rig') as Gear['rigs'],
  };
}

export const trustedPlans = (kept: readonly Kept<unknown>[]): readonly Plan[] =>
  kept.filter((record) => !record.deleted).map((record) => record.value as Plan);

export const trustedSites = (kept: readonly Kept<unknown>[]): readonly Site[] =>
  kept.filter((record) => !record.deleted).map((record) => record.value as Site);
