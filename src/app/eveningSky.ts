import type { Gear } from '../gear/rig.ts';
import type { Night } from '../light/night.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import type { Site } from '../light/site.ts';
import { skyForOuting, skyOver } from '../light/skyOver.ts';
import { movedSky, type SkyTable, type Stretch } from '../light/skyTable.ts';
import { begunInLight } from '../plan/inLight.ts';
import type { Plan } from '../plan/plan.ts';
import { preparePlan } from '../plan/prepare.ts';
import type { UtcMs } from '../science/units.ts';
import { nightAt } from './nights.ts';

/*
 * The sky of a plan's evening. Needs the ephemeris: loads later than the first script.
 */

/** The evening that a plan is for, before anybody has metered it. */
export interface PlannedEvening {
  readonly night: Night;
  readonly scene: Scene;
  /** From noon to the lowest sun: the side of the night on which a list is begun. */
  readonly side: Stretch;
}

/** The evening of a plan at its site; null if the plan states none. */
export function plannedEvening({ evening }: Plan, site: Site): PlannedEvening | null {
  if (!evening) return null;
  const night = nightAt(site, evening.date, evening.cloud);
  return {
    night,
    scene: assumedScene(night.sky),
    side: { fromMs: night.noonMs, toMs: night.lowestSun.at },
  };
}

/**
 * The sky that an outing takes with it. That of an invented site is the one over its plan's start,
 * brought to the clock as it is: it can be walked at any hour.
 */
export function outingSky(plan: Plan, gear: Gear, site: Site, now: UtcMs): SkyTable {
  const planned = site.invented ? plannedEvening(plan, site) : null;
  if (!planned) return skyForOuting(site, now, plan.evening?.cloud ?? null);
  const { night, scene, side } = planned;
  const { startMs } = begunInLight(plan, gear, preparePlan(plan, gear), scene, side);
  return movedSky(skyOver(site, startMs ?? night.noonMs, night.nextNoonMs, night.sky.cloud), now);
}
