import { expect, test } from 'vitest';
import { clockFrameText, outingCode } from './clockFrame.ts';
import type { OutingId } from './ids.ts';

const OUTING = '3f9a27c1d0e84b55a6c7f00912345678' as OutingId;

/** Mutation: seven letters. */
test('an outing is named by the first eight letters of its id, in two groups', () => {
  expect(outingCode(OUTING)).toBe('3F9A 27C1');
});

/** Mutation: the id as it is, with its hyphens. */
test('an id that came from elsewhere gives what letters and figures it has', () => {
  expect(outingCode('3f9a-27c1-d0e8' as OutingId)).toBe('3F9A 27C1');
  expect(outingCode('look-0' as OutingId)).toBe('LOOK 0');
  expect(outingCode('ab' as OutingId)).toBe('AB');
});

/** Mutation: the code in its groups with a line break, which needs a larger code. */
test('the code beside the clock says what it is and of which outing, in the letters of its small mode', () => {
  expect(clockFrameText(OUTING)).toBe('EVENFALL CLOCK FRAME 3F9A27C1');
  expect(clockFrameText(OUTING)).toMatch(/^[0-9A-Z $%*+\-./:]+$/);
});
