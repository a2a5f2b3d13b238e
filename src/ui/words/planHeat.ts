import type { PlanWords } from './plan.ts';
import { usePlanWords } from './plan.ts';
import { planHeat as en } from './planHeat.en.ts';
import type { Words } from './words.ts';

const HEAT: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words of the Plan place and those of its heat, rests and timeline. */
export type HeatWords = PlanWords & { readonly heat: typeof en };

export function useHeatWords(): HeatWords {
  const words = usePlanWords();
  return { ...words, heat: HEAT[words.language] };
}
