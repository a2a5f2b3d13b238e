import type { Alike, InEachLanguage } from './alike.ts';
import { faultWords } from './faults.ts';
import { type PairWords, withPair } from './pair.ts';
import { plan as de } from './plan.de.ts';
import { plan as en } from './plan.en.ts';
import { useWords } from './words.ts';

const PLAN: InEachLanguage<typeof en> = { en, de };

/** All words and those of the Plan place, which come with it, later than the first script. */
export type PlanWords = PairWords &
  ReturnType<typeof faultWords> & { readonly plan: Alike<typeof en> };

export function usePlanWords(): PlanWords {
  const words = useWords();
  return { ...withPair(words), ...faultWords(words), plan: PLAN[words.language] };
}
