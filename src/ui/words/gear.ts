import type { InEachLanguage } from './alike.ts';
import { faultWords } from './faults.ts';
import { gear as de } from './gear.de.ts';
import { gear as en } from './gear.en.ts';
import { useWords } from './words.ts';

const GEAR: InEachLanguage<typeof en> = { en, de };

/** All words and those of the Gear place, which come with it, later than the first script. */
export function useGearWords() {
  const words = useWords();
  return { ...words, ...faultWords(words), gear: GEAR[words.language] };
}
