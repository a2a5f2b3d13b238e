import type { Language } from '../../app/preferences.ts';
import type { Alike } from './alike.ts';
import type { sentences } from './en.ts';
import type { Formats } from './formats.ts';
import { wordsInUse } from './inUse.ts';

/**
 * Every sentence on the screen, in one language. The English dictionary is the
 * pattern: a sentence that another one lacks does not compile. A sentence with a
 * figure in it is a function.
 *
 * One file per place and language (`outing.en.ts`, `outing.de.ts`), merged in `en.ts` and `de.ts`.
 * A place that loads later than the first script brings its words with it, in every language:
 * `gear.ts` is the pattern.
 */
export interface Words extends Alike<typeof sentences> {
  readonly language: Language;
  readonly format: Formats;
}

/** The words of the language in use: a component that reads them is drawn anew when it changes. */
export const useWords = (): Words => wordsInUse.value;
