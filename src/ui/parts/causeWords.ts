import type { Cause } from '../../plan/causes.ts';
import type { PairWords } from '../words/pair.ts';

/** 'Offset, transmission, fade': in a line of text no word needs to break. */
export const causeWords = ({ pair }: PairWords, causes: readonly Cause[]): string =>
  causes
    .map((cause, index) => (index === 0 ? pair.causes[cause] : pair.causes[cause].toLowerCase()))
    .join(', ')
    .replaceAll('\u00ad', '');
