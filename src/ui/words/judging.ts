import type { InEachLanguage } from './alike.ts';
import { judging as de } from './judging.de.ts';
import { judging as en } from './judging.en.ts';
import { useLogDeskWords } from './logDesk.ts';

const JUDGING: InEachLanguage<typeof en> = { en, de };

/** All words of the Log at the desk, with those by which a pair is judged. */
export function useJudgingWords() {
  const words = useLogDeskWords();
  return { ...words, judging: JUDGING[words.language] };
}

export type JudgingWords = ReturnType<typeof useJudgingWords>;
