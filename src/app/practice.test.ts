import { expect, test } from 'vitest';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { SiteId } from '../light/site.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createKeptGear } from './keptGear.ts';
import { createKeptPlans } from './keptPlans.ts';
import { addPractice } from './practice.ts';
import { createSaving } from './saving.ts';
import { createSiteDesk } from './sites.ts';

function newWorld() {
  const store = memoryStore({ makeId: () => 'writer', reader: eventReader });
  const saving = createSaving();
  let asked = 0;
  const gear = createKeptGear({
    store,
    saving,
    onFirstOwnBody: () => {
      asked += 1;
    },
  });
  const plans = createKeptPlans({ store, gear: gear.gear, saving });
  const sites = createSiteDesk({ store, saving });
  return { gear, plans, sites, asked: () => asked };
}

test('the practice outing comes once, ready to start, and counts as nobody’s own', () => {
  const world = newWorld();
  const plan = addPractice(world);
  expect(addPractice(world)).toBe(plan);
  const { gear, plans, sites } = world;
  expect(gear.gear.value.bodies.map(({ name }) => name)).toEqual([
    'Alder 44',
    'Birch 36',
    'Cedar 17',
  ]);
  expect(gear.hasOwn.value).toBe(false);
  expect(world.asked()).toBe(0);
  expect(plans.plans.value.map(({ id, invented }) => [id, invented])).toEqual([[plan, true]]);
  expect(plans.prepared(plan).value?.frames.length).toBeGreaterThan(0);
  expect(sites.sites.value).toEqual([PRACTICE_SITE]);
  expect(sites.inUse.value).toEqual(PRACTICE_SITE);
});

test('what is missing of it comes back, and the site in use stays in use', () => {
  const world = newWorld();
  const own = { ...PRACTICE_SITE, id: 'own' as SiteId, name: 'Mine', invented: false };
  world.sites.put(own, false);
  world.sites.use(own.id);
  const [plan] = [addPractice(world)].flatMap((id) =>
    world.plans.plans.value.filter((candidate) => candidate.id === id),
  );
  if (!plan) throw new Error('no plan');
  world.plans.put(plan, true);
  expect(world.plans.plans.value).toEqual([]);
  addPractice(world);
  expect(world.plans.plans.value).toEqual([plan]);
  expect(world.sites.inUse.value).toEqual(own);
});
