import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { openDB } from 'idb';
import { beforeEach, expect, it } from 'vitest';
import type { Body } from '../../src/gear/body.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { PRACTICE_SITE } from '../../src/light/practice.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { duration } from '../../src/science/units.ts';
import type { GearThing } from '../../src/store/contract.ts';
import { openStore } from '../../src/store/indexedDb.ts';
import { appendEvents } from '../../src/store/journal.ts';
import { kept, keptGear, writeGear, writePlans } from '../../src/store/profiles.ts';
import {
  DATABASE_NAME,
  DATABASE_VERSION,
  MIGRATIONS,
  type Schema,
} from '../../src/store/schema.ts';
import { readOrMakeWriter, writeSetting } from '../../src/store/settings.ts';
import { Evening, planOf, twoSets } from '../evenings/evening.ts';
import { reader, storeOptions } from './journals.ts';

/*
 * A database as an older version of the app left it, opened by this one. It is made by the
 * migrations up to that version and written by the functions that every version writes with.
 */

const evening = new Evening(twoSets()).setUp().shootAll();
const plan = planOf(twoSets());

/** The same as versions 1 and 2 had it: nothing of a body's heat, named orders only. */
const bodyThen = ({ heat: _, ...body }: Body): object => body;
function planThen({
  oneRigAtATime: _o,
  arranged: _a,
  locked: _l,
  swapWorth: _w,
  ...then
}: Plan): object {
  return {
    ...then,
    allowances: { swapS: 90, dialChangeS: 15, settleS: 5, writeS: 2 },
    rest: { on: true, factor: 1, offUpToS: 64, longestS: 600 },
    sets: then.sets.map(({ restBeforeS: _r, ...set }) => set),
  };
}
/** And as this version reads it. */
const planNow: Plan = {
  ...plan,
  allowances: { ...plan.allowances, swapS: duration(90), reframeS: duration(0) },
  rest: {
    kind: 'thumb',
    rule: { factor: 1, offUpToS: duration(64), longestS: duration(600) },
  },
};

const things: readonly GearThing[] = [
  ...PRACTICE_GEAR.bodies.map((value) => ({ kind: 'body', value }) as const),
  ...PRACTICE_GEAR.lenses.map((value) => ({ kind: 'lens', value }) as const),
  ...PRACTICE_GEAR.rigs.map((value) => ({ kind: 'rig', value }) as const),
];

async function leftBy(version: number): Promise<void> {
  const db = await openDB<Schema>(DATABASE_NAME, version, {
    upgrade(fresh, _from, _to, upgrade) {
      for (const migrate of MIGRATIONS.slice(0, version))
        void migrate(fresh, upgrade, storeOptions().older);
    },
  });
  await readOrMakeWriter(db, () => 'the-writer-of-then');
  await appendEvents(db, evening.events, reader);
  await writeGear(
    db,
    things.map((thing, index) =>
      keptGear(
        thing.kind === 'body' && version < 3
          ? { kind: 'body', value: bodyThen(thing.value) as Body }
          : thing,
        index === 0,
      ),
    ),
  );
  await writePlans(db, [kept((version < 3 ? planThen(plan) : planNow) as Plan, false)]);
  await writeSetting(db, 'preferences', { theme: 'night' });
  db.close();
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});

it.each(Array.from({ length: DATABASE_VERSION - 1 }, (_, before) => before + 1))(
  'a database of version %i keeps everything, and takes sites from now on',
  async (version) => {
    await leftBy(version);
    const store = await openStore(storeOptions());
    expect(await store.writer()).toBe('the-writer-of-then');
    expect(await store.events(evening.outing)).toEqual(evening.events);
    const { bodies, lenses, rigs } = await store.gear();
    expect(bodies).toEqual(expect.arrayContaining(PRACTICE_GEAR.bodies.slice(1)));
    expect(bodies).toHaveLength(PRACTICE_GEAR.bodies.length - 1);
    expect([lenses, rigs].map(({ length }) => length)).toEqual([
      PRACTICE_GEAR.lenses.length,
      PRACTICE_GEAR.rigs.length,
    ]);
    expect(await store.plans()).toEqual([planNow]);
    expect(await store.setting('preferences')).toEqual({ theme: 'night' });
    expect([...(await store.tombstones())]).toEqual([PRACTICE_GEAR.bodies[0]?.id]);
    expect(await store.sites()).toEqual([]);
    await store.putSites([{ site: PRACTICE_SITE, deleted: false }]);
    expect(await store.sites()).toEqual([PRACTICE_SITE]);
    store.close();
  },
);
