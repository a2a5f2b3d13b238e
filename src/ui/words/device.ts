import { device as en } from './device.en.ts';
import { useWords, type Words } from './words.ts';

const DEVICE: Readonly<Record<Words['language'], typeof en>> = { en };

/** The words of what holds for this device, which come later than the first script. */
export const useDeviceWords = (): typeof en => DEVICE[useWords().language];
