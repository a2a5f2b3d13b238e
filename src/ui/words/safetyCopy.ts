import { safetyCopy as en } from './safetyCopy.en.ts';
import { useWords, type Words } from './words.ts';

const COPIES: Readonly<Record<Words['language'], typeof en>> = { en };

/** Words of the copies that leave after each set, which come with their part. */
export const useSafetyCopyWords = (): typeof en => COPIES[useWords().language];
