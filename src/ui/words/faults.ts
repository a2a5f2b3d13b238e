import type { Alike, InEachLanguage } from './alike.ts';
import { faults as de } from './faults.de.ts';
import { faults as en } from './faults.en.ts';
import type { Words } from './words.ts';

const FAULTS: InEachLanguage<typeof en> = { en, de };

/** What is wrong with what was entered or with a file. Only the desk enters and reads: it comes later. */
export const faultWords = ({ language }: Words): Alike<typeof en> => FAULTS[language];
