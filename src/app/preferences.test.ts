import { expect, test } from 'vitest';
import { memoryStore } from '../store/memory.ts';
import { eventReader } from './eventReader.ts';
import { createPreferences, startLanguage } from './preferences.ts';
import { createSaving } from './saving.ts';

const settle = () => new Promise((resolve) => setTimeout(resolve, 5));
const newStore = () => memoryStore({ makeId: () => 'writer', reader: eventReader });

test('a device that asks for dark screens starts by night, until the user chooses', async () => {
  const store = newStore();
  const open = () =>
    createPreferences({ store, saving: createSaving(), startsDark: true, startsIn: 'en' });
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
  const preferences = createPreferences({
    store,
    saving: createSaving(),
    startsDark: false,
    startsIn: 'en',
  });
  await preferences.load();
  expect(preferences.current.value).toEqual({
    theme: 'day',
    bySun: false,
    dim: true,
    language: 'en',
    welcomed: false,
    cues: { sound: true, vibration: true, speech: false, voice: '', silent: false },
    keys: true,
    headset: false,
  });
});

test('what was chosen of the cues comes back, and what is no choice is left', async () => {
  const store = newStore();
  const open = () =>
    createPreferences({ store, saving: createSaving(), startsDark: false, startsIn: 'en' });
  const first = open();
  await first.load();
  const cues = { sound: false, vibration: true, speech: true, voice: 'near', silent: true };
  first.change({ cues, keys: false, headset: true });
  await settle();
  const later = open();
  await later.load();
  expect(later.current.value).toMatchObject({ cues, keys: false, headset: true });
  await store.putSetting('preferences', { cues: { sound: 'loud', speech: true, voice: 7 } });
  const odd = open();
  await odd.load();
  expect(odd.current.value.cues).toEqual({
    sound: true,
    vibration: true,
    speech: true,
    voice: '',
    silent: false,
  });
});

/** Seen to fail with the whole tag compared, and with the first tag alone. */
test('the language is the first that the browser asks for and the app has', () => {
  expect(startLanguage(['de-AT', 'en'])).toBe('de');
  expect(startLanguage(['fr', 'en-GB', 'de'])).toBe('en');
  expect(startLanguage(['fr', 'de'])).toBe('de');
  expect(startLanguage(['fr'])).toBe('en');
  expect(startLanguage([])).toBe('en');
});
