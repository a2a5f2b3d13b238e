import { cost as en } from './cost.en.ts';
import { useWords, type Words } from './words.ts';

const COST: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words and those of what a change in mid-outing costs, which come later than the first script. */
export function useCostWords() {
  const words = useWords();
  return { ...words, cost: COST[words.language] };
}

export type CostWords = ReturnType<typeof useCostWords>;
