import type { Alike, InEachLanguage } from './alike.ts';
import { pair as de } from './pair.de.ts';
import { pair as en } from './pair.en.ts';
import { useWords, type Words } from './words.ts';

const PAIR: InEachLanguage<typeof en> = { en, de };

/** All words and those of a pair of rigs, planned or made, which come later than the first script. */
export type PairWords = Words & { readonly pair: Alike<typeof en> };

export const withPair = (words: Words): PairWords => ({ ...words, pair: PAIR[words.language] });

export const usePairWords = (): PairWords => withPair(useWords());
