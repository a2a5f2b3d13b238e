import type { InEachLanguage } from './alike.ts';
import { cost as de } from './cost.de.ts';
import { cost as en } from './cost.en.ts';
import { useWords } from './words.ts';

const COST: InEachLanguage<typeof en> = { en, de };

/** All words and those of what a change in mid-outing costs, which come later than the first script. */
export function useCostWords() {
  const words = useWords();
  return { ...words, cost: COST[words.language] };
}

export type CostWords = ReturnType<typeof useCostWords>;
