import { expect, test } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { createDrafts, type Drafts } from './drafts.ts';

/** The desk of each start finds what the one before it kept, as the database gives it back. */
function newPhone(found: unknown = undefined) {
  let kept = found;
  return {
    start: () =>
      createDrafts({
        found: structuredClone(kept),
        keep: (drafts) => {
          kept = drafts;
        },
      }),
    lie: (drafts: unknown) => {
      kept = drafts;
    },
    kept: () => kept as Drafts,
  };
}

const ALDER = 'rig-a' as RigId;

test('what was entered is there after the next start, whatever its field would say of it', () => {
  const phone = newPhone();
  const desk = phone.start();
  desk.change('newBody', { name: 'Rowan 36', widthMm: -1 });
  desk.change('newPlan', { rigs: [ALDER], reference: ALDER, list: 'nothing' });
  desk.change('newPlan', { name: 'Dusk' });
  const { current } = phone.start();
  expect(current.value).toEqual(desk.current.value);
  expect(current.value.newPlan).toEqual({
    rigs: [ALDER],
    reference: ALDER,
    list: 'nothing',
    seriesIso: null,
    name: 'Dusk',
  });
  expect(current.value.newBody).toMatchObject({ name: 'Rowan 36', widthMm: -1, heightMm: null });
});

test('one draft is cleared when it has become a thing, and the others stay', () => {
  const phone = newPhone();
  const desk = phone.start();
  const empty = desk.current.value;
  desk.change('newLens', { name: 'Rowan 50' });
  desk.change('newPlan', { rigs: [ALDER] });
  desk.clear('newPlan');
  expect(phone.start().current.value).toEqual({
    ...empty,
    newLens: { ...empty.newLens, name: 'Rowan 50' },
  });
});

test('what another version kept counts thing by thing, if this one could have kept it', () => {
  const phone = newPhone();
  const empty = phone.start().current.value;
  phone.start().change('newSite', { name: 'The spit' });
  const { newSite } = phone.kept();
  for (const newPlan of [
    undefined,
    null,
    [],
    { rigs: [ALDER] },
    { ...empty.newPlan, list: 'a-list-of-tomorrow' },
    { ...empty.newPlan, rigs: ['constructor'] },
    { ...empty.newPlan, colour: 'red' },
  ]) {
    phone.lie({ newSite, newPlan, newThing: { name: 'x' } });
    expect(phone.start().current.value).toEqual({ ...empty, newSite });
  }
  phone.lie('nonsense');
  expect(phone.start().current.value).toEqual(empty);
});
