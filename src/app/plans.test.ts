import { signal } from '@preact/signals';
import { beforeEach, expect, test } from 'vitest';
import { applyChanges } from '../gear/applyChanges.ts';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { isFault } from '../gear/read.ts';
import { moveSet } from '../plan/edit.ts';
import type { PlanId, SetId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { PRACTICE_PLAN_ID, practicePlan } from '../plan/practicePlan.ts';
import { stopsStart } from '../plan/problems.ts';
import { StoreFailure } from '../store/fault.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createKeptPlans } from './keptPlans.ts';
import { createPlanDesk, type NewPlan } from './plans.ts';
import { createSaving, type Saving, type SavingState } from './saving.ts';
import { createUndo, type Undo } from './undo.ts';

const ALDER = 'practice-rig-a' as RigId;
const BIRCH = 'practice-rig-b' as RigId;
const CEDAR = 'practice-rig-c' as RigId;

const gear = signal(PRACTICE_GEAR);
let store: ReturnType<typeof memoryStore>;
let saving: Saving;
let undo: Undo;
let desk: ReturnType<typeof newDesk>;
let ids = 0;

const newId = () => {
  ids += 1;
  return `id-${ids}`;
};
const newDesk = () => {
  const kept = createKeptPlans({ store, gear, saving });
  return { ...kept, ...createPlanDesk({ plans: kept, gear: { gear }, undo, newId }) };
};

beforeEach(() => {
  gear.value = PRACTICE_GEAR;
  store = memoryStore({ makeId: newId, reader: eventReader });
  saving = createSaving();
  undo = createUndo();
  desk = newDesk();
});

function made(start: Partial<NewPlan> = {}): PlanId {
  const id = desk.make({
    name: 'An evening',
    rigs: [ALDER, BIRCH],
    list: 'base-iso-latitude',
    ...start,
  });
  if (isFault(id)) throw new Error(id.rule);
  return id;
}

function planOf(id: PlanId): Plan {
  const plan = desk.plans.value.find((candidate) => candidate.id === id);
  if (!plan) throw new Error(`no plan ${id}`);
  return plan;
}

function setAt(id: PlanId, index: number) {
  const set = planOf(id).sets[index];
  if (!set) throw new Error(`no set ${index}`);
  return set;
}

const intents = (id: PlanId) => planOf(id).sets.map(({ intent }) => intent);

const reaches = (wanted: SavingState['kind']): Promise<void> =>
  new Promise((reached) => {
    saving.state.subscribe(({ kind }) => {
      if (kind === wanted) reached();
    });
  });
const saved = () => reaches('saved');

test('a plan made from a ready list is worked out, kept, and there after a restart', async () => {
  const id = made();
  expect(intents(id)).toHaveLength(3);
  expect(desk.prepared(id).value?.problems.filter(stopsStart)).toEqual([]);
  desk.show(id);
  await saved();
  const later = newDesk();
  await later.load();
  expect(later.plans.value).toEqual([planOf(id)]);
  expect(later.open.value).toBe(id);
});

test('a deleted plan is gone from the store and comes back whole by undo', async () => {
  const id = made();
  const before = planOf(id);
  desk.remove(id);
  await saved();
  expect(await store.plans()).toEqual([]);
  expect(desk.prepared(id).value).toBe(null);
  undo.take();
  await saved();
  expect(await store.plans()).toEqual([before]);
});

test('undoing the deletion of a set keeps what was changed since', () => {
  const id = made();
  const [first, second, third] = planOf(id).sets.map((set) => set.id) as [SetId, SetId, SetId];
  desk.removeSet(id, second);
  desk.changeSet(id, third, { intent: 'changed since' });
  undo.take();
  expect(planOf(id).sets.map((set) => set.id)).toEqual([first, second, third]);
  expect(setAt(id, 2).intent).toBe('changed since');
});

test('an absurd change is refused with its place and changes nothing', () => {
  const id = made();
  const before = planOf(id);
  const fault = desk.changeSet(id, setAt(id, 1).id, { repeats: 0 });
  expect(fault?.path).toBe('sets[1].repeats');
  expect(fault?.rule).toBe('out-of-range');
  expect(planOf(id)).toBe(before);
});

test('what is worked out follows plan and gear at once', () => {
  const id = made();
  const set = setAt(id, 0);
  const isoOfBirch = () => {
    const table = desk.prepared(id).value?.table[0];
    return table?.kind === 'compared' ? table.others[0]?.dialled.settings.isoMark : undefined;
  };
  expect(isoOfBirch()).toBe('100');
  desk.changeSet(id, set.id, { settings: { ...set.settings, isoMark: '800' } });
  expect(isoOfBirch()).toBe('800');
  const birch = PRACTICE_GEAR.rigs.filter((rig) => rig.id === BIRCH);
  gear.value = applyChanges(
    PRACTICE_GEAR,
    birch.map((value) => ({ thing: { kind: 'rig', value }, deleted: true })),
  );
  expect(isoOfBirch()).toBe(undefined);
  expect(desk.prepared(id).value?.problems).toContainEqual({ code: 'rig-gone', rig: BIRCH });
});

test('another reference keeps what it was to be set to', () => {
  const id = made({ list: 'mixed-dusk' });
  const { id: set } = setAt(id, 0);
  const table = desk.prepared(id).value?.table[0];
  const was = table?.kind === 'compared' ? table.others[0]?.dialled.settings : undefined;
  expect(was?.time).toEqual({ kind: 'dial', mark: '60' });
  expect(desk.setReference(id, set, BIRCH)).toBe(null);
  expect(setAt(id, 0)).toMatchObject({ reference: BIRCH, settings: was });
});

test('taking the reference out of the plan leaves the next rig on its own dials', () => {
  const id = made({ list: 'mixed-dusk' });
  desk.setRigs(id, [BIRCH, CEDAR]);
  expect(setAt(id, 0).reference).toBe(BIRCH);
  // 64 s stands on Alder's dial only.
  expect(setAt(id, 0).settings.time).toEqual({ kind: 'dial', mark: '60' });
  expect(desk.prepared(id).value?.problems.filter(stopsStart)).toEqual([]);
});

test('set by hand starts from what was matched, for every rig', () => {
  const id = made({ rigs: [ALDER, BIRCH, CEDAR] });
  const settings = () => {
    const table = desk.prepared(id).value?.table[0];
    return table?.kind === 'compared' ? table.others.map((row) => row.dialled.settings) : [];
  };
  const before = settings();
  expect(before).toHaveLength(2);
  desk.setFree(id, setAt(id, 0).id);
  expect(setAt(id, 0).hold.kind).toBe('free');
  expect(settings()).toEqual(before);
  // Set by hand, a rig that was the reference stays where it stood.
  const { id: set, settings: ofAlder } = setAt(id, 0);
  desk.changeSet(id, set, { settings: { ...ofAlder, isoMark: '1600' } });
  desk.setReference(id, set, CEDAR);
  expect(settings()[0]).toEqual({ ...ofAlder, isoMark: '1600' });
});

test('a set is added like the last, or from the first rig where there is none', () => {
  const id = made({ list: null });
  const first = desk.addSet(id);
  expect(first).toBe(setAt(id, 0).id);
  expect(desk.prepared(id).value?.problems).toEqual([]);
  desk.changeSet(id, setAt(id, 0).id, { intent: 'one', repeats: 3 });
  desk.addSet(id);
  expect(setAt(id, 1)).toMatchObject({ intent: '', repeats: 3 });
  desk.copySet(id, setAt(id, 0).id);
  expect(intents(id)).toEqual(['one', 'one', '']);
  desk.change(id, (plan) => moveSet(plan, setAt(id, 0).id, 2));
  expect(intents(id)).toEqual(['one', '', 'one']);
  const none = made({ rigs: [], list: null });
  expect(desk.addSet(none)).toBe(null);
});

test('the copy of an invented plan is its owner’s own', () => {
  desk.put(practicePlan(), false);
  const id = PRACTICE_PLAN_ID;
  expect(planOf(id).invented).toBe(true);
  const copy = desk.copy(id, 'Mine');
  if (isFault(copy)) throw new Error(copy.rule);
  expect(planOf(copy)).toMatchObject({ name: 'Mine', invented: false });
  expect(desk.plans.value.map(({ name }) => name)[0]).toBe('Mine');
});

test('what the store refuses is kept and said, and written when it can be', async () => {
  let refuses = true;
  const { putPlans } = store;
  store = {
    ...store,
    putPlans: async (plans) => {
      if (refuses) throw new StoreFailure('full', 'no room');
      await putPlans(plans);
    },
  };
  desk = newDesk();
  const id = made();
  await reaches('not-saved');
  expect(planOf(id).sets).toHaveLength(3);
  refuses = false;
  saving.retry();
  await saved();
  expect(await store.plans()).toEqual([planOf(id)]);
});

test('a capped series is made for one rig, rests by its sets alone, and refuses what cannot be timed', () => {
  const id = desk.makeSeries({
    name: 'How it warms',
    note: 'Off for an hour',
    rig: CEDAR,
    isoMark: '6400',
  });
  if (isFault(id)) throw new Error(id.rule);
  const plan = planOf(id);
  expect(plan.rigs).toEqual([CEDAR]);
  expect(plan.note).toBe('Off for an hour');
  expect(plan.rest).toEqual({ kind: 'none' });
  expect(plan.sets.map(({ restBeforeS }) => restBeforeS)).toEqual([null, null, 240, 480, 960]);
  expect(plan.sets.every(({ settings }) => settings.isoMark === '6400')).toBe(true);
  expect(desk.prepared(id).peek()?.problems.filter(stopsStart)).toEqual([]);
  gear.value = {
    ...PRACTICE_GEAR,
    bodies: PRACTICE_GEAR.bodies.map((body) => ({
      ...body,
      time: { ...body.time, longest: '15', stepFrom1s: 'third' as const },
      bulb: { kind: 'none' as const },
    })),
  };
  const before = desk.plans.value;
  expect(desk.makeSeries({ name: 'x', note: '', rig: CEDAR, isoMark: '6400' })).toMatchObject({
    rule: 'no-long-time',
  });
  expect(desk.plans.value).toBe(before);
});
