import { readGear } from '../gear/parse.ts';
import { also, fault, id, list, object, type Reader, within } from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { readSite } from '../light/parse.ts';
import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { OutingId } from '../outing/ids.ts';
import { readPlan } from '../plan/parse.ts';
import type { Plan } from '../plan/plan.ts';
import { readEvents } from './events.ts';
import { jsonFile } from './json.ts';

/** Everything a device holds that is its owner's. */
export interface Backup {
  readonly gear: Gear;
  readonly plans: readonly Plan[];
  readonly sites: readonly Site[];
  /** The journals of all outings, each writer's events by seq. */
  readonly events: readonly OutingEvent[];
  /** Ids of deleted gear, plans and sites, so that an older file cannot bring them back. */
  readonly tombstones: readonly string[];
}

const MOST_PLANS = 10_000;
const MOST_SITES = 10_000;
const MOST_TOMBSTONES = 100_000;

/** A list in which no id stands twice. */
const eachOnce = <T extends { readonly id: string }>(reader: Reader<T>, most: number) =>
  also(list(reader, most), (things) => {
    const seen = new Set<string>();
    for (const [index, thing] of things.entries()) {
      if (seen.has(thing.id)) {
        return within(`[${index}]`, within('id', fault('id-twice', { id: thing.id })));
      }
      seen.add(thing.id);
    }
    return null;
  });

export const backupFile = jsonFile(
  'evenfall-backup',
  1,
  object<Backup>({
    gear: readGear,
    plans: eachOnce(readPlan, MOST_PLANS),
    sites: eachOnce(readSite, MOST_SITES),
    events: readEvents,
    tombstones: list(id<string>(), MOST_TOMBSTONES),
  }),
);

/**
 * What of a device belongs in a backup: all but the practice outing. A rig that
 * stands on an invented part, or on one that is gone, stays behind with it: the
 * file must be whole to be read.
 */
export function ownOf(everything: Backup): Backup {
  const { gear, plans, sites, events, tombstones } = everything;
  const own = <T extends { readonly invented: boolean }>(things: readonly T[]): readonly T[] =>
    things.filter((thing) => !thing.invented);
  const bodies = own(gear.bodies);
  const lenses = own(gear.lenses);
  const practised = new Set<OutingId>();
  for (const event of events) {
    if (event.kind === 'outing-started' && event.data.plan.invented) practised.add(event.outing);
  }
  return {
    gear: {
      bodies,
      lenses,
      rigs: own(gear.rigs).filter(
        (rig) =>
          bodies.some((body) => body.id === rig.bodyId) &&
          lenses.some((lens) => lens.id === rig.lensId),
      ),
    },
    plans: own(plans),
    sites: own(sites),
    events: events.filter((event) => !practised.has(event.outing)),
    tombstones,
  };
}
