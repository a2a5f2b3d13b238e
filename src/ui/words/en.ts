import { cues } from './cues.en.ts';
import { figures } from './figures.en.ts';
import { log } from './log.en.ts';
import { outing } from './outing.en.ts';
import { parts } from './parts.en.ts';
import { safety } from './safety.en.ts';
import { shell } from './shell.en.ts';
import { spoken } from './spoken.en.ts';
import type { Words } from './words.ts';

/** The English sentences of the first script. */
export const sentences = { cues, log, outing, parts, safety, shell, spoken };

/** English. */
export const en: Words = { language: 'en', format: figures, ...sentences };
