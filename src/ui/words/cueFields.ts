import { cueFields as en } from './cueFields.en.ts';
import { useWords, type Words } from './words.ts';

const CUE_FIELDS: Readonly<Record<Words['language'], typeof en>> = { en };

/** The words of choosing the cues, which come later than the first script. */
export const useCueFieldWords = (): typeof en => CUE_FIELDS[useWords().language];
