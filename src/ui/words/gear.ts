import { faultWords } from './faults.ts';
import { gear as en } from './gear.en.ts';
import { useWords, type Words } from './words.ts';

const GEAR: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words and those of the Gear place, which come with it, later than the first script. */
export function useGearWords() {
  const words = useWords();
  return { ...words, ...faultWords(words), gear: GEAR[words.language] };
}
