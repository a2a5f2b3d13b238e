import type { Cause } from '../../plan/causes.ts';
import type { PairWords } from '../words/pair.ts';

/** 'Offset, transmission, fade': in a line of text no word needs to break. */
export const causeWords = ({ pair }: PairWords, causes: readonly Cause[]): string =>
  pair.inRow(causes.map((cause) => pair.causes[cause])).replaceAll('\u00ad', '');
