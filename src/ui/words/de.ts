import { sentences as english } from './en.ts';
import { figures } from './figures.de.ts';
import type { Words } from './words.ts';

/** German. A part of its own: it comes when German is chosen, before the first screen is drawn. */
export const de: Words = { language: 'de', format: figures, ...english };
