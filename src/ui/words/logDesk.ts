import type { InEachLanguage } from './alike.ts';
import { faultWords } from './faults.ts';
import { logDesk as de } from './logDesk.de.ts';
import { logDesk as en } from './logDesk.en.ts';
import { withPair } from './pair.ts';
import { useWords } from './words.ts';

const DESK: InEachLanguage<typeof en> = { en, de };

/** All words, those of the Log at the desk included, which come later than the first script. */
export function useLogDeskWords() {
  const words = useWords();
  return {
    ...withPair(words),
    ...faultWords(words),
    log: { ...words.log, ...DESK[words.language] },
  };
}

export type LogDeskWords = ReturnType<typeof useLogDeskWords>;
