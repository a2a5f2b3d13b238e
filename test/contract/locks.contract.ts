import type { OutingLocks } from '../../src/device/locks.ts';
import { type Case, same } from './check.ts';

/** Gives the locks as each of two windows sees them, and an outing that nobody has. */
export type TwoWindows = () => {
  readonly one: OutingLocks;
  readonly other: OutingLocks;
  readonly outing: string;
};

const never = new AbortController().signal;

/** Who may write an outing. */
export const locksCases: readonly Case<TwoWindows>[] = [
  {
    name: 'the first window has the outing, the second sees that it is elsewhere',
    async run(two) {
      const { one, other, outing } = two();
      same(await one.claim(outing), 'owner', 'first');
      same(await other.claim(outing), 'elsewhere', 'second');
      same(await one.claim(outing), 'owner', 'first again');
      same(await one.takeOver(outing, never), 'owner', 'first, without a wait');
    },
  },
  {
    name: 'two that ask at once: exactly one has it',
    async run(two) {
      const { one, other, outing } = two();
      const answers = await Promise.all([one.claim(outing), other.claim(outing)]);
      same(answers.sort(), ['elsewhere', 'owner'], 'answers');
    },
  },
  {
    name: 'a window that asks twice at once does not lose against itself',
    async run(two) {
      const { one, outing } = two();
      const answers = await Promise.all([one.claim(outing), one.claim(outing)]);
      same(answers, ['owner', 'owner'], 'answers');
    },
  },
  {
    name: 'another outing is free',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      same(await other.claim(`${outing}-next`), 'owner', 'another outing');
    },
  },
  {
    name: 'a window that waits gets the outing when it is given up',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      let answer = 'waiting';
      const taking = other.takeOver(outing, never).then((got) => {
        answer = got;
      });
      await new Promise((done) => setTimeout(done, 50));
      same(answer, 'waiting', 'while it is held');
      one.release(outing);
      await taking;
      same(answer, 'owner', 'after it was given up');
      same(await one.claim(outing), 'elsewhere', 'the one that gave it up');
    },
  },
  {
    name: 'a window that stops waiting does not get it later',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      const stop = new AbortController();
      const taking = other.takeOver(outing, stop.signal);
      stop.abort();
      same(await taking, 'elsewhere', 'the wait');
      one.release(outing);
      same(await one.takeOver(outing, never), 'owner', 'the first again');
    },
  },
  {
    name: 'giving up what one has not is no error',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      other.release(outing);
      same(await other.claim(outing), 'elsewhere', 'second');
    },
  },
];
