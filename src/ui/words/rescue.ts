import { rescue as en } from './rescue.en.ts';
import { useWords, type Words } from './words.ts';

const RESCUE: Readonly<Record<Words['language'], typeof en>> = { en };

/** Words of getting out what the app cannot open, which come with their part. */
export const useRescueWords = (): typeof en => RESCUE[useWords().language];
