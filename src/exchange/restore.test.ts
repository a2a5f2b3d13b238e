import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyGear } from '../../test/arbitraries/gear.ts';
import { Evening, planOf, twoSets } from '../../test/evenings/evening.ts';
import { applyChanges } from '../gear/applyChanges.ts';
import { deletionOf } from '../gear/edit.ts';
import { readGear } from '../gear/parse.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import type { Gear } from '../gear/rig.ts';
import { PRACTICE_SITE } from '../light/practice.ts';
import type { Site, SiteId } from '../light/site.ts';
import type { EventId } from '../outing/ids.ts';
import type { PlanId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import type { Backup } from './backup.ts';
import { type Arrival, arrivalOf, type Held } from './restore.ts';

const events = new Evening(twoSets()).setUp().shootAll().events;
const plan: Plan = planOf(twoSets());
const site: Site = { ...PRACTICE_SITE, id: 'site' as SiteId, invented: false };
const file: Backup = {
  gear: PRACTICE_GEAR,
  plans: [plan],
  sites: [site],
  events,
  tombstones: [],
};

const NOTHING: Held = {
  gear: { bodies: [], lenses: [], rigs: [] },
  plans: [],
  sites: [],
  events: [],
  tombstones: new Set(),
};
const everything: Held = {
  gear: PRACTICE_GEAR,
  plans: [plan],
  sites: [site],
  events,
  tombstones: new Set(),
};

function arrived(held: Held, from: Backup = file): Arrival {
  const arrival = arrivalOf(held, from);
  if (isFault(arrival)) throw new Error(arrival.rule);
  return arrival;
}

/** The device after an arrival. */
const withArrival = (held: Held, arrival: Arrival): Held => ({
  gear: applyChanges(
    held.gear,
    arrival.gear.map((thing) => ({ thing, deleted: false })),
  ),
  plans: [...held.plans, ...arrival.plans],
  sites: [...held.sites, ...arrival.sites],
  events: [...held.events, ...arrival.events],
  tombstones: new Set([...held.tombstones, ...arrival.tombstones]),
});

const withAlder = (gear: Gear, change: Partial<Gear['bodies'][number]>): Gear => ({
  ...gear,
  bodies: gear.bodies.map((body) => (body.name === 'Alder 44' ? { ...body, ...change } : body)),
});
const edited = withAlder(PRACTICE_GEAR, { name: 'Alder 44', bits: { depth: 14, loweredBy: '' } });

const NO_CHANGE = {
  events: [],
  gear: [],
  plans: [],
  sites: [],
  tombstones: [],
  copies: 0,
  deletedHere: 0,
};

describe('a restore', () => {
  it('brings everything to an empty device', () => {
    const arrival = arrived(NOTHING);
    expect(withArrival(NOTHING, arrival)).toEqual(everything);
    expect(arrival.copies).toBe(0);
  });

  it('changes nothing where everything is already', () => {
    expect(arrived(everything)).toEqual(NO_CHANGE);
  });

  it('adds the events that are missing and no other', () => {
    const half = { ...everything, events: events.filter((_event, index) => index % 2 === 0) };
    expect(arrived(half).events).toEqual(events.filter((_event, index) => index % 2 === 1));
  });

  it('brings an edited body as a copy and leaves the one here as it is', () => {
    const held = { ...everything, gear: edited };
    const arrival = arrived(held);
    expect(arrival.copies).toBe(1);
    expect(arrival.gear).toHaveLength(1);
    const [thing] = arrival.gear;
    expect(thing?.value).toEqual({
      ...PRACTICE_GEAR.bodies[0],
      id: expect.stringMatching(/^practice-alder-44~[0-9a-f]{16}$/) as string,
    });
    expect(withArrival(held, arrival).gear.bodies[0]).toEqual(edited.bodies[0]);
  });

  it('lets a new rig of the file stand on the copy, and a new plan on the new rig', () => {
    const [first] = PRACTICE_GEAR.rigs;
    if (!first) throw new Error('no rig');
    const held = { ...everything, gear: { ...edited, rigs: [] }, plans: [] };
    const arrival = arrived(held, { ...file, gear: { ...PRACTICE_GEAR, rigs: [first] } });
    const [body, rig] = arrival.gear;
    expect(rig?.value).toEqual({ ...first, bodyId: body?.value.id });
    expect(arrival.plans).toEqual([plan]);
    expect(readGear(withArrival(held, arrival).gear)).toEqual(withArrival(held, arrival).gear);
  });

  it('follows a rig that came as a copy in the plans of the file', () => {
    const [first, ...rest] = PRACTICE_GEAR.rigs;
    if (!first) throw new Error('no rig');
    const held = {
      ...everything,
      plans: [],
      gear: { ...PRACTICE_GEAR, rigs: [{ ...first, letter: 'D' as const }, ...rest] },
    };
    const [set] = plan.sets;
    if (!set) throw new Error('no set');
    const free: Plan = {
      ...plan,
      sets: [{ ...set, hold: { kind: 'free', settings: { [first.id]: set.settings } } }],
    };
    const arrival = arrived(held, { ...file, plans: [free] });
    const copy = arrival.gear[0]?.value.id;
    expect(copy).toMatch(/^practice-rig-a~/);
    const [come] = arrival.plans;
    expect(come?.rigs[0]).toBe(copy);
    expect(come?.sets[0]?.reference).toBe(copy);
    expect(come?.sets[0]?.hold).toEqual({ kind: 'free', settings: { [copy ?? '']: set.settings } });
  });

  it('does not bring back what was deleted here, nor a rig that stood on it', () => {
    const [alder] = PRACTICE_GEAR.bodies;
    if (!alder) throw new Error('no body');
    const changes = deletionOf(PRACTICE_GEAR, { kind: 'body', value: alder });
    const held: Held = {
      ...everything,
      gear: applyChanges(PRACTICE_GEAR, changes),
      tombstones: new Set(changes.map(({ thing }) => thing.value.id)),
    };
    expect(arrived(held)).toEqual({ ...NO_CHANGE, deletedHere: 2 });
    const onlyBody: Held = { ...held, tombstones: new Set([alder.id]) };
    expect(arrived(onlyBody)).toEqual({ ...NO_CHANGE, deletedHere: 2 });
  });

  it('does not bring back a copy that was deleted here, nor one that was edited', () => {
    const held = { ...everything, gear: edited };
    const arrival = arrived(held);
    const [copy] = arrival.gear;
    if (copy?.kind !== 'body') throw new Error('no copy');
    const gone: Held = { ...held, tombstones: new Set([copy.value.id]) };
    expect(arrived(gone)).toEqual({ ...NO_CHANGE, deletedHere: 1 });
    const renamed = { ...copy.value, name: 'Alder, as it was' };
    const kept: Held = { ...held, gear: { ...edited, bodies: [...edited.bodies, renamed] } };
    expect(arrived(kept)).toEqual(NO_CHANGE);
  });

  it('remembers what was deleted where the file was written, but deletes nothing here', () => {
    const tombstones = ['practice-alder-44', 'long-gone', 'gone-here'];
    const held = { ...everything, tombstones: new Set(['gone-here']) };
    expect(arrived(held, { ...file, tombstones })).toEqual({
      ...NO_CHANGE,
      tombstones: ['long-gone'],
    });
  });

  it('refuses the whole file when an event says something else here', () => {
    const [, second] = events;
    if (!second) throw new Error('no second event');
    const other = events.map((event) =>
      event === second ? { ...event, wallMs: event.wallMs + 1 } : event,
    );
    expect(arrivalOf({ ...everything, events: other }, file)).toMatchObject({
      rule: 'event-differs',
      path: 'events[1]',
      params: { id: second.id },
    });
  });

  it('refuses the whole file when another event stands in an event’s place', () => {
    const renamed = events.map((event, index) =>
      index === 2 ? { ...event, id: 'other' as EventId } : event,
    );
    expect(arrivalOf({ ...everything, events: renamed }, file)).toMatchObject({
      rule: 'event-place-taken',
      path: 'events[2]',
    });
  });
});

describe('whatever is here and whatever comes', () => {
  /** Gear on two devices that began with the same and went different ways. */
  const twoDevices = fc.tuple(anyGear, anyGear, anyGear).chain(([common, ours, theirs]) =>
    fc.record({
      ours: mixOf(common, ours),
      theirs: mixOf(common, theirs),
      gone: fc.subarray(common.bodies.map(({ id }) => id as string)),
    }),
  );

  /** Common things, some renamed, and things of one's own; rigs only of what is there. */
  function mixOf(common: Gear, more: Gear): fc.Arbitrary<Gear> {
    return fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }).map((flips) => ({
      bodies: [
        ...common.bodies.map((body, at) => (flips[at] ? { ...body, name: `${at}` } : body)),
        ...more.bodies,
      ],
      lenses: [
        ...common.lenses.map((lens, at) =>
          flips[at + 3] ? { ...lens, focusSurvivesPowerOff: !lens.focusSurvivesPowerOff } : lens,
        ),
        ...more.lenses,
      ],
      rigs: [...(flips[7] ? common.rigs : []), ...more.rigs],
    }));
  }

  it('twice is the same as once, nothing here changes, and the gear stays whole', () => {
    fc.assert(
      fc.property(twoDevices, ({ ours, theirs, gone }) => {
        const bodies = ours.bodies.filter(({ id }) => !gone.includes(id));
        const rigs = ours.rigs.filter(({ bodyId }) => !gone.includes(bodyId));
        const held: Held = {
          ...NOTHING,
          gear: { ...ours, bodies, rigs },
          tombstones: new Set(gone),
        };
        const incoming: Backup = { ...NOTHING, gear: theirs, tombstones: [] };
        const arrival = arrived(held, incoming);
        const then = withArrival(held, arrival);
        expect(readGear(then.gear)).toEqual(then.gear);
        expect(then.gear.bodies.slice(0, bodies.length)).toEqual(bodies);
        expect(then.gear.bodies.some(({ id }) => gone.includes(id))).toBe(false);
        const again = arrived(then, incoming);
        expect(again).toEqual({ ...NO_CHANGE, deletedHere: arrival.deletedHere });
      }),
    );
  });

  it('plans settle like gear', () => {
    const renamed = { ...plan, name: 'renamed here' };
    const held = { ...everything, plans: [renamed] };
    const arrival = arrived(held);
    expect(arrival.plans).toEqual([{ ...plan, id: arrival.plans[0]?.id }]);
    expect(arrival.plans[0]?.id).toMatch(/^plan~/);
    expect(arrived(withArrival(held, arrival))).toEqual(NO_CHANGE);
    const deleted = { ...everything, plans: [], tombstones: new Set(['plan' as PlanId]) };
    expect(arrived(deleted)).toEqual({ ...NO_CHANGE, deletedHere: 1 });
  });

  it('sites settle like gear', () => {
    const moved = { ...site, note: 'moved here' };
    const held = { ...everything, sites: [moved] };
    const arrival = arrived(held);
    expect(arrival.sites).toEqual([{ ...site, id: arrival.sites[0]?.id }]);
    expect(arrival.sites[0]?.id).toMatch(/^site~/);
    expect(arrival.copies).toBe(1);
    expect(arrived(withArrival(held, arrival))).toEqual(NO_CHANGE);
    const evening = { site: site.id, date: '2027-02-12', startMs: null, cloud: null };
    const { plans } = arrived({ ...held, plans: [] }, { ...file, plans: [{ ...plan, evening }] });
    expect(plans[0]?.evening?.site).toBe(arrival.sites[0]?.id);
    const deleted = { ...everything, sites: [], tombstones: new Set(['site']) };
    expect(arrived(deleted)).toEqual({ ...NO_CHANGE, deletedHere: 1 });
  });
});
