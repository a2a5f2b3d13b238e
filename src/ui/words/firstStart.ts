import type { Alike, InEachLanguage } from './alike.ts';
import { firstStart as de } from './firstStart.de.ts';
import { firstStart as en } from './firstStart.en.ts';
import { useWords } from './words.ts';

const FIRST_START: InEachLanguage<typeof en> = { en, de };

/** The words of the first screen, which come with it. */
export const useFirstStartWords = (): Alike<typeof en> => FIRST_START[useWords().language];
