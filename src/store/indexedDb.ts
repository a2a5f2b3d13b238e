import { Connection } from './connection.ts';
import type { Arrival, Store, StoreOptions } from './contract.ts';
import { appendEvents, readEvents, readOutings } from './journal.ts';
import {
  kept,
  keptGear,
  readGear,
  readPlans,
  readSites,
  readTombstones,
  writeGear,
  writePlans,
  writeSites,
} from './profiles.ts';
import { onlyEvents, restoreAll } from './restore.ts';
import { readOrMakeWriter, readSetting, writeSetting } from './settings.ts';
import { LIMIT_MS } from './time-limit.ts';
import { takingTurns } from './turns.ts';

/** What a large file may take more than one tap, for each event (our choice: slow flash, with room). */
const RESTORE_MS_PER_EVENT = 4;

/**
 * The store in the browser's database. Keep one for each page.
 *
 * @throws StoreFailure: 'blocked' (another window holds an older version open),
 *   'newer' (a newer version of the app wrote here), 'timeout', or 'closed' (there
 *   is no database to be had). Nothing is left behind; call again to try again.
 */
export async function openStore(options: StoreOptions): Promise<Store> {
  const { makeId, reader, older } = options;
  const connection = new Connection(older);
  try {
    await connection.open();
  } catch (fault) {
    connection.close();
    throw fault;
  }
  const inTurn = takingTurns();
  const restore = (arrival: Arrival): ReturnType<Store['restore']> =>
    inTurn(() =>
      connection.run(
        (db) => restoreAll(db, arrival, reader),
        LIMIT_MS + arrival.events.length * RESTORE_MS_PER_EVENT,
      ),
    );
  return {
    writer: () => connection.run((db) => readOrMakeWriter(db, makeId)),
    append: (events) => inTurn(() => connection.run((db) => appendEvents(db, events, reader))),
    events: (outing, most) => connection.run((db) => readEvents(db, outing, reader, most)),
    outings: () => connection.run(readOutings),
    merge: async (events) => (await restore(onlyEvents(events))).events,
    restore,
    gear: () => connection.run(readGear),
    putGear: (things) => {
      const records = things.map(({ thing, deleted }) => keptGear(thing, deleted));
      return inTurn(() => connection.run((db) => writeGear(db, records)));
    },
    plans: () => connection.run(readPlans),
    putPlans: (plans) => {
      const records = plans.map(({ plan, deleted }) => kept(plan, deleted));
      return inTurn(() => connection.run((db) => writePlans(db, records)));
    },
    sites: () => connection.run(readSites),
    putSites: (sites) => {
      const records = sites.map(({ site, deleted }) => kept(site, deleted));
      return inTurn(() => connection.run((db) => writeSites(db, records)));
    },
    tombstones: () => connection.run(readTombstones),
    setting: (key) => connection.run((db) => readSetting(db, key)),
    putSetting: (key, value) => inTurn(() => connection.run((db) => writeSetting(db, key, value))),
    onClosed: (listener) => connection.onClosed(listener),
    close: () => connection.close(),
  };
}
