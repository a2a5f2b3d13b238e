import type { Arrival, EventReader, Store } from './contract.ts';
import { kept, keptGear } from './profiles.ts';
import { type Database, ofOuting } from './schema.ts';
import { writeStrictly } from './transaction.ts';
import { trustedEvent } from './trusted.ts';
import { missingEvents, missingThings } from './union.ts';

/**
 * The union of an arrival with what is stored, in one transaction. Safe to repeat.
 *
 * @throws StoreFailure or the platform's own exception.
 */
export function restoreAll(
  db: Database,
  arrival: Arrival,
  reader: EventReader,
): ReturnType<Store['restore']> {
  return writeStrictly(db, ['events', 'gear', 'plans', 'sites'], async (transaction, requests) => {
    const journal = transaction.objectStore('events');
    const gear = transaction.objectStore('gear');
    const plans = transaction.objectStore('plans');
    const sites = transaction.objectStore('sites');
    const outings = [...new Set(arrival.events.map((event) => event.outing))];
    const [journals, storedGear, storedPlans, storedSites] = await Promise.all([
      Promise.all(outings.map((outing) => journal.getAll(ofOuting(outing)))),
      gear.getAll(),
      plans.getAll(),
      sites.getAll(),
    ]);
    const stored = journals.flat().map((event) => trustedEvent(event, reader));
    const events = missingEvents(stored, arrival.events);
    const newGear = missingThings(byId(storedGear), arrival.gear);
    const newPlans = missingThings(
      byId(storedPlans),
      arrival.plans.map((value) => ({ value })),
    );
    const newSites = missingThings(
      byId(storedSites),
      arrival.sites.map((value) => ({ value })),
    );
    for (const event of events) requests.push(journal.add(event));
    for (const thing of newGear) requests.push(gear.add(keptGear(thing, false)));
    for (const { value } of newPlans) requests.push(plans.add(kept(value, false)));
    for (const { value } of newSites) requests.push(sites.add(kept(value, false)));
    return {
      events: events.length,
      gear: newGear.length,
      plans: newPlans.length,
      sites: newSites.length,
    };
  });
}

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> =>
  new Map(records.map((record) => [record.id, record]));
