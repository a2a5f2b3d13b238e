import { signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { FakeClock } from '../../test/contract/fakes/clock.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import type { Night } from '../light/night.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site, SiteId } from '../light/site.ts';
import { skyEv } from '../light/skyTable.ts';
import { localTime } from '../light/zones.ts';
import type { Instant } from '../outing/instant.ts';
import type { RunState } from '../outing/state.ts';
import type { PlanId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import { type Prepared, preparePlan } from '../plan/prepare.ts';
import { degrees, type Ev, ev, later, metres, minutesEast, utc } from '../science/units.ts';
import { memoryStore } from '../store/memory.ts';
import { outingSky } from './eveningSky.ts';
import { eventReader } from './eventReader.ts';
import { createLightDesk, type LightDesk, lightDesk } from './light.ts';
import { createSaving } from './saving.ts';
import { createSiteDesk, type SiteDesk } from './sites.ts';
import { createUndo, type Undo } from './undo.ts';

let store: ReturnType<typeof memoryStore>;
let sites: SiteDesk;
let undo: Undo;
let clock: FakeClock;
/** By the codes of the W3C's GeolocationPositionError. */
let code: number;
let ids = 0;
const state = signal<RunState | null>(null);
const plans = signal<readonly Plan[]>([]);
const open = signal<PlanId | null>(null);
const prepared = signal<Prepared | null>(null);
const newId = () => {
  ids += 1;
  return `id-${ids}`;
};
const newWorld = () => ({
  sites,
  undo,
  newId,
  clock,
  plans: { plans, open, prepared: () => prepared },
  gear: { gear: signal(PRACTICE_GEAR) },
  run: { state },
  ticker: {
    start: (look: () => void) => {
      look();
      return () => undefined;
    },
  },
  geolocation: {
    getCurrentPosition: (_: unknown, fail?: PositionErrorCallback | null) =>
      fail?.({ code } as GeolocationPositionError),
  },
});
const newSites = () => createSiteDesk({ store, saving: createSaving() });
let desk: LightDesk;
const practice = () => {
  sites.put(PRACTICE_SITE, false);
  sites.use(PRACTICE_SITE.id);
};

beforeEach(() => {
  store = memoryStore({ makeId: newId, reader: eventReader });
  sites = newSites();
  undo = createUndo();
  clock = new FakeClock();
  state.value = null;
  plans.value = [];
  open.value = null;
  desk = createLightDesk(newWorld());
});

async function added(lat: number, lon: number, name = 'The spit'): Promise<Site> {
  const id = await desk.add({ name, lat: degrees(lat), lon: degrees(lon), heightM: metres(0) });
  if (isFault(id)) throw new Error(id.rule);
  const site = sites.sites.value.find((each) => each.id === id);
  if (!site) throw new Error('the site is not there');
  return site;
}

const nightReady = (): Promise<Night> =>
  new Promise((ready, fail) => {
    const stop = desk.night.subscribe((now) => {
      if (now.kind === 'computing') return;
      if (now.kind === 'ready') ready(now.night);
      else fail(new Error('the night failed'));
      queueMicrotask(() => stop());
    });
  });

const clockOf = (site: Site, at: number): string => {
  const { hour, minute } = localTime(site.zone, utc(at));
  return `${hour}:${String(minute).padStart(2, '0')}`;
};
const eventOf = (night: Night, name: string): number =>
  night.events.find(({ event }) => event === name)?.at ?? Number.NaN;

test('a site is added with the zone of its place, and everything else as stated', async () => {
  const site = await added(27.7, 85.3);
  expect(site).toMatchObject({
    name: 'The spit',
    zone: { kind: 'iana', name: 'Asia/Kathmandu' },
    ridgeDeg: 0,
    heightM: 0,
    invented: false,
  });
  expect(await store.sites()).toEqual([site]);
});

test('what a site cannot be is refused and changes nothing', async () => {
  const site = await added(10, 10);
  expect(desk.change(site.id, { name: '  ' })).toMatchObject({ rule: 'text-empty' });
  expect(desk.change(site.id, { ridgeDeg: degrees(80) })).toMatchObject({ rule: 'out-of-range' });
  expect(sites.sites.value).toEqual([site]);
  expect(desk.change(site.id, { ridgeDeg: degrees(4) })).toBeNull();
  expect(sites.sites.value[0]?.ridgeDeg).toBe(4);
});

test('a proposed zone follows the coordinates, a chosen one stays', async () => {
  const site = await added(48.2, 16.4);
  expect(site.zone).toEqual({ kind: 'iana', name: 'Europe/Vienna' });
  await desk.move(site.id, { lat: degrees(1.87), lon: degrees(-157.4) });
  expect(sites.sites.value[0]?.zone).toEqual({ kind: 'iana', name: 'Pacific/Kiritimati' });
  const fixed = { kind: 'fixed', offsetMin: minutesEast(345) } as const;
  expect(desk.change(site.id, { zone: fixed })).toBeNull();
  await desk.move(site.id, { lat: degrees(48.2), lon: degrees(16.4) });
  expect(sites.sites.value[0]).toMatchObject({ latDeg: 48.2, zone: fixed });
});

test('a deleted site comes back by undo, and a copy of an invented one is one’s own', async () => {
  practice();
  const copy = desk.copy(PRACTICE_SITE.id, 'My slip');
  expect(sites.sites.value.map(({ name, invented }) => [name, invented])).toEqual([
    ['My slip', false],
    ['The old ferry slip', true],
  ]);
  desk.remove(copy as SiteId);
  expect(sites.sites.value).toEqual([PRACTICE_SITE]);
  expect(undo.last.value?.deed).toEqual({ act: 'deleted', thing: 'site', name: 'My slip' });
  undo.take();
  expect(sites.sites.value).toHaveLength(2);
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect((await store.sites()).map(({ id }) => id)).toContain(copy);
});

test('the site in use and the sites outlive a restart', async () => {
  const site = await added(60.1, 24.9);
  sites.use(site.id);
  await new Promise((resolve) => setTimeout(resolve, 5));
  sites = newSites();
  await sites.load();
  expect(sites.inUse.value).toEqual(site);
});

test('the invented site shows its own evening', async () => {
  practice();
  const night = await nightReady();
  expect(night.date).toBe('2027-02-12');
  // Worked out apart, by the Astronomical Almanac's low-precision sun: 17:14:30 and 17:52:30.
  expect(clockOf(PRACTICE_SITE, eventOf(night, 'sunset'))).toBe('17:14');
  expect(clockOf(PRACTICE_SITE, eventOf(night, 'civil-dusk'))).toBe('17:52');
});

test('an own site shows the evening that it is there, and another date when asked', async () => {
  clock.wallMs = Date.UTC(2027, 5, 21, 3, 0);
  // 17:00 on the 21st by its clock, though still the 20th a few miles east.
  const site = await added(1.87, -157.4);
  sites.use(site.id);
  expect(desk.watch()()).toBeUndefined();
  expect((await nightReady()).date).toBe('2027-06-21');
  desk.setDate('2027-12-01');
  expect((await nightReady()).date).toBe('2027-12-01');
  desk.setDate(null);
  expect((await nightReady()).date).toBe('2027-06-21');
});

test('tonight becomes the next evening when the day does', async () => {
  clock.wallMs = Date.UTC(2027, 2, 20, 23, 0);
  sites.use((await added(50, 0)).id);
  desk.watch();
  expect((await nightReady()).date).toBe('2027-03-20');
  clock.jump(8 * 3_600_000);
  desk.watch();
  await new Promise((resolve) => setTimeout(resolve, 5));
  expect((await nightReady()).date).toBe('2027-03-21');
});

test('cloud that is stated takes its stops, and the open plan states it first', async () => {
  practice();
  const clear = await nightReady();
  const at = later(clear.noonMs, 3600);
  expect(clear.sky.cloud).toBeNull();
  desk.setCloud('average-cloud');
  const under = (await nightReady()).sky;
  // A third of the light.
  expect((skyEv(under, at) as Ev) - (skyEv(clear.sky, at) as Ev)).toBeCloseTo(-Math.log2(3), 3);
  desk.setCloud(null);
  expect((await nightReady()).sky.cloud).toBeNull();
  // It was said of that evening, and of no other.
  desk.setDate('2027-02-13');
  desk.setDate(null);
  const evening = {
    site: PRACTICE_SITE.id,
    date: '2027-02-12',
    startMs: null,
    cloud: 'dark-stratus',
  } as const;
  plans.value = [{ id: 'p' as PlanId, evening } as Plan];
  open.value = 'p' as PlanId;
  expect((await nightReady()).sky.cloud).toBe('dark-stratus');
  desk.setCloud(null);
  expect((await nightReady()).sky.cloud).toBeNull();
});

test('readings of the outing in hand bend the curve, those of another site do not', async () => {
  practice();
  const { noonMs, sky } = await nightReady();
  const at = later(noonMs, 5.5 * 3600);
  const seen = ev((skyEv(sky, at) as Ev) + 1.5);
  const reading = {
    at: { ...(clock.now() as Instant), wallMs: at },
    meter: 'spot',
    reading: { kind: 'ev', ev100: seen },
  };
  const outing = { site: PRACTICE_SITE, readings: [reading] } as unknown as RunState;
  expect(desk.scene.value?.from).toBe('model');
  state.value = outing;
  expect(desk.scene.value?.from).toBe('readings');
  expect(desk.scene.value?.offsets[0]?.stops).toBeCloseTo(1.5, 1);
  state.value = { ...outing, site: { ...PRACTICE_SITE, id: 'elsewhere' as SiteId } };
  expect(desk.scene.value?.from).toBe('model');
});

test('the frames of the open plan are marked on its evening, from its start or the best one', async () => {
  practice();
  const night = await nightReady();
  const startMs = utc(Date.UTC(2027, 1, 12, 17, 30));
  const evening = { site: PRACTICE_SITE.id, date: '2027-02-12', startMs, cloud: null } as const;
  const plan = practicePlan();
  prepared.value = preparePlan(plan, PRACTICE_GEAR);
  plans.value = [{ ...plan, evening }];
  open.value = plan.id;
  const { frames } = desk.planned.value ?? { frames: [] };
  const { timeline } = preparePlan(plan, PRACTICE_GEAR);
  expect(frames).toHaveLength(timeline.frames.length);
  expect(new Set(frames.map(({ letter }) => letter))).toEqual(new Set(['A', 'B']));
  expect(frames[0]?.fromMs).toBe(later(startMs, timeline.frames[0]?.startS ?? Number.NaN));
  plans.value = [{ ...plan, evening: { ...evening, startMs: null } }];
  const best = desk.planned.value?.frames[0]?.fromMs ?? Number.NaN;
  expect(best).toBeGreaterThan(night.noonMs);
  expect(best).toBeLessThan(night.lowestSun.at);
  plans.value = [{ ...plan, evening: { ...evening, date: '2027-02-13' } }];
  expect(desk.planned.value).toBeNull();
});

/** The practice outing, begun at an instant, with one reading. */
const practiceRun = (begun: number, readAt: number, seen: number): RunState =>
  ({
    outing: 'practice',
    site: PRACTICE_SITE,
    plan: practicePlan(),
    gear: PRACTICE_GEAR,
    sky: outingSky(practicePlan(), PRACTICE_GEAR, PRACTICE_SITE, utc(begun)),
    readings: [
      {
        at: { ...(clock.now() as Instant), wallMs: readAt },
        meter: 'spot',
        reading: { kind: 'ev', ev100: ev(seen) },
      },
    ],
  }) as unknown as RunState;

test('the practice outing, walked at another hour, has its evening and readings at that hour', async () => {
  practice();
  const own = await nightReady();
  const plan = practicePlan();
  prepared.value = preparePlan(plan, PRACTICE_GEAR);
  plans.value = [plan];
  open.value = plan.id;
  const frames = desk.planned.value?.frames ?? [];
  const listStart = later(
    utc(frames[0]?.fromMs ?? Number.NaN),
    -(preparePlan(plan, PRACTICE_GEAR).timeline.frames[0]?.startS ?? Number.NaN),
  );
  expect(desk.movedFrom.value).toBeNull();
  // Begun at nine on a November morning; five minutes later somebody looks, and reads the meter.
  const begun = Date.UTC(2026, 10, 3, 9, 0, 20);
  const by = begun - Math.floor(listStart / 60_000) * 60_000;
  clock.wallMs = begun + 300_000;
  const readAt = begun + 240_000;
  state.value = practiceRun(begun, readAt, (skyEv(own.sky, utc(readAt - by)) as Ev) + 1.5);
  desk.watch();
  const night = await nightReady();
  expect(desk.now.value).toBe(utc(begun + 280_000));
  expect(desk.scene.value?.readings[0]?.at).toBe(readAt);
  expect(desk.scene.value?.offsets[0]?.stops).toBeCloseTo(1.5, 2);
  // Its noon was about five hours before the list.
  expect([desk.movedFrom.value, night.date]).toEqual(['2027-02-12', '2026-11-03']);
  expect(eventOf(night, 'sunset') - eventOf(own, 'sunset')).toBe(by);
  expect(desk.planned.value?.frames).toHaveLength(frames.length);
  expect(Math.abs((desk.planned.value?.frames[0]?.fromMs ?? 0) - begun)).toBeLessThan(900_000);
  // Also before it began: the evening is whole.
  for (const hours of [1, 4, 8, 20]) {
    const at = later(own.noonMs, hours * 3600);
    expect(skyEv(night.sky, utc(at + by))).toBeCloseTo(skyEv(own.sky, at) as Ev, 3);
  }
  // Another evening of the site has nothing to do with the outing.
  desk.setDate('2027-02-13');
  expect((await nightReady()).date).toBe('2027-02-13');
  expect([desk.movedFrom.value, desk.scene.value?.from]).toEqual([null, 'model']);
});

test('an outing’s own sky is drawn under its readings, whatever the library says by now', async () => {
  practice();
  const own = await nightReady();
  const begun = later(own.noonMs, 5 * 3600);
  const site = { ...PRACTICE_SITE, invented: false };
  const sky = outingSky(practicePlan(), PRACTICE_GEAR, site, begun);
  const brighter = { ...sky, clearEv100: sky.clearEv100.map((each) => ev(each + 1)) };
  state.value = { ...practiceRun(begun, begun, 0), site, sky: brighter, readings: [] };
  const night = await nightReady();
  const at = later(begun, 600);
  expect(skyEv(night.sky, at)).toBeCloseTo((skyEv(own.sky, at) as Ev) + 1, 3);
  const before = later(begun, -600);
  expect(skyEv(night.sky, before)).toBeCloseTo(skyEv(own.sky, before) as Ev, 3);
});

test('what the phone says of its place is handed on as it is', async () => {
  code = 1;
  expect(await desk.whereAmI()).toEqual({ kind: 'refused' });
});

test('one desk for an app', () => {
  const world = newWorld();
  expect(lightDesk(world)).toBe(lightDesk(world));
});
