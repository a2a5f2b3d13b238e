import fc from 'fast-check';
import type { Body } from '../../src/gear/body.ts';
import type { BodyId } from '../../src/gear/ids.ts';
import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { PRACTICE_SITE } from '../../src/light/practice.ts';
import type { Site, SiteId } from '../../src/light/site.ts';
import type { OutingEvent } from '../../src/outing/events.ts';
import { fold } from '../../src/outing/fold.ts';
import type { OutingId } from '../../src/outing/ids.ts';
import type { PlanId } from '../../src/plan/ids.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { GearThing, Store } from '../../src/store/contract.ts';
import { Evening, planOf, twoSets } from '../evenings/evening.ts';
import { type Case, refuses, same } from './check.ts';
import { anyJournals, anyParts, note } from './journals.ts';

/** Gives a store with nothing in it, as on a new phone. */
export type FreshStore = () => Promise<Store>;

const OUTING = 'outing-1' as OutingId;
const plan = planOf(twoSets());

const body = (id: string, name = id): Body => ({
  ...(PRACTICE_GEAR.bodies[0] as Body),
  id: id as BodyId,
  name,
});
const asThing = (value: Body): GearThing => ({ kind: 'body', value });
const siteNamed = (id: string, name = id): Site => ({ ...PRACTICE_SITE, id: id as SiteId, name });
const planNamed = (id: string, name = id): Plan => ({ ...plan, id: id as PlanId, name });

/** All that can be seen of the journals. */
async function journalsOf(store: Store): Promise<unknown> {
  const outings = await store.outings();
  return {
    outings,
    events: await Promise.all(outings.map(({ outing }) => store.events(outing))),
  };
}

async function mergedJournals(
  fresh: FreshStore,
  parts: readonly (readonly OutingEvent[])[],
): Promise<unknown> {
  const store = await fresh();
  for (const part of parts) await store.merge(part);
  const seen = await journalsOf(store);
  store.close();
  return seen;
}

