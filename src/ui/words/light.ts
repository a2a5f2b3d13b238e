import { light as en } from './light.en.ts';
import { useWords, type Words } from './words.ts';

const LIGHT: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words and those of the Light place, which come with it, later than the first script. */
export type LightWords = Words & { readonly light: typeof en };

export function useLightWords(): LightWords {
  const words = useWords();
  return { ...words, light: LIGHT[words.language] };
}
