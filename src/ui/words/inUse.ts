import { type ReadonlySignal, signal } from '@preact/signals';
import type { Language } from '../../app/preferences.ts';
import { en } from './en.ts';
import type { Words } from './words.ts';

/** English is in the first script; the others lie beside it in the offline store. */
const DICTIONARIES: Readonly<Record<Language, () => Words | Promise<Words>>> = {
  en: () => en,
  de: async () => (await import('./de.ts')).de,
};

const used = signal(en);
let wanted: Language = 'en';

/** The words in use. */
export const wordsInUse: ReadonlySignal<Words> = used;

/**
 * Puts the words of a language to use, unless another one was asked for meanwhile.
 *
 * @returns false if their part is not on the device: the words in use stay.
 */
export async function speak(language: Language): Promise<boolean> {
  wanted = language;
  try {
    const words = await DICTIONARIES[language]();
    if (wanted === language) {
      // The voices are looked up by it.
      document.documentElement.lang = language;
      used.value = words;
    }
    return true;
  } catch {
    return false;
  }
}
