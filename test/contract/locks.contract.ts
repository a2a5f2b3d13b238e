import type { OutingLocks } from '../../src/device/locks.ts';
import { type Case, same } from './check.ts';

/** Gives the locks as each of two windows sees them, and an outing that nobody has. */
export type TwoWindows = () => {
  readonly one: OutingLocks;
  readonly other: OutingLocks;
  readonly outing: string;
};

/** Who may write an outing. */
export const locksCases: readonly Case<TwoWindows>[] = [
  {
    name: 'the first window has the outing, the second sees that it is elsewhere',
    async run(two) {
      const { one, other, outing } = two();
      same(await one.claim(outing), 'owner', 'first');
      same(await other.claim(outing), 'elsewhere', 'second');
      same(await one.claim(outing), 'owner', 'first again');
      same(await one.ask(outing), 'owner', 'first, without a question');
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
    name: 'a window that is asked finishes first and gives the outing up',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      const order: string[] = [];
      one.onAsked(async (asked) => {
        same(asked, outing, 'what is asked for');
        await new Promise((done) => setTimeout(done, 50));
        order.push('finished');
        return true;
      });
      same(await other.ask(outing), 'owner', 'the one that asked');
      same([...order, 'taken'], ['finished', 'taken'], 'order');
      same(await one.claim(outing), 'elsewhere', 'the one that gave it up');
    },
  },
  {
    name: 'a window that holds what is not saved keeps the outing, and can be asked again',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      let given = false;
      one.onAsked(async () => given);
      same(await other.ask(outing), 'kept', 'the first question');
      same(await one.claim(outing), 'owner', 'the one that was asked');
      given = true;
      same(await other.ask(outing), 'owner', 'the second question');
    },
  },
  {
    name: 'a window where nobody answers for the outing keeps it',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      same(await other.ask(outing), 'kept', 'the question');
    },
  },
  {
    name: 'an outing that nobody has needs no answer',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      one.release(outing);
      same(await other.ask(outing), 'owner', 'the question');
      same(await other.ask(outing), 'owner', 'its own');
    },
  },
  {
    name: 'a window that loses the outing to a thief hears of it, and the thief has it',
    async run(two) {
      const { one, other, outing } = two();
      await one.claim(outing);
      const lost: string[] = [];
      one.onStolen((stolen) => lost.push(stolen));
      same(await other.steal(outing), 'owner', 'the thief');
      await new Promise((done) => setTimeout(done, 50));
      same(lost, [outing], 'what the first heard');
      same(await one.claim(outing), 'elsewhere', 'the first');
      one.release(outing);
      same(await one.claim(outing), 'elsewhere', 'the first, having given up what it has not');
    },
  },
  {
    name: 'a window that watches hears that the outing has moved on',
    async run(two) {
      const { one, other, outing } = two();
      const heard = new Promise<string>((hear) => other.onWritten(hear));
      one.tellWritten(outing);
      same(await heard, outing, 'what was heard');
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
