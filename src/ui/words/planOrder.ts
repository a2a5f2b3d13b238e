import { type PlanWords, usePlanWords } from './plan.ts';
import { planOrder as en } from './planOrder.en.ts';
import type { Words } from './words.ts';

const ORDER: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words of the Plan place and those of its order of frames. */
export type OrderWords = PlanWords & { readonly inOrder: typeof en };

export function useOrderWords(): OrderWords {
  const words = usePlanWords();
  return { ...words, inOrder: ORDER[words.language] };
}
