import type { Alike, InEachLanguage } from './alike.ts';
import { type PlanWords, usePlanWords } from './plan.ts';
import { planOrder as de } from './planOrder.de.ts';
import { planOrder as en } from './planOrder.en.ts';

const ORDER: InEachLanguage<typeof en> = { en, de };

/** All words of the Plan place and those of its order of frames. */
export type OrderWords = PlanWords & { readonly inOrder: Alike<typeof en> };

export function useOrderWords(): OrderWords {
  const words = usePlanWords();
  return { ...words, inOrder: ORDER[words.language] };
}
