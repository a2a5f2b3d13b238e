import { expect, test } from 'vitest';
import { memoryStore } from '../store/memory.ts';
import { createDrafts } from './drafts.ts';
import { eventReader } from './eventReader.ts';
import { createPreferences } from './preferences.ts';
import { createSaving } from './saving.ts';

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));
const newStore = () => memoryStore({ makeId: () => 'writer', reader: eventReader });

test('a device that asks for dark screens starts by night, until the user chooses', async () => {
  const store = newStore();
  const open = () => createPreferences({ store, saving: createSaving(), startsDark: true });
  const first = open();
  await first.load();
  expect(first.current.value.theme).toBe('night');
  first.change({ theme: 'day' });
  expect(first.current.value.theme).toBe('day');
  await settle();
  const later = open();
  await later.load();
  expect(later.current.value).toEqual({ ...first.current.value, theme: 'day' });
});

test('wishes of another version are taken one by one, or left', async () => {
  const store = newStore();
  await store.putSetting('preferences', { theme: 'sepia', dim: true, language: 'xx', more: 1 });
  const preferences = createPreferences({ store, saving: createSaving(), startsDark: false });
  await preferences.load();
  expect(preferences.current.value).toEqual({
    theme: 'day',
    bySun: false,
    dim: true,
    language: 'en',
    welcomed: false,
  });
});

test('what was entered of a new body outlives a restart, and ends when it is saved', async () => {
  const store = newStore();
  const open = () => createDrafts({ store, saving: createSaving() });
  const first = open();
  first.change('newBody', { name: 'Rowan', widthMm: 36 });
  await settle();
  const later = open();
  await later.load();
  expect(later.current.value.newBody).toMatchObject({
    name: 'Rowan',
    widthMm: 36,
    pixelsHigh: null,
  });
  later.clear('newBody');
  expect(later.current.value.newBody.name).toBe('');
});

test('a draft of another shape is left, the others are taken', async () => {
  const store = newStore();
  await store.putSetting('drafts', {
    newBody: { name: 7 },
    newLens: { name: 'Rowan 50', focalMm: 50, widest: '', narrowest: '' },
  });
  const drafts = createDrafts({ store, saving: createSaving() });
  await drafts.load();
  expect(drafts.current.value.newBody.name).toBe('');
  expect(drafts.current.value.newLens.focalMm).toBe(50);
});
