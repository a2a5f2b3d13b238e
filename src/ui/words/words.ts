import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { en } from './en.ts';

/**
 * Every sentence on the screen, in one language. The English dictionary is the
 * pattern: another language is a value of this type, and a sentence that it lacks
 * does not compile. A sentence with a figure in it is a function.
 *
 * One file per place and language (`outing.en.ts`), merged in `en.ts`. A place that loads later
 * than the first script brings its words with it: `gear.ts` is the pattern.
 */
export type Words = typeof en;

export const WordsContext = createContext<Words>(en);

/** The words of the language in use. */
export const useWords = (): Words => useContext(WordsContext);
