import type { Gear } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { OutingId } from '../outing/ids.ts';
import type { Plan } from '../plan/plan.ts';
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

export const backupFile = jsonFile<Backup>('evenfall-backup', 3);

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
