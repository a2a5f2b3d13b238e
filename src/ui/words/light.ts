import type { Alike, InEachLanguage } from './alike.ts';
import { light as de } from './light.de.ts';
import { light as en } from './light.en.ts';
import { useWords, type Words } from './words.ts';

const LIGHT: InEachLanguage<typeof en> = { en, de };

/** All words and those of the Light place, which come with it, later than the first script. */
export type LightWords = Words & { readonly light: Alike<typeof en> };

export function useLightWords(): LightWords {
  const words = useWords();
  return { ...words, light: LIGHT[words.language] };
}
