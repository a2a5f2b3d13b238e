import { signal } from '@preact/signals';
import { expect, test } from 'vitest';
import { systemClock } from '../device/clock.ts';
import type { FileToGive, Share } from '../device/share.ts';
import { thingsOf } from '../gear/edit.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { millimetres, pixels } from '../science/units.ts';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createFileDesk } from './files.ts';
import { createGearDesk } from './gear.ts';
import { createGearFiles } from './gearFiles.ts';
import { createKeptGear } from './keptGear.ts';
import { createKeptPlans } from './keptPlans.ts';
import type { LogDesk } from './log.ts';
import { createSaving } from './saving.ts';
import { createSiteDesk } from './sites.ts';
import { createUndo } from './undo.ts';

const OWN = {
  name: 'Rowan 36',
  widthMm: millimetres(36),
  heightMm: millimetres(24),
  pixelsWide: pixels(6000),
  pixelsHigh: pixels(4000),
};
const LENS = { name: 'Rowan 50', focalMm: millimetres(50), widest: '1.4', narrowest: '16' };

let phones = 0;

/** One phone with its own store. What it gives away lands in `given`. */
function phone() {
  phones += 1;
  const phoneId = phones;
  let ids = 0;
  const store = memoryStore({ makeId: () => 'writer', reader: eventReader });
  const given: FileToGive[] = [];
  const saving = createSaving();
  const newId = () => {
    ids += 1;
    return `phone-${phoneId}-${ids}`;
  };
  const kept = createKeptGear({ store, saving, onFirstOwnBody: () => undefined });
  const desk = { ...kept, ...createGearDesk({ gear: kept, undo: createUndo(), newId }) };
  const clock = systemClock('session');
  const share: Share = {
    offer(file) {
      given.push(file);
      return { way: 'share', name: file.name, give: async () => ({ done: 'shared' }) };
    },
  };
  const log = {
    outings: signal([]),
    events: async () => [],
    refresh: async () => undefined,
    reread: () => undefined,
  } as unknown as LogDesk;
  const files = createGearFiles({
    gear: kept,
    files: createFileDesk({
      store,
      share,
      clock,
      saving,
      gear: kept,
      plans: createKeptPlans({ store, gear: kept.gear, saving }),
      sites: createSiteDesk({ store, saving }),
      log,
      run: { journal: signal(null), open: async () => undefined, leave: () => undefined },
      version: 'test',
      onFirstOwnBody: () => undefined,
    }),
    share,
    clock,
    version: 'test',
  });
  const write = () => {
    files.offer();
    const content = given.at(-1)?.content;
    if (typeof content !== 'string') throw new Error('no file was offered');
    return content;
  };
  return { desk, files, write, store };
}

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));

test('gear goes from one phone to another, without the invented; a second time changes nothing', async () => {
  const one = phone();
  one.desk.apply(thingsOf(PRACTICE_GEAR).map((thing) => ({ thing, deleted: false })));
  const body = one.desk.addBody(OWN);
  const lens = one.desk.addLens(LENS);
  if (typeof body !== 'string' || typeof lens !== 'string') throw new Error('refused');
  one.desk.addRig(body, lens);
  const other = phone();
  const file = new Blob([one.write()]);
  expect(await other.files.take(file)).toMatchObject({
    how: 'taken',
    brings: { bodies: 1, lenses: 1, rigs: 1 },
  });
  expect(other.desk.gear.value.bodies.map(({ name }) => name)).toEqual(['Rowan 36']);
  const before = other.desk.gear.value;
  expect(await other.files.take(file)).toMatchObject({
    brings: { bodies: 0, lenses: 0, rigs: 0, copies: 0 },
  });
  expect(other.desk.gear.value).toEqual(before);
});

test('the same body changed on both phones comes beside ours, never over it', async () => {
  const one = phone();
  const body = one.desk.addBody(OWN);
  if (typeof body !== 'string') throw new Error('refused');
  const other = phone();
  await other.files.take(new Blob([one.write()]));
  one.desk.changeBody(body, { name: 'Theirs' });
  other.desk.changeBody(body, { name: 'Ours' });
  expect(await other.files.take(new Blob([one.write()]))).toMatchObject({
    brings: { bodies: 1, copies: 1 },
  });
  expect(other.desk.gear.value.bodies.map(({ name }) => name)).toEqual(['Ours', 'Theirs']);
});

test('what was deleted here stays deleted', async () => {
  const one = phone();
  const body = one.desk.addBody(OWN);
  if (typeof body !== 'string') throw new Error('refused');
  const file = new Blob([one.write()]);
  one.desk.deleteBody(body);
  await settle();
  expect(await one.files.take(file)).toMatchObject({
    how: 'taken',
    brings: { bodies: 0, deletedHere: 1 },
  });
});

test('a damaged file changes nothing and names the first fault', async () => {
  const one = phone();
  one.desk.addBody(OWN);
  const text = one.write();
  const other = phone();
  const take = (content: string | Uint8Array<ArrayBuffer>) => other.files.take(new Blob([content]));
  expect(await take(text.slice(0, -5))).toMatchObject({
    how: 'refused',
    fault: { rule: 'not-json' },
  });
  expect(await take(text.replace('"widthMm":36', '"widthMm":0'))).toMatchObject({
    how: 'refused',
    fault: { path: 'gear.bodies[0].widthMm' },
  });
  expect(await take(new Uint8Array([0xff, 0xfe, 0x00]))).toEqual({
    how: 'unreadable',
    why: 'not-text',
  });
  expect(other.desk.gear.value.bodies).toEqual([]);
});
