import type { OutingId } from './ids.ts';

/** Letters of an outing's code (our choice): 32 bits of its random id, so that two are hardly alike. */
const LETTERS = 8;
const GROUP = 4;

const lettersOf = (outing: OutingId): string =>
  outing
    .replace(/[^0-9a-z]/gi, '')
    .slice(0, LETTERS)
    .toUpperCase();

/** The short name of an outing on a photograph: the first letters of its id, in groups: '3F9A 27C1'. */
export const outingCode = (outing: OutingId): string =>
  lettersOf(outing).replace(new RegExp(`(.{${GROUP}})(?=.)`), '$1 ');

/**
 * What the code beside the clock says: what this picture is and of which outing.
 *
 * It stands still on purpose. With the second in it, it would be drawn anew each second, and an
 * exposure across the change would show two codes on top of each other, which no decoder reads;
 * figures across the change still read, as one second or the next. So the second is in the figures
 * alone. The letters are those of the alphanumeric mode of ISO/IEC 18004, which keeps the code small.
 */
export const clockFrameText = (outing: OutingId): string =>
  `EVENFALL CLOCK FRAME ${lettersOf(outing)}`;
