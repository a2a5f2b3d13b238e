import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { type IDBPDatabase, openDB } from 'idb';
import { beforeEach, describe, expect, it } from 'vitest';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { storeOptions } from '../../test/contract/journals.ts';
import { Evening, planOf, twoSets } from '../../test/evenings/evening.ts';
import { browserShare } from '../device/share.ts';
import { readAnyFile } from '../exchange/anyFile.ts';
import { STORAGE_VERSION } from '../exchange/storageFile.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import { openStore } from '../store/indexedDb.ts';
import { DATABASE_NAME, DATABASE_VERSION } from '../store/schema.ts';
import { type Rescued, rescueStorage } from './rescue.ts';

const evening = new Evening(twoSets()).setUp().shootAll();
const plan = planOf(twoSets());
const files: File[] = [];

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  files.length = 0;
});

const rescue = (): Promise<Rescued> =>
  rescueStorage({
    share: browserShare({ navigator: {}, download: (file) => files.push(file) }),
    clock: new FakeClock(),
    version: 'one',
  });

/** The text of the file that a rescue makes. */
async function rescued(): Promise<string> {
  const made = await rescue();
  if (made.how !== 'ready') throw new Error(made.how);
  await made.offer?.give();
  const file = files.at(-1);
  expect(file?.name).toMatch(/^evenfall-storage-\d{4}-\d\d-\d\d\.json$/);
  return (await file?.text()) ?? '';
}

/** A used phone: gear of which one body was deleted, a plan, a site, an evening. */
async function use(): Promise<void> {
  const store = await openStore(storeOptions());
  await store.append(evening.events);
  const { bodies, lenses, rigs } = PRACTICE_GEAR;
  await store.putGear([
    ...bodies.map((value, at) => ({ thing: { kind: 'body' as const, value }, deleted: at === 2 })),
    ...lenses.map((value) => ({ thing: { kind: 'lens' as const, value }, deleted: false })),
    ...rigs
      .slice(0, 2)
      .map((value) => ({ thing: { kind: 'rig' as const, value }, deleted: false })),
  ]);
  await store.putPlans([{ plan, deleted: false }]);
  await store.putSites([{ site: PRACTICE_SITE, deleted: false }]);
  await store.restore({ events: [], gear: [], plans: [], sites: [], tombstones: ['gone'] });
  store.close();
}

/** Every record of every store. */
async function records(db: IDBPDatabase): Promise<unknown> {
  const names = [...db.objectStoreNames];
  return Promise.all(names.map(async (name) => [name, await db.getAll(name)]));
}

describe('a storage that a newer version wrote', () => {
  it('is refused with its kind and left as it is, and comes out whole as a file', async () => {
    await use();
    const newer = await openDB(DATABASE_NAME, DATABASE_VERSION + 3, {
      upgrade: (db) => void db.createObjectStore('tomorrow', { keyPath: 'id' }),
    });
    await newer.put('tomorrow', { id: 'x', says: 'something unknown' });
    const before = await records(newer);
    newer.close();

    await expect(openStore(storeOptions())).rejects.toMatchObject({ kind: 'newer' });
    const file = JSON.parse(await rescued());
    expect(file).toMatchObject({ format: 'evenfall-storage', version: DATABASE_VERSION + 3 });
    expect(file.stores.tomorrow).toEqual([{ id: 'x', says: 'something unknown' }]);
    expect(file.stores.events).toEqual(
      [...evening.events].sort((a, b) => (a.writer < b.writer ? -1 : a.seq - b.seq)),
    );

    const after = await openDB(DATABASE_NAME);
    expect(after.version).toBe(DATABASE_VERSION + 3);
    expect(await records(after)).toEqual(before);
    after.close();
    // This version does not pretend to understand it either.
    expect(readAnyFile(JSON.stringify(file))).toMatchObject({ rule: 'file-newer' });
  });
});

describe('a storage of this version', () => {
  it('that cannot be opened for another reason comes out, and can be read back', async () => {
    await use();
    const read = readAnyFile(await rescued());
    if (isFault(read)) throw new Error(`${read.rule} at ${read.path}`);
    expect(read.content.events).toEqual(evening.events);
    expect(read.content.plans).toEqual([plan]);
    expect(read.content.sites).toEqual([PRACTICE_SITE]);
    expect(read.content.gear.bodies).toHaveLength(PRACTICE_GEAR.bodies.length - 1);
    expect(read.content.tombstones.toSorted()).toEqual(
      ['gone', PRACTICE_GEAR.bodies[2]?.id].sort(),
    );
  });

  it('is the one that its files are read as', () => {
    // A migration brings a step in `readAnyFile`, or an older file would be read wrongly.
    expect(STORAGE_VERSION).toBe(DATABASE_VERSION);
  });

  it('of version 2, which knew no heat, is read as it would have been migrated', async () => {
    await use();
    const now = JSON.parse(await rescued());
    const { heat: _, ...body } = now.stores.gear.find(
      ({ kind, deleted }: { kind: string; deleted: boolean }) => kind === 'body' && !deleted,
    ).value;
    const { oneRigAtATime: _o, arranged: _a, locked: _l, swapWorth: _w, ...old } = plan;
    const { tombstones: _t, ...stores } = now.stores;
    const then = {
      ...now,
      version: 2,
      stores: {
        ...stores,
        gear: [{ id: body.id, kind: 'body', value: body, deleted: false }],
        plans: [
          {
            id: old.id,
            deleted: false,
            value: {
              ...old,
              allowances: { swapS: 90, dialChangeS: 15, settleS: 5, writeS: 2 },
              rest: { on: false, factor: 1, offUpToS: 64, longestS: 600 },
              sets: old.sets.map(({ restBeforeS: _r, ...set }) => set),
            },
          },
        ],
      },
    };
    const read = readAnyFile(JSON.stringify(then));
    if (isFault(read)) throw new Error(`${read.rule} at ${read.path}`);
    expect(read.content.gear.bodies[0]).toMatchObject({ heat: { tau: null } });
    expect(read.content.plans[0]).toMatchObject({ rest: { kind: 'none' }, locked: [] });
    expect(read.content.tombstones).toEqual([]);
  });
});

describe('nothing to rescue', () => {
  it('is said, and leaves nothing behind', async () => {
    expect(await rescue()).toEqual({ how: 'empty' });
    expect(await indexedDB.databases()).toEqual([]);
  });

  it('from a browser without a database is said', async () => {
    const { indexedDB: real } = globalThis;
    Reflect.deleteProperty(globalThis, 'indexedDB');
    expect(await rescue()).toEqual({ how: 'failed' });
    globalThis.indexedDB = real;
  });
});
