import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { GearThing, Kept, OlderShapes, StoredEvent } from './contract.ts';
import { journalGearAndPlans } from './migrations/001-journal-gear-and-plans.ts';
import { sites } from './migrations/002-sites.ts';
import { heatAndOrder } from './migrations/003-heat-and-order.ts';
import { tombstones } from './migrations/004-tombstones.ts';

/** A gear thing with its tombstone mark. */
export interface KeptGear extends Kept<unknown> {
  readonly kind: GearThing['kind'];
}

/**
 * The database as the latest migration leaves it. Stores and indexes are only
 * ever added: older copies of the app and of its data come back.
 */
export interface Schema extends DBSchema {
  /** The journal. One record is one event; nothing is kept beside it. */
  events: {
    key: [outing: string, writer: string, seq: number];
    value: StoredEvent;
    indexes: { 'by-id': string; 'by-time': [outing: string, wallMs: number] };
  };
  gear: { key: string; value: KeptGear };
  plans: { key: string; value: Kept<unknown> };
  sites: { key: string; value: Kept<unknown> };
  /** What files have said of things that were never here; a deleted thing is its own tombstone. */
  tombstones: { key: string; value: { readonly id: string } };
  settings: { key: string; value: { readonly key: string; readonly value: unknown } };
  /** One record: who this installation is. */
  installation: { key: string; value: { readonly key: 'writer'; readonly id: string } };
}

export type Database = IDBPDatabase<Schema>;
export type StoreName = StoreNames<Schema>;
export type Upgrade = IDBPTransaction<Schema, StoreName[], 'versionchange'>;

export const DATABASE_NAME = 'evenfall';

/** Number n of the list leads from version n - 1 to n. A shipped one is never edited. */
export const MIGRATIONS: readonly ((
  db: Database,
  upgrade: Upgrade,
  older: OlderShapes,
) => void | Promise<void>)[] = [
  journalGearAndPlans,
  sites,
  (_db, upgrade, older) => heatAndOrder(upgrade, older),
  tombstones,
];

export const DATABASE_VERSION = MIGRATIONS.length;

/**
 * The keys of one outing's events, in 'events' and in 'by-time'. Arrays sort after
 * strings and numbers, so an empty one ends every key that begins with the outing.
 */
export const ofOuting = (outing: string): IDBKeyRange => IDBKeyRange.bound([outing], [outing, []]);
