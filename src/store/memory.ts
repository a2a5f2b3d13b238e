import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { OutingId, WriterId } from '../outing/ids.ts';
import type { Plan } from '../plan/plan.ts';
import type { Arrival, Kept, OutingSummary, Store, StoreOptions } from './contract.ts';
import { StoreFailure, toFault } from './fault.ts';
import { kept, keptGear } from './profiles.ts';
import { asThings, onlyEvents } from './restore.ts';
import type { KeptGear } from './schema.ts';
import { trustedGear, trustedPlans, trustedSites } from './trusted.ts';
import { missingEvents, missingThings, missingTombstones } from './union.ts';

/**
 * The store's twin without a disk: what it takes is gone with the page. For tests
 * of what stands above the store; it passes the same contract. It holds nothing older than itself.
 */
export function memoryStore({ makeId, reader }: Omit<StoreOptions, 'older'>): Store {
  let journal: readonly OutingEvent[] = [];
  const gear = new Map<string, KeptGear>();
  const plans = new Map<string, Kept<Plan>>();
  const sites = new Map<string, Kept<Site>>();
  const settings = new Map<string, unknown>();
  const buried = new Set<string>();
  let writer: WriterId | null = null;
  let closed = false;

  /** Answers later, as a database does, and never shares an object with the caller. */
  const answer = async <T>(work: () => T): Promise<T> => {
    await Promise.resolve();
    if (closed) throw new StoreFailure('closed', 'the store was closed');
    try {
      return structuredClone(work());
    } catch (cause) {
      throw toFault(cause);
    }
  };

  const restore = (arrival: Arrival): ReturnType<Store['restore']> =>
    answer(() => {
      const { events, gear: things, tombstones, ...desk } = structuredClone(arrival);
      const newEvents = missingEvents(journal, events);
      const missingGear = missingThings(gear, things, buried);
      const missingPlans = missingThings(plans, asThings(desk.plans), buried);
      const missingSites = missingThings(sites, asThings(desk.sites), buried);
      const missing = missingTombstones(
        (id) => [buried, gear, plans, sites].some((here) => here.has(id)),
        tombstones,
      );
      journal = [...journal, ...newEvents];
      for (const thing of missingGear) gear.set(thing.value.id, keptGear(thing, false));
      for (const { value } of missingPlans) plans.set(value.id, kept(value, false));
      for (const { value } of missingSites) sites.set(value.id, kept(value, false));
      for (const id of missing) buried.add(id);
      return {
        events: newEvents.length,
        gear: missingGear.length,
        plans: missingPlans.length,
        sites: missingSites.length,
        tombstones: missing.length,
      };
    });
  const merge = async (events: readonly OutingEvent[]): Promise<number> =>
    (await restore(onlyEvents(events))).events;

  return {
    writer: () =>
      answer(() => {
        writer ??= makeId() as WriterId;
        return writer;
      }),
    append: async (events) => {
      await merge(events);
    },
    events: (outing, most) =>
      answer(() => {
        const events = journal.filter((event) => event.outing === outing).sort(byKey);
        return reader.inOrder(events.slice(0, most));
      }),
    outings: () => answer(() => summaries(journal)),
    merge,
    restore,
    gear: () => answer(() => trustedGear(byId(gear))),
    putGear: (things) =>
      answer(() => {
        for (const { thing, deleted } of structuredClone(things))
          gear.set(thing.value.id, keptGear(thing, deleted));
      }),
    plans: () => answer(() => trustedPlans(byId(plans))),
    putPlans: (changes) =>
      answer(() => {
        for (const { plan, deleted } of structuredClone(changes))
          plans.set(plan.id, kept(plan, deleted));
      }),
    sites: () => answer(() => trustedSites(byId(sites))),
    putSites: (changes) =>
      answer(() => {
        for (const { site, deleted } of structuredClone(changes))
          sites.set(site.id, kept(site, deleted));
      }),
    tombstones: () =>
      answer(
        () =>
          new Set([
            ...buried,
            ...[...gear.values(), ...plans.values(), ...sites.values()]
              .filter((record) => record.deleted)
              .map((record) => record.id),
          ]),
      ),
    setting: (key) => answer(() => settings.get(key)),
    putSetting: (key, value) =>
      answer(() => {
        settings.set(key, structuredClone(value));
      }),
    onClosed: () => () => {
      // Nobody can close it from outside.
    },
    close: () => {
      closed = true;
    },
  };
}

/** As the database keeps the events of one outing. */
const byKey = (a: OutingEvent, b: OutingEvent): number =>
  a.writer === b.writer ? a.seq - b.seq : a.writer < b.writer ? -1 : 1;

/** As the database would give them. */
const byId = <T>(records: ReadonlyMap<string, T>): readonly T[] =>
  [...records].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, record]) => record);

function summaries(journal: readonly OutingEvent[]): readonly OutingSummary[] {
  const spans = new Map<OutingId, OutingSummary>();
  for (const { outing, wallMs } of journal) {
    const known = spans.get(outing) ?? {
      outing,
      events: 0,
      firstWallMs: wallMs,
      lastWallMs: wallMs,
    };
    spans.set(outing, {
      outing,
      events: known.events + 1,
      firstWallMs: Math.min(known.firstWallMs, wallMs),
      lastWallMs: Math.max(known.lastWallMs, wallMs),
    });
  }
  return byId(spans);
}
