import { faultWords } from './faults.ts';
import { logDesk as en } from './logDesk.en.ts';
import { withPair } from './pair.ts';
import { useWords, type Words } from './words.ts';

const DESK: Readonly<Record<Words['language'], typeof en>> = { en };

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
