import { cues } from './cues.en.ts';
import { createFormats } from './formats.ts';
import { log } from './log.en.ts';
import { outing } from './outing.en.ts';
import { parts } from './parts.en.ts';
import { safety } from './safety.en.ts';
import { shell } from './shell.en.ts';

/** English. */
export const en = {
  language: 'en' as const,
  format: createFormats({
    decimalPoint: '.',
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    date: (day, month, year) => `${day} ${month} ${year}`,
  }),
  cues,
  log,
  outing,
  parts,
  safety,
  shell,
};
