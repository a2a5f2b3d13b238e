import type { Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { Plan } from '../plan/plan.ts';
import type { GearThing, Kept } from './contract.ts';
import type { Database, KeptGear } from './schema.ts';
import { writeStrictly } from './transaction.ts';
import { trustedGear, trustedPlans, trustedSites } from './trusted.ts';

/** A thing as it is stored. */
export const kept = <T extends { readonly id: string }>(value: T, deleted: boolean): Kept<T> => ({
  id: value.id,
  value,
  deleted,
});

/** A gear thing as it is stored. */
export const keptGear = ({ kind, value }: GearThing, deleted: boolean): KeptGear => ({
  ...kept(value, deleted),
  kind,
});

export const readGear = async (db: Database): Promise<Gear> => trustedGear(await db.getAll('gear'));

export const readPlans = async (db: Database): Promise<readonly Plan[]> =>
  trustedPlans(await db.getAll('plans'));

export const readSites = async (db: Database): Promise<readonly Site[]> =>
  trustedSites(await db.getAll('sites'));

export async function readTombstones(db: Database): Promise<ReadonlySet<string>> {
  const transaction = db.transaction(['gear', 'plans', 'sites', 'tombstones']);
  const [buried, ...records] = await Promise.all([
    transaction.objectStore('tombstones').getAllKeys(),
    transaction.objectStore('gear').getAll(),
    transaction.objectStore('plans').getAll(),
    transaction.objectStore('sites').getAll(),
  ]);
  const deleted = records.flat().filter((record) => record.deleted);
  return new Set([...buried, ...deleted.map(({ id }) => id)]);
}

export const writeGear = (db: Database, records: readonly KeptGear[]): Promise<void> =>
  writeStrictly(db, ['gear'], (transaction, requests) => {
    for (const record of records) requests.push(transaction.objectStore('gear').put(record));
  });

export const writePlans = (db: Database, records: readonly Kept<Plan>[]): Promise<void> =>
  writeStrictly(db, ['plans'], (transaction, requests) => {
    for (const record of records) requests.push(transaction.objectStore('plans').put(record));
  });

export const writeSites = (db: Database, records: readonly Kept<Site>[]): Promise<void> =>
  writeStrictly(db, ['sites'], (transaction, requests) => {
    for (const record of records) requests.push(transaction.objectStore('sites').put(record));
  });
