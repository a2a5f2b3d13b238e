import type { Alike, InEachLanguage } from './alike.ts';
import { cueFields as de } from './cueFields.de.ts';
import { cueFields as en } from './cueFields.en.ts';
import { useWords } from './words.ts';

const CUE_FIELDS: InEachLanguage<typeof en> = { en, de };

/** The words of choosing the cues, which come later than the first script. */
export const useCueFieldWords = (): Alike<typeof en> => CUE_FIELDS[useWords().language];
