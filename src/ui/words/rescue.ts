import type { Alike, InEachLanguage } from './alike.ts';
import { rescue as de } from './rescue.de.ts';
import { rescue as en } from './rescue.en.ts';
import { useWords } from './words.ts';

const RESCUE: InEachLanguage<typeof en> = { en, de };

/** Words of getting out what the app cannot open, which come with their part. */
export const useRescueWords = (): Alike<typeof en> => RESCUE[useWords().language];
