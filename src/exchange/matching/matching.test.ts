import { expect, it } from 'vitest';
import { type Card, cardOf, type Kind } from '../../../test/evenings/card.ts';
import { mulberry32, type Random, seed } from '../../science/mulberry32.ts';
import { matchFiles } from './matchFiles.ts';
import type { Matching } from './types.ts';

const pick = <T>(random: Random, from: readonly T[]): T =>
  from[Math.floor(random() * from.length)] as T;

function kindFor(from: number): Kind {
  const random = mulberry32(seed(from));
  const clock = pick(random, ['near', 'near', 'minutes', 'hour', 'day', 'anything'] as const);
  const clockFrames = pick(random, ['none', 'start', 'both'] as const);
  const numbers = pick(random, ['none', 'right', 'one-forgotten'] as const);
  return {
    name: `${clock} clock, clock frames ${clockFrames}, numbers ${numbers}`,
    clock,
    clockFrames,
    numbers,
    named: random() < 0.75,
    missing: pick(random, [0, 0.04, 0.1]),
    extra: pick(random, [0, 0.05, 0.15]),
    gainsSPerHour: pick(random, [0, 1, -1, 3]),
    writesEnd: random() < 0.4,
    cards: pick(random, ['one', 'one', 'two', 'raw-and-jpeg'] as const),
    otherEvening: random() < 0.3,
  };
}

/** What came of an evening, frame by frame. */
function judged({ truth }: Card, { frames }: Matching) {
  const right = frames.map(({ made, file }) => {
    const files = truth.get(made) ?? [];
    return file === null ? files.length === 0 : files.includes(file);
  });
  return {
    frames: frames.length,
    silent: frames.filter(({ sure }, place) => sure && !right[place]).length,
    asked: frames.filter(({ sure }) => !sure).length,
    askedRight: frames.filter(({ sure }, place) => !sure && right[place]).length,
  };
}

/** The largest share of frames that may be asked about. */
const ASKED_AT_MOST = 0.1;

// Seen to fail with SURE_MARGIN of 3, with SURE_PAIR of 40, with clocks that are off by an hour held for
// impossible, with file numbers always believed, and with frames without a file not asked about, or
// only where a free file lies within a second. The figures of evidence.ts were chosen with these
// evenings at hand. On 1000 never looked at before (seeds from 50 001) two frames of 10 770 were silent
// errors, and 7.4 % were asked about.
it('makes no silent error in 520 evenings of all kinds, and asks seldom', () => {
  const wrong: string[] = [];
  const sum = { frames: 0, asked: 0, askedRight: 0 };
  for (let n = 1; n <= 520; n += 1) {
    const kind = kindFor(n);
    const card = cardOf(kind, n);
    const found = judged(card, matchFiles(card.run, card.frames, card.files));
    if (found.silent > 0) wrong.push(`${n}: ${found.silent} of ${found.frames}, ${kind.name}`);
    sum.frames += found.frames;
    sum.asked += found.asked;
    sum.askedRight += found.askedRight;
  }
  expect(wrong).toEqual([]);
  const said = `asked about ${sum.asked} of ${sum.frames} frames, ${sum.askedRight} of them rightly guessed`;
  expect(sum.asked / sum.frames, said).toBeLessThan(ASKED_AT_MOST);
}, 60_000);
