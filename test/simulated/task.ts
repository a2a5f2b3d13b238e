import { PRACTICE_GEAR } from '../../src/gear/practice.ts';
import { type Assembled, assemble } from '../../src/gear/rig.ts';
import { forecastAt } from '../../src/light/forecast.ts';
import { nightOf } from '../../src/light/night.ts';
import { assumedScene, type Scene } from '../../src/light/scene.ts';
import { SITE_DEFAULTS, type Site, type SiteId } from '../../src/light/site.ts';
import { skyForOuting } from '../../src/light/skyOver.ts';
import type { SkyTable, Stretch } from '../../src/light/skyTable.ts';
import { USUAL_WEIGHTS } from '../../src/plan/costWeights.ts';
import { arrange, changeOrder } from '../../src/plan/edit.ts';
import { fairOrder, type SearchEffort } from '../../src/plan/fairOrder.ts';
import type { PlanId, SetId } from '../../src/plan/ids.ts';
import { bestStart, planLight } from '../../src/plan/light.ts';
import { newPlan } from '../../src/plan/newPlan.ts';
import { namedStarts } from '../../src/plan/orderCost.ts';
import { type OrderRequest, orderProblem, type SetWindow } from '../../src/plan/orderProblem.ts';
import type { Plan, TurnPlace } from '../../src/plan/plan.ts';
import { type Prepared, preparePlan } from '../../src/plan/prepare.ts';
import { READY_LISTS, readyList } from '../../src/plan/readyLists.ts';
import type { SkyCondition } from '../../src/science/cloud.ts';
import { seed } from '../../src/science/mulberry32.ts';
import { must } from '../../src/science/refusal.ts';
import { UNMEASURED } from '../../src/science/thermalRange.ts';
import { ev, later, minutesEast, type Seconds, type UtcMs } from '../../src/science/units.ts';
import { type Chance, chanceOf } from './world/chance.ts';
import type { Evening } from './world/evening.ts';

export const GEAR = PRACTICE_GEAR;

/** What is to be shot on an evening, planned by the app before anybody has metered anything. */
export interface Task {
  readonly evening: Evening;
  readonly site: Site;
  readonly plan: Plan;
  readonly prepared: Prepared;
  /** When the list is begun: near the app's own start. */
  readonly startMs: UtcMs;
  /** The sky that the outing takes with it. */
  readonly sky: SkyTable;
}

/** What people say of a sky; null = nothing. */
function saidOf(chance: Chance, { weather }: Evening): SkyCondition | null {
  switch (weather) {
    case 'quiet':
      return chance.oneOf<SkyCondition | null>(['clear', 'clear', 'clear', null]);
    case 'veils':
      return chance.oneOf<SkyCondition | null>(['clear', 'thin-cloud-over-sun', null]);
    case 'broken':
      return chance.oneOf<SkyCondition | null>(['average-cloud', 'thin-cloud-over-sun', null]);
  }
}

/** Two of the invented rigs, now and then all three; the first is the reference. */
function rigsOf(chance: Chance): readonly Assembled[] {
  const letters = chance.oneOf(['AB', 'AB', 'AB', 'BC', 'ABC']);
  return GEAR.rigs
    .filter(({ letter }) => letters.includes(letter))
    .flatMap(({ id }) => assemble(GEAR, id) ?? []);
}

function siteOf({ spot }: Evening): Site {
  return {
    ...SITE_DEFAULTS,
    id: 'simulated' as SiteId,
    name: 'Simulated',
    latDeg: spot.lat,
    lonDeg: spot.lon,
    zone: { kind: 'fixed', offsetMin: minutesEast(60 * Math.round(spot.lon / 15)) },
  };
}

/** How far from the app's own start people begin. */
const LATE_BY_MIN = 10;

/**
 * Where a task's frames get their order: from the ready list as it stands; the same with a list of one
 * pass, which has nothing to cancel a fade with, shot as a mirror; or from the app's search.
 */
export type OrderFrom = 'list' | 'mirror' | 'search';

