import type { Fault } from '../../gear/read.ts';
import { faultSentences } from './faults.en.ts';
import { createFormats } from './formats.ts';
import { log } from './log.en.ts';
import { outing } from './outing.en.ts';
import { pair } from './pair.en.ts';
import { parts } from './parts.en.ts';
import { shell } from './shell.en.ts';

/** English. */
export const en = {
  language: 'en' as const,
  format: createFormats({
    decimalPoint: '.',
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    date: (day, month, year) => `${day} ${month} ${year}`,
  }),
  /** What is wrong with a value, in one sentence. */
  fault: ({ rule, params }: Fault): string =>
    faultSentences[rule]?.(params) ?? `This cannot be taken: ${rule}. Enter it in another way.`,
  /** Why a file was not taken, with the first fault and its place. */
  fileFault: ({ rule, params, path }: Fault): string => {
    const sentence = faultSentences[rule]?.(params) ?? `It breaks a rule: ${rule}.`;
    return `Nothing was taken from the file, and nothing here has changed. ${path === '' ? '' : `At ${path}: `}${sentence}`;
  },
  log,
  outing,
  pair,
  parts,
  shell,
};
