import { type Thing, thingsOf } from '../gear/edit.ts';
import type { RigId } from '../gear/ids.ts';
import { type Fault, fault, isFault, within } from '../gear/read.ts';
import type { Gear, Rig } from '../gear/rig.ts';
import type { Site } from '../light/site.ts';
import type { OutingEvent } from '../outing/events.ts';
import type { Hold, Plan } from '../plan/plan.ts';
import type { Backup } from './backup.ts';
import { canonical, contentHash } from './content.ts';

/** What a device holds, as far as a file can meet it. */
export interface Held {
  readonly gear: Gear;
  readonly plans: readonly Plan[];
  readonly sites: readonly Site[];
  /** Those of the file's outings at least. */
  readonly events: readonly OutingEvent[];
  readonly tombstones: ReadonlySet<string>;
}

/** What a file brings in; what is here already is not in it. */
export interface Arrival {
  readonly events: readonly OutingEvent[];
  /** Bodies and lenses before the rigs that need them. */
  readonly gear: readonly Thing[];
  readonly plans: readonly Plan[];
  readonly sites: readonly Site[];
  /** Deleted where the file was written and never known here. */
  readonly tombstones: readonly string[];
  /** How many come as copies, because their id stands for something else here. */
  readonly copies: number;
  /** How many stay away, because they or what they stand on were deleted here. */
  readonly deletedHere: number;
}

/**
 * What changes when the content of a file comes in: events as a union by id, gear,
 * plans and sites by id. A thing whose id stands for other content here comes as a copy
 * whose id is derived from its content, so that a second restore finds it again.
 * What was deleted here stays deleted; nothing here is changed or removed.
 *
 * @returns a fault at the first event that contradicts the journal here
 *   ('event-differs', 'event-place-taken'): the file is then refused whole.
 */
export function arrivalOf(held: Held, file: Backup): Arrival | Fault {
  const events = newEvents(held.events, file.events);
  if (isFault(events)) return events;

  const { tombstones } = held;
  const bodies = new Settling(held.gear.bodies, tombstones);
  for (const body of file.gear.bodies) bodies.take(body, body);
  const lenses = new Settling(held.gear.lenses, tombstones);
  for (const lens of file.gear.lenses) lenses.take(lens, lens);
  const rigs = new Settling(held.gear.rigs, tombstones);
  for (const rig of file.gear.rigs) {
    const bodyId = bodies.endOf(rig.bodyId);
    const lensId = lenses.endOf(rig.lensId);
    rigs.take(rig, bodyId === null || lensId === null ? null : { ...rig, bodyId, lensId });
  }
  const sites = new Settling(held.sites, tombstones);
  for (const site of file.sites) sites.take(site, site);
  const plans = new Settling(held.plans, tombstones);
  for (const plan of file.plans) plans.take(plan, fitted(plan, rigs, sites));

  const settled = [bodies, lenses, rigs, sites, plans];
  const count = (of: (one: Settled) => number): number =>
    settled.reduce((sum, one) => sum + of(one), 0);
  return {
    events,
    gear: thingsOf({ bodies: bodies.arriving, lenses: lenses.arriving, rigs: rigs.arriving }),
    plans: plans.arriving,
    sites: sites.arriving,
    tombstones: file.tombstones.filter(
      (id) => !tombstones.has(id) && !settled.some((one) => one.has(id)),
    ),
    copies: count((one) => one.copies),
    deletedHere: count((one) => one.deletedHere),
  };
}

/** A plan that speaks of its rigs and its site by the ids under which they stand in the end. */
function fitted(plan: Plan, rigs: Settling<Rig>, sites: Settling<Site>): Plan {
  // A plan outlives its rigs, so one whose rig stays away comes in and asks for another.
  const end = (id: RigId): RigId => rigs.endOf(id) ?? id;
  const holdOf = (hold: Hold): Hold =>
    hold.kind === 'free'
      ? {
          ...hold,
          settings: Object.fromEntries(
            Object.entries(hold.settings).map(([id, settings]) => [end(id as RigId), settings]),
          ),
        }
      : hold;
  return {
    ...plan,
    rigs: plan.rigs.map(end),
    evening: plan.evening && {
      ...plan.evening,
      site: sites.endOf(plan.evening.site) ?? plan.evening.site,
    },
    sets: plan.sets.map((set) => ({
      ...set,
      reference: end(set.reference),
      hold: holdOf(set.hold),
    })),
  };
}

function newEvents(
  held: readonly OutingEvent[],
  incoming: readonly OutingEvent[],
): readonly OutingEvent[] | Fault {
  const byId = new Map(held.map((event) => [event.id, event]));
  const places = new Set(held.map(placeOf));
  const fresh: OutingEvent[] = [];
  for (const [index, event] of incoming.entries()) {
    const same = byId.get(event.id);
    if (same !== undefined) {
      if (canonical(same) === canonical(event)) continue;
      return within('events', within(`[${index}]`, fault('event-differs', { id: event.id })));
    }
    if (places.has(placeOf(event))) {
      return within('events', within(`[${index}]`, fault('event-place-taken', { id: event.id })));
    }
    byId.set(event.id, event);
    places.add(placeOf(event));
    fresh.push(event);
  }
  return fresh;
}

const placeOf = ({ outing, writer, seq }: OutingEvent): string => canonical([outing, writer, seq]);

type Settled = Pick<Settling<Plan>, 'copies' | 'deletedHere' | 'has'>;

/** Settles the things of one kind, one by one, against those that are here. */
class Settling<T extends { readonly id: string }> {
  readonly arriving: T[] = [];
  copies = 0;
  deletedHere = 0;
  private readonly here: Map<string, T>;
  private readonly tombstones: ReadonlySet<string>;
  private readonly ends = new Map<string, T['id'] | null>();

  constructor(here: readonly T[], tombstones: ReadonlySet<string>) {
    this.here = new Map(here.map((thing) => [thing.id, thing]));
    this.tombstones = tombstones;
  }

  has(id: string): boolean {
    return this.here.has(id);
  }

  /** Under which id a thing that the file has, or speaks of, stands in the end; null = it stays away. */
  endOf(id: T['id']): T['id'] | null {
    const end = this.ends.get(id);
    return end === undefined ? id : end;
  }

  /**
   * @param thing as the file has it.
   * @param fitted the same, speaking of its parts as they stand in the end; null if one of them
   *   stays away.
   */
  take(thing: T, fitted: T | null): void {
    this.ends.set(thing.id, this.settle(thing, fitted));
  }

  private settle(thing: T, fitted: T | null): T['id'] | null {
    const there = this.here.get(thing.id);
    if (there !== undefined && canonical(there) === canonical(thing)) return thing.id;
    if (fitted === null) return this.leave();
    if (there === undefined) return this.bring(fitted);
    if (canonical(there) === canonical(fitted)) return thing.id;
    const copy = { ...fitted, id: copyId(fitted) };
    // A copy that came earlier may have been changed since; it came all the same.
    if (this.here.has(copy.id)) return copy.id;
    const id = this.bring(copy);
    if (id !== null) this.copies += 1;
    return id;
  }

  private bring(thing: T): T['id'] | null {
    if (this.tombstones.has(thing.id)) return this.leave();
    this.here.set(thing.id, thing);
    this.arriving.push(thing);
    return thing.id;
  }

  private leave(): null {
    this.deletedHere += 1;
    return null;
  }
}

/** The id of a copy: the same content gets the same one again, and a copy's copy no longer one. */
function copyId<T extends { readonly id: string }>({ id, ...content }: T): string {
  const [original = id] = id.split('~');
  return `${original}~${contentHash(content)}`;
}
