import type { Cause } from '../../plan/causes.ts';
import type { Words } from '../words/words.ts';

/** 'Offset, transmission, fade' */
export const causeWords = ({ plan }: Words, causes: readonly Cause[]): string =>
  causes
    .map((cause, index) => (index === 0 ? plan.causes[cause] : plan.causes[cause].toLowerCase()))
    .join(', ');
