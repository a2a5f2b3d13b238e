import { beforeEach, describe, expect, test } from 'vitest';
import { NOTHING_MEASURED } from '../gear/bodyHeat.ts';
import { thingsOf } from '../gear/edit.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Fault, isFault } from '../gear/read.ts';
import { millimetres, pixels, type Stops, seconds, stops } from '../science/units.ts';
import type { Store } from '../store/contract.ts';
import { StoreFailure } from '../store/fault.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createGearDesk } from './gear.ts';
import { createKeptGear } from './keptGear.ts';
import { createSaving } from './saving.ts';
import { createUndo } from './undo.ts';

const OWN = {
  name: 'Rowan 36',
  widthMm: millimetres(36),
  heightMm: millimetres(24),
  pixelsWide: pixels(6000),
  pixelsHigh: pixels(4000),
};
const LENS = { name: 'Rowan 50', focalMm: millimetres(50), widest: '1.4', narrowest: '16' };

let store: Store;
let asked: number;
let ids: number;

function openDesk() {
  const saving = createSaving();
  const undo = createUndo();
  const kept = createKeptGear({
    store,
    saving,
    onFirstOwnBody: () => {
      asked += 1;
    },
  });
  const newId = () => {
    ids += 1;
    return `id-${ids}`;
  };
  const desk = { ...kept, ...createGearDesk({ gear: kept, undo, newId }) };
  return { desk, kept, saving, undo };
}

/** Until everything that was begun has come to rest. */
const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

const made = <T extends string>(result: T | Fault): T => {
  if (isFault(result)) throw new Error(`refused: ${result.rule}`);
  return result;
};

beforeEach(() => {
  store = memoryStore({ makeId: () => 'writer', reader: eventReader });
  asked = 0;
  ids = 0;
});

test('what is added is there after the next start', async () => {
  const { desk } = openDesk();
  const body = made(desk.addBody(OWN));
  const lens = made(desk.addLens(LENS));
  made(desk.addRig(body, lens));
  await settle();
  const later = openDesk().desk;
  await later.load();
  expect(later.gear.value).toEqual(desk.gear.value);
  expect(later.gear.value.bodies[0]).toMatchObject({
    name: 'Rowan 36',
    sign: 'A',
    invented: false,
  });
  expect(later.gear.value.rigs[0]).toMatchObject({ letter: 'A', bodyId: body, lensId: lens });
});

test('an act that breaks a rule changes nothing and says which rule', async () => {
  const { desk } = openDesk();
  const body = made(desk.addBody(OWN));
  const before = desk.gear.value;
  expect(desk.changeBody(body, { widthMm: millimetres(43.8) })).toMatchObject({
    rule: 'pixels-not-of-this-sensor',
  });
  expect(isFault(desk.addBody({ ...OWN, name: '  ' }))).toBe(true);
  expect(desk.gear.value).toBe(before);
  await settle();
  expect((await store.gear()).bodies).toHaveLength(1);
});

test('deleting a body takes its rigs along, and one undo brings all of it back', async () => {
  const { desk, undo } = openDesk();
  const body = made(desk.addBody(OWN));
  const rig = made(desk.addRig(body, made(desk.addLens(LENS))));
  desk.addOffset(rig, { isoMark: null, stops: stops(0.12), date: '2027-02-12', how: 'wall' });
  const before = desk.gear.value;
  desk.deleteBody(body);
  expect(desk.gear.value.bodies).toEqual([]);
  expect(desk.gear.value.rigs).toEqual([]);
  expect(undo.last.value?.deed).toEqual({ act: 'deleted', thing: 'body', name: 'Rowan 36' });
  undo.take();
  expect(desk.gear.value).toEqual(before);
  expect(undo.last.value).toBeNull();
  await settle();
  const later = openDesk().desk;
  await later.load();
  expect(later.gear.value).toEqual(before);
});

test('a figure of how a body warms goes back to its stated range, and comes back by undo', () => {
  const { desk, undo } = openDesk();
  const id = made(desk.addBody(OWN));
  const from = 'capped series of 2027-02-12';
  const tau = { usual: seconds(510), least: seconds(460), most: seconds(570), from };
  const heat = { ...NOTHING_MEASURED, tau };
  expect(desk.changeBody(id, { heat })).toBeNull();
  desk.forgetHeat(id, 'tau');
  expect(desk.gear.value.bodies[0]?.heat).toEqual(NOTHING_MEASURED);
  undo.take();
  expect(desk.gear.value.bodies[0]?.heat).toEqual(heat);
});

test('an absurd offset is refused, a deleted one comes back in its place', () => {
  const { desk, undo } = openDesk();
  const rig = made(desk.addRig(made(desk.addBody(OWN)), made(desk.addLens(LENS))));
  const offset = { isoMark: '100', date: '2027-02-12', how: '' };
  expect(desk.addOffset(rig, { ...offset, stops: 99 as Stops })).toMatchObject({
    rule: 'out-of-range',
  });
  desk.addOffset(rig, { ...offset, stops: stops(0.1) });
  desk.addOffset(rig, { ...offset, stops: stops(0.2) });
  desk.deleteOffset(rig, 0);
  expect(desk.gear.value.rigs[0]?.offsets.map((each) => each.stops)).toEqual([0.2]);
  undo.take();
  expect(desk.gear.value.rigs[0]?.offsets.map((each) => each.stops)).toEqual([0.1, 0.2]);
});

test('the first body of one’s own is told once, and own things stand first', () => {
  const { desk, kept } = openDesk();
  kept.apply(thingsOf(PRACTICE_GEAR).map((thing) => ({ thing, deleted: false })));
  expect(desk.hasOwn.value).toBe(false);
  expect(asked).toBe(0);
  desk.addBody({ ...OWN, name: 'Zelkova' });
  expect(desk.gear.value.bodies[0]?.name).toBe('Zelkova');
  expect(asked).toBe(1);
  desk.addBody(OWN);
  expect(asked).toBe(1);
});

describe('with a full phone', () => {
  test('nothing is lost: it is kept in order and written when there is room again', async () => {
    let full = true;
    const room = store;
    store = {
      ...room,
      putGear: (things) =>
        full ? Promise.reject(new StoreFailure('full', 'quota')) : room.putGear(things),
    };
    const { desk, saving } = openDesk();
    const body = made(desk.addBody(OWN));
    desk.changeBody(body, { name: 'Renamed' });
    await settle();
    expect(saving.state.value).toMatchObject({ kind: 'not-saved', fault: { kind: 'full' } });
    expect(desk.gear.value.bodies[0]?.name).toBe('Renamed');
    saving.retry();
    await settle();
    expect(saving.state.value.kind).toBe('not-saved');
    full = false;
    saving.retry();
    await settle();
    expect(saving.state.value).toEqual({ kind: 'saved' });
    expect((await room.gear()).bodies.map(({ name }) => name)).toEqual(['Renamed']);
  });
});
