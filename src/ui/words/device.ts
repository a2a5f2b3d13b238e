import type { Alike, InEachLanguage } from './alike.ts';
import { device as de } from './device.de.ts';
import { device as en } from './device.en.ts';
import { useWords } from './words.ts';

const DEVICE: InEachLanguage<typeof en> = { en, de };

/** The words of what holds for this device, which come later than the first script. */
export const useDeviceWords = (): Alike<typeof en> => DEVICE[useWords().language];
