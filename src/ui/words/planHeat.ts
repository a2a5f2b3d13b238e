import type { Alike, InEachLanguage } from './alike.ts';
import type { PlanWords } from './plan.ts';
import { usePlanWords } from './plan.ts';
import { planHeat as de } from './planHeat.de.ts';
import { planHeat as en } from './planHeat.en.ts';

const HEAT: InEachLanguage<typeof en> = { en, de };

/** All words of the Plan place and those of its heat, rests and timeline. */
export type HeatWords = PlanWords & { readonly heat: Alike<typeof en> };

export function useHeatWords(): HeatWords {
  const words = usePlanWords();
  return { ...words, heat: HEAT[words.language] };
}
