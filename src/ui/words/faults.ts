import { faults as en } from './faults.en.ts';
import type { Words } from './words.ts';

const FAULTS: Readonly<Record<Words['language'], typeof en>> = { en };

/** What is wrong with what was entered or with a file. Only the desk enters and reads: it comes later. */
export const faultWords = ({ language }: Words): typeof en => FAULTS[language];
