import type { InEachLanguage } from './alike.ts';
import { useJudgingWords } from './judging.ts';
import { report as de } from './report.de.ts';
import { report as en } from './report.en.ts';

const REPORT: InEachLanguage<typeof en> = { en, de };

/** All words by which a pair is judged, with those of the report. */
export function useReportWords() {
  const words = useJudgingWords();
  return { ...words, report: REPORT[words.language] };
}
