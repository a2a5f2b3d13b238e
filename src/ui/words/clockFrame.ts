import type { Alike, InEachLanguage } from './alike.ts';
import { clockFrame as de } from './clockFrame.de.ts';
import { clockFrame as en } from './clockFrame.en.ts';
import { useWords } from './words.ts';

const CLOCK_FRAMES: InEachLanguage<typeof en> = { en, de };

/** Words of the clock that is photographed with each body, which come with their part. */
export const useClockFrameWords = (): Alike<typeof en> => CLOCK_FRAMES[useWords().language];
