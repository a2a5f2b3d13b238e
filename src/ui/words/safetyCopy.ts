import type { Alike, InEachLanguage } from './alike.ts';
import { safetyCopy as de } from './safetyCopy.de.ts';
import { safetyCopy as en } from './safetyCopy.en.ts';
import { useWords } from './words.ts';

const COPIES: InEachLanguage<typeof en> = { en, de };

/** Words of the copies that leave after each set, which come with their part. */
export const useSafetyCopyWords = (): Alike<typeof en> => COPIES[useWords().language];