/** What every store promises, whatever it stands on. */
export const storeCases: readonly Case<FreshStore>[] = [
  {
    name: 'a new phone is empty',
    async run(fresh) {
      const store = await fresh();
      same(await store.outings(), [], 'outings');
      same(await store.events(OUTING), [], 'events');
      same(await store.gear(), { bodies: [], lenses: [], rigs: [] }, 'gear');
      same(await store.plans(), [], 'plans');
      same(await store.sites(), [], 'sites');
      same(await store.tombstones(), [], 'tombstones');
      same(await store.setting('theme'), undefined, 'a setting');
    },
  },
  {
    name: 'an installation names itself once',
    async run(fresh) {
      const store = await fresh();
      const [first, second] = await Promise.all([store.writer(), store.writer()]);
      same([first, second, await store.writer()], Array(3).fill('installation-1'), 'writer');
    },
  },
  {
    name: 'a whole evening comes back as it was logged, and folds to the same state',
    async run(fresh) {
      const store = await fresh();
      const evening = new Evening(twoSets()).setUp().shootAll();
      for (const event of evening.events) await store.append([event]);
      const back = await store.events(evening.outing);
      same(back.length, evening.events.length, 'number of events');
      same(back, evening.events, 'events');
      same(fold(back), evening.state(), 'state');
    },
  },
  {
    name: 'a journal can be read from its beginning, however its taps came',
    async run(fresh) {
      const store = await fresh();
      const evening = new Evening(twoSets()).setUp().shootAll();
      await store.append(evening.events.toReversed());
      await store.append([note({ seq: 1, outing: evening.outing, writer: 'tablet' })]);
      const begun = await store.events(evening.outing, 5);
      same(begun, evening.events.slice(0, 5), 'the first five');
      const all = await store.events(evening.outing, 1000);
      same(all.length, evening.events.length + 1, 'no more than there are');
    },
  },
  {
    name: 'what was taken in is kept apart from what the caller does with it later',
    async run(fresh) {
      const store = await fresh();
      const event = note({ seq: 1, text: 'as logged' });
      await store.append([event]);
      (event.data as { text: string }).text = 'changed afterwards';
      const [back] = await store.events(OUTING);
      same(back?.data, { text: 'as logged', made: null }, 'stored event');
      (back?.data as { text: string }).text = 'changed in the answer';
      same((await store.events(OUTING))[0]?.data, { text: 'as logged', made: null }, 'second read');
    },
  },
  {
    name: 'a tap that says two things is stored whole or not at all',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1 })]);
      const tap = [note({ seq: 2 }), note({ seq: 3 }), note({ seq: 1, id: 'another' })];
      await refuses(store.append(tap), 'refused', 'a tap that ends in a conflict');
      same(await store.events(OUTING), [note({ seq: 1 })], 'events after it');
    },
  },
  {
    name: 'an event that no database can hold leaves nothing of its tap behind',
    async run(fresh) {
      const store = await fresh();
      const broken = { ...note({ seq: 2 }), data: { text: () => 'not data', made: null } };
      const tap = [note({ seq: 1 }), broken as unknown as OutingEvent];
      await refuses(store.append(tap), 'refused', 'a tap with a function in it');
      same(await store.events(OUTING), [], 'events after it');
    },
  },
  {
    name: 'the battery dies before the answer and the same tap comes again: stored once',
    async run(fresh) {
      const store = await fresh();
      const tap = [note({ seq: 1 }), note({ seq: 2 })];
      await store.append(tap);
      await store.append(tap);
      await store.append(tap.slice(1));
      same(await store.events(OUTING), tap, 'events');
    },
  },
  {
    name: 'the same tap twice at once is stored once',
    async run(fresh) {
      const store = await fresh();
      await Promise.all([store.append([note({ seq: 1 })]), store.append([note({ seq: 1 })])]);
      same(await store.events(OUTING), [note({ seq: 1 })], 'events');
    },
  },
  {
    name: 'a retry that differs only in what JSON does not keep is the same event',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1, wallMs: 0 })]);
      const { data, ...rest } = note({ seq: 1, wallMs: -0 });
      await store.append([{ data: { made: data.made, text: data.text }, ...rest }]);
      same((await store.events(OUTING)).length, 1, 'number of events');
    },
  },
  {
    name: 'an id that comes with other content is refused, and what was first logged stays',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1, text: 'first' })]);
      const other = [note({ seq: 1, text: 'second' })];
      await refuses(store.append(other), 'refused', 'append');
      await refuses(store.merge(other), 'refused', 'merge');
      same(await store.events(OUTING), [note({ seq: 1, text: 'first' })], 'events');
    },
  },
  {
    name: 'an id that is known from another outing is refused',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1, id: 'one' })]);
      const elsewhere = [note({ seq: 1, id: 'one', outing: 'outing-2' })];
      await refuses(store.append(elsewhere), 'refused', 'append');
      await refuses(store.merge(elsewhere), 'refused', 'merge');
      same((await store.outings()).length, 1, 'number of outings');
    },
  },
  {
    name: 'two windows that number the same place: the second is refused',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1, id: 'from one window' })]);
      const other = [note({ seq: 1, id: 'from the other' })];
      await refuses(store.append(other), 'refused', 'append');
      await refuses(store.merge(other), 'refused', 'merge');
    },
  },
  {
    name: 'a file whose one event conflicts brings nothing in',
    async run(fresh) {
      const store = await fresh();
      await store.append([note({ seq: 1, text: 'first' })]);
      const file = [note({ seq: 2 }), note({ seq: 1, text: 'second' })];
      await refuses(store.merge(file), 'refused', 'merge');
      same(await store.events(OUTING), [note({ seq: 1, text: 'first' })], 'events');
    },
  },
  {
    name: 'a file that holds one id twice counts it once, or is refused if it disagrees with itself',
    async run(fresh) {
      const store = await fresh();
      same(await store.merge([note({ seq: 1 }), note({ seq: 1 })]), 1, 'new events');
      const file = [note({ seq: 2 }), note({ seq: 2, text: 'other' })];
      await refuses(store.merge(file), 'refused', 'merge');
      same(await store.events(OUTING), [note({ seq: 1 })], 'events');
    },
  },
  {
    name: 'taps come to rest in the order in which they were made, without waiting for each other',
    async run(fresh) {
      const store = await fresh();
      const taps = Array.from({ length: 20 }, (_, i) => [note({ seq: i + 1 })]);
      const rested: number[] = [];
      await Promise.all(
        taps.map(async (tap, i) => {
          await store.append(tap);
          rested.push(i);
        }),
      );
      same(
        rested,
        taps.map((_, i) => i),
        'order',
      );
      same(await store.events(OUTING), taps.flat(), 'events');
    },
  },
  {
    name: 'a writer whose clock is set back keeps its order; writers interleave by their clocks',
    async run(fresh) {
      const store = await fresh();
      const a = [300, 100, 400].map((wallMs, i) => note({ writer: 'a', seq: i + 1, wallMs }));
      const b = [200, 350].map((wallMs, i) => note({ writer: 'b', seq: i + 1, wallMs }));
      await store.merge([...a, ...b].reverse());
      const order = (await store.events(OUTING)).map(({ writer, seq }) => `${writer}${seq}`);
      same(order, ['b1', 'a1', 'a2', 'b2', 'a3'], 'order');
    },
  },
  {
    name: 'outings are told apart, with their size and span',
    async run(fresh) {
      const store = await fresh();
      await store.merge([
        note({ outing: 'outing-1', seq: 1, wallMs: 500 }),
        note({ outing: 'outing-1', seq: 2, wallMs: 100 }),
        note({ outing: 'outing-1', writer: 'b', seq: 1, wallMs: 900 }),
        note({ outing: 'outing-10', seq: 1, wallMs: 50 }),
      ]);
      same(
        await store.outings(),
        [
          { outing: 'outing-1', events: 3, firstWallMs: 100, lastWallMs: 900 },
          { outing: 'outing-10', events: 1, firstWallMs: 50, lastWallMs: 50 },
        ],
        'outings',
      );
      same((await store.events(OUTING)).length, 3, 'events of the first');
    },
  },
  {
    name: 'files from several phones give the same journal in whatever order they come',
    async run(fresh) {
      await fc.assert(
        fc.asyncProperty(anyParts(3), async (parts) => {
          const [a = [], b = [], c = []] = parts;
          const once = await mergedJournals(fresh, [[...a, ...b, ...c]]);
          for (const order of [
            [a, b, c],
            [c, b, a],
            [b, a, c],
            [a, [...b, ...c]],
            [...parts, a, b],
          ])
            same(await mergedJournals(fresh, order), once, 'journals');
        }),
        { numRuns: 15 },
      );
    },
  },
  {
    name: 'a merge says how many events were new, and a second time none',
    async run(fresh) {
      await fc.assert(
        fc.asyncProperty(anyJournals, fc.nat(), async (events, cut) => {
          const store = await fresh();
          const known = cut % (events.length + 1);
          same(await store.merge(events.slice(0, known)), known, 'first part');
          same(await store.merge(events), events.length - known, 'the rest');
          same(await store.merge(events), 0, 'again');
          store.close();
        }),
        { numRuns: 15 },
      );
    },
  },
  {
    name: 'gear is kept by kind, and a changed thing replaces the one before',
    async run(fresh) {
      const store = await fresh();
      const [lens] = PRACTICE_GEAR.lenses;
      const [rig] = PRACTICE_GEAR.rigs;
      if (!lens || !rig) throw new Error('the practice gear is incomplete');
      await store.putGear([
        { thing: asThing(body('b')), deleted: false },
        { thing: asThing(body('a')), deleted: false },
        { thing: { kind: 'lens', value: lens }, deleted: false },
        { thing: { kind: 'rig', value: rig }, deleted: false },
      ]);
      await store.putGear([{ thing: asThing(body('a', 'renamed')), deleted: false }]);
      same(
        await store.gear(),
        { bodies: [body('a', 'renamed'), body('b')], lenses: [lens], rigs: [rig] },
        'gear',
      );
    },
  },
  {
    name: 'a deleted thing is gone but leaves its tombstone, and undoing brings it back',
    async run(fresh) {
      const store = await fresh();
      await store.putGear([{ thing: asThing(body('a')), deleted: false }]);
      await store.putPlans([{ plan: planNamed('p'), deleted: false }]);
      await store.putSites([
        { site: siteNamed('s'), deleted: false },
        { site: siteNamed('kept', 'before'), deleted: false },
        { site: siteNamed('kept'), deleted: false },
      ]);
      await store.putGear([{ thing: asThing(body('a')), deleted: true }]);
      await store.putPlans([{ plan: planNamed('p'), deleted: true }]);
      await store.putSites([{ site: siteNamed('s'), deleted: true }]);
      same((await store.gear()).bodies, [], 'bodies');
      same(await store.plans(), [], 'plans');
      same(await store.sites(), [siteNamed('kept')], 'sites');
      same(await store.tombstones(), ['a', 'p', 's'], 'tombstones');
      await store.putGear([{ thing: asThing(body('a')), deleted: false }]);
      await store.putSites([{ site: siteNamed('s'), deleted: false }]);
      same((await store.gear()).bodies, [body('a')], 'bodies after undo');
      same(await store.sites(), [siteNamed('kept'), siteNamed('s')], 'sites after undo');
      same(await store.tombstones(), ['p'], 'tombstones after undo');
    },
  },
  {
    name: 'a backup comes in whole, and a second time changes nothing',
    async run(fresh) {
      const store = await fresh();
      const backup = {
        events: [note({ seq: 1 }), note({ seq: 2 })],
        gear: [asThing(body('a'))],
        plans: [planNamed('p')],
        sites: [siteNamed('s')],
        tombstones: [],
      };
      same(
        await store.restore(backup),
        { events: 2, gear: 1, plans: 1, sites: 1, tombstones: 0 },
        'first',
      );
      same(
        await store.restore(backup),
        { events: 0, gear: 0, plans: 0, sites: 0, tombstones: 0 },
        'second',
      );
      same(await store.events(OUTING), backup.events, 'events');
      same((await store.gear()).bodies, [body('a')], 'bodies');
      same(await store.plans(), [planNamed('p')], 'plans');
      same(await store.sites(), [siteNamed('s')], 'sites');
    },
  },
  {
    name: 'a backup does not bring back what was deleted here',
    async run(fresh) {
      const store = await fresh();
      await store.putGear([{ thing: asThing(body('a', 'last seen')), deleted: true }]);
      await store.putSites([{ site: siteNamed('s', 'last seen'), deleted: true }]);
      const backup = {
        events: [],
        gear: [asThing(body('a', 'older'))],
        plans: [],
        sites: [siteNamed('s', 'older')],
        tombstones: [],
      };
      same(
        await store.restore(backup),
        { events: 0, gear: 0, plans: 0, sites: 0, tombstones: 0 },
        'new things',
      );
      same((await store.gear()).bodies, [], 'bodies');
      same(await store.sites(), [], 'sites');
      same(await store.tombstones(), ['a', 's'], 'tombstones');
    },
  },
  {
    name: 'what a backup calls deleted and was never here stays away, now and from the next backup',
    async run(fresh) {
      const store = await fresh();
      await store.putGear([{ thing: asThing(body('here')), deleted: false }]);
      await store.putSites([{ site: siteNamed('gone-here'), deleted: true }]);
      const nothing = { events: [], gear: [], plans: [], sites: [], tombstones: [] };
      const buries = { ...nothing, tombstones: ['a', 'here', 'gone-here', 'p', 's', 'a'] };
      same((await store.restore(buries)).tombstones, 3, 'new tombstones');
      same((await store.restore(buries)).tombstones, 0, 'the second time');
      same([...(await store.tombstones())].sort(), ['a', 'gone-here', 'p', 's'], 'tombstones');
      same((await store.gear()).bodies, [body('here')], 'what is here stays');
      const older = {
        ...nothing,
        gear: [asThing(body('a'))],
        plans: [planNamed('p')],
        sites: [siteNamed('s')],
      };
      const came = { events: 0, gear: 0, plans: 0, sites: 0, tombstones: 0 };
      same(await store.restore(older), came, 'what an older backup brings');
      same(await store.plans(), [], 'plans');
    },
  },
  {
    name: 'a backup whose plan conflicts brings no event and no body in either',
    async run(fresh) {
      const store = await fresh();
      await store.putPlans([{ plan: planNamed('p', 'mine'), deleted: false }]);
      const backup = {
        events: [note({ seq: 1 })],
        gear: [asThing(body('a'))],
        plans: [planNamed('p', 'theirs')],
        sites: [siteNamed('s')],
        tombstones: [],
      };
      await refuses(store.restore(backup), 'refused', 'restore');
      same(await store.outings(), [], 'outings');
      same((await store.gear()).bodies, [], 'bodies');
      same(await store.plans(), [planNamed('p', 'mine')], 'plans');
      same(await store.sites(), [], 'sites');
    },
  },
  {
    name: 'a backup whose site conflicts brings nothing in either',
    async run(fresh) {
      const store = await fresh();
      await store.putSites([{ site: siteNamed('s', 'mine'), deleted: false }]);
      const backup = {
        events: [note({ seq: 1 })],
        gear: [],
        plans: [planNamed('p')],
        sites: [siteNamed('s', 'theirs')],
        tombstones: [],
      };
      await refuses(store.restore(backup), 'refused', 'restore');
      same(await store.outings(), [], 'outings');
      same(await store.plans(), [], 'plans');
      same(await store.sites(), [siteNamed('s', 'mine')], 'sites');
    },
  },
  {
    name: 'a backup that holds one body twice counts it once, or is refused if it disagrees with itself',
    async run(fresh) {
      const store = await fresh();
      const twice = (name: string) => ({
        events: [],
        gear: [asThing(body('a')), asThing(body('a', name))],
        plans: [],
        sites: [],
        tombstones: [],
      });
      await refuses(store.restore(twice('other')), 'refused', 'restore');
      same(
        await store.restore(twice('a')),
        { events: 0, gear: 1, plans: 0, sites: 0, tombstones: 0 },
        'new things',
      );
    },
  },
  {
    name: 'a setting is kept as it was put, and replaced',
    async run(fresh) {
      const store = await fresh();
      await store.putSetting('theme', { name: 'night', since: [1, 2] });
      same(await store.setting('theme'), { name: 'night', since: [1, 2] }, 'first');
      await store.putSetting('theme', null);
      same(await store.setting('theme'), null, 'second');
      same(await store.setting('writer'), undefined, 'a key of another name');
    },
  },
  {
    name: 'a closed store refuses in words instead of hanging',
    async run(fresh) {
      const store = await fresh();
      store.close();
      await refuses(store.append([note({ seq: 1 })]), 'closed', 'append');
      await refuses(store.events(OUTING), 'closed', 'events');
    },
  },
];
