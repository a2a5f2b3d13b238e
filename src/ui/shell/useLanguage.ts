import { useState } from 'preact/hooks';
import type { Language } from '../../app/preferences.ts';
import { speak } from '../words/inUse.ts';
import { useWords } from '../words/words.ts';
import { useApp } from './useApp.ts';

/** The language on the screen, and how to change it: kept only once its words are there. */
export function useLanguage() {
  const { preferences } = useApp();
  const { language } = useWords();
  const [missing, setMissing] = useState(false);
  const choose = async (wanted: Language) => {
    const here = await speak(wanted);
    setMissing(!here);
    if (here) preferences.change({ language: wanted });
  };
  return { language, missing, choose: (wanted: Language) => void choose(wanted) };
}
