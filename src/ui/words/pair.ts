import { pair as en } from './pair.en.ts';
import { useWords, type Words } from './words.ts';

const PAIR: Readonly<Record<Words['language'], typeof en>> = { en };

/** All words and those of a pair of rigs, planned or made, which come later than the first script. */
export type PairWords = Words & { readonly pair: typeof en };

export const withPair = (words: Words): PairWords => ({ ...words, pair: PAIR[words.language] });

export const usePairWords = (): PairWords => withPair(useWords());