/** What a list is planned on. */
interface Ground {
  readonly scene: Scene;
  readonly side: Stretch;
}

/** Seconds are short here: a search need not prove anything. */
const EFFORT: SearchEffort = { walks: 2, tries: 60, steps: 0 };

/** The plan in the order that the app's search finds for a start. */
function searched(plan: Plan, ground: Ground, startMs: UtcMs): Plan {
  const prepared = preparePlan(plan, GEAR);
  const light = planLight(plan, GEAR, prepared, ground.scene, ground.side);
  const request: OrderRequest = {
    plan,
    gear: GEAR,
    frames: prepared.frames,
    mounting: 'swaps',
    light: (at) => forecastAt(ground.scene, later(startMs, at))?.ev100 ?? ev(0),
    windows: new Map(
      (light?.sets ?? []).map(({ set, right }) => [set, windowOf(right, startMs)] as const),
    ),
    notBefore: new Map(),
    rest: plan.rest.kind === 'limit' ? { kind: 'none' } : plan.rest,
    thermal: () => UNMEASURED,
    locked: new Set(),
  };
  const problem = must(orderProblem(request));
  const starts = namedStarts(request, problem);
  const search = fairOrder(problem, USUAL_WEIGHTS, seed(1), EFFORT, starts);
  let step = search.next();
  while (!step.done) step = search.next();
  const turns = must(step.value).order.flatMap((kind): readonly TurnPlace[] => {
    const frame = problem.kinds[kind]?.passes[0]?.[0];
    return frame ? [{ set: frame.set, rig: frame.rig }] : [];
  });
  return arrange(plan, turns);
}

/** Tonight's minutes of a set, in seconds from the start of the list. */
function windowOf(right: readonly Stretch[], startMs: UtcMs): SetWindow {
  const from = Math.min(...right.map(({ fromMs }) => fromMs));
  const to = Math.max(...right.map(({ toMs }) => toMs));
  const after = (at: number) => ((at - startMs) / 1000) as Seconds;
  return right.length === 0 ? { fromS: null, toS: null } : { fromS: after(from), toS: after(to) };
}

/** The task of an evening: a ready list, its rigs, its place and date, and when it is begun. */
export function taskOf(evening: Evening, order: OrderFrom): Task {
  const chance = chanceOf(evening.seed, 'task');
  const site = siteOf(evening);
  const rigs = rigsOf(chance);
  let sets = 0;
  const list = must(
    readyList(chance.oneOf(READY_LISTS), rigs, () => {
      sets += 1;
      return `set-${sets}` as SetId;
    }),
  );
  const cloud = saidOf(chance, evening);
  const lateBy = 60 * chance.between(-LATE_BY_MIN, LATE_BY_MIN);
  // The noon by the sun, on the calendar of its own meridian.
  const date = new Date(later(evening.noonMs, 240 * site.lonDeg)).toISOString().slice(0, 10);
  const listed: Plan = {
    ...newPlan(
      'simulated' as PlanId,
      'Simulated',
      rigs.map(({ rig }) => rig.id),
    ),
    ...list,
    evening: { site: site.id, date, startMs: null, cloud },
  };
  const night = nightOf(site, date, cloud);
  const ground: Ground = {
    scene: assumedScene(night.sky),
    side: { fromMs: night.noonMs, toMs: night.lowestSun.at },
  };
  const mirror = listed.order === 'rig-by-rig' ? changeOrder(listed, 'mirror') : listed;
  const best = bestStart(mirror, preparePlan(mirror, GEAR), ground.scene, ground.side);
  if (!best) throw new Error('a ready list has no start');
  const plan = {
    list: () => listed,
    mirror: () => mirror,
    search: () => searched(mirror, ground, best.startMs),
  }[order]();
  // All begin at one time, so that they meet one sky.
  const startMs = later(best.startMs, lateBy);
  const sky = skyForOuting(site, startMs, cloud);
  return { evening, site, plan, prepared: preparePlan(plan, GEAR), startMs, sky };
}
