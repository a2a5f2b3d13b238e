import type { InEachLanguage } from './alike.ts';
import { useLogDeskWords } from './logDesk.ts';
import { pictures as de } from './pictures.de.ts';
import { pictures as en } from './pictures.en.ts';

const PICTURES: InEachLanguage<typeof en> = { en, de };

/** All words of the Log at the desk, with those of frames and their pictures. */
export function usePictureWords() {
  const words = useLogDeskWords();
  return { ...words, pictures: PICTURES[words.language] };
}

export type PictureWords = ReturnType<typeof usePictureWords>;
