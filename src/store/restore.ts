import type { Arrival, EventReader, Store } from './contract.ts';
import { kept, keptGear } from './profiles.ts';
import { type Database, ofOuting } from './schema.ts';
import { writeStrictly } from './transaction.ts';
import { trustedEvent } from './trusted.ts';
import { missingEvents, missingThings, missingTombstones } from './union.ts';

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
  return writeStrictly(
    db,
    ['events', 'gear', 'plans', 'sites', 'tombstones'],
    async (transaction, requests) => {
      const journal = transaction.objectStore('events');
      const gear = transaction.objectStore('gear');
      const plans = transaction.objectStore('plans');
      const sites = transaction.objectStore('sites');
      const tombstones = transaction.objectStore('tombstones');
      const outings = [...new Set(arrival.events.map((event) => event.outing))];
      const [journals, storedGear, storedPlans, storedSites, storedTombstones] = await Promise.all([
        Promise.all(outings.map((outing) => journal.getAll(ofOuting(outing)))),
        gear.getAll(),
        plans.getAll(),
        sites.getAll(),
        tombstones.getAllKeys(),
      ]);
      const stored = journals.flat().map((event) => trustedEvent(event, reader));
      const events = missingEvents(stored, arrival.events);
      const buried = new Set(storedTombstones);
      const gearHere = byId(storedGear);
      const plansHere = byId(storedPlans);
      const sitesHere = byId(storedSites);
      const newGear = missingThings(gearHere, arrival.gear, buried);
      const newPlans = missingThings(plansHere, asThings(arrival.plans), buried);
      const newSites = missingThings(sitesHere, asThings(arrival.sites), buried);
      const isKnown = (id: string): boolean =>
        buried.has(id) || [gearHere, plansHere, sitesHere].some((here) => here.has(id));
      const newTombstones = missingTombstones(isKnown, arrival.tombstones);
      for (const event of events) requests.push(journal.add(event));
      for (const thing of newGear) requests.push(gear.add(keptGear(thing, false)));
      for (const { value } of newPlans) requests.push(plans.add(kept(value, false)));
      for (const { value } of newSites) requests.push(sites.add(kept(value, false)));
      for (const id of newTombstones) requests.push(tombstones.add({ id }));
      return {
        events: events.length,
        gear: newGear.length,
        plans: newPlans.length,
        sites: newSites.length,
        tombstones: newTombstones.length,
      };
    },
  );
}

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> =>
  new Map(records.map((record) => [record.id, record]));

/** As a thing of gear comes: beside its kind. */
export const asThings = <T>(values: readonly T[]): { readonly value: T }[] =>
  values.map((value) => ({ value }));

/** What brings in events alone. */
export const onlyEvents = (events: Arrival['events']): Arrival => ({
  events,
  gear: [],
  plans: [],
  sites: [],
  tombstones: [],
});
