import type { Fault } from '../../gear/read.ts';
import { faultSentences } from './faults.en.ts';
import { createFormats } from './formats.ts';
import { gear } from './gear.en.ts';
import { outing } from './outing.en.ts';
import { parts } from './parts.en.ts';
import { shell } from './shell.en.ts';

/** English. */
export const en = {
  format: createFormats({
    decimalPoint: '.',
    months: ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'],
    date: (day, month, year) => `${day} ${month} ${year}`,
  }),
  /** What is wrong with a value, in one sentence. */
  fault: ({ rule, params }: Fault): string =>
    faultSentences[rule]?.(params) ?? `This cannot be taken: ${rule}. Enter it in another way.`,
  gear,
  outing,
  parts,
  shell,
};
