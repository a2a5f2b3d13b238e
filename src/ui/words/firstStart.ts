import { firstStart as en } from './firstStart.en.ts';
import { useWords, type Words } from './words.ts';

const FIRST_START: Readonly<Record<Words['language'], typeof en>> = { en };

/** The words of the first screen, which come with it. */
export const useFirstStartWords = (): typeof en => FIRST_START[useWords().language];
