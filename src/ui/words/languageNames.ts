import type { Language } from '../../app/preferences.ts';

/** Each language by the name it gives itself, so that whoever reads no other finds it. */
export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = {
  en: 'English',
  de: 'Deutsch',
};
