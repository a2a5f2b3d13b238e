import { describe, expect, it } from 'vitest';
import { EVEN_DUSK } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, Evening, frame, planOf } from '../../test/evenings/evening.ts';
import { longEvening } from '../../test/evenings/longEvening.ts';
import type { UtcMs } from '../science/units.ts';
import { changeCost, type ListTap } from './changeCost.ts';
import { fold } from './fold.ts';
import { sceneOf, setInHand } from './light.ts';
import { rematches } from './rematch.ts';

const minuteA = (set: string, place: { pass?: number; visit?: number }) =>
  frame(set, A, dialled('8', '64', '100'), place);
const minuteB = (set: string, place: { pass?: number; visit?: number }) =>
  frame(set, B, dialled('8', '60', '100'), place);

/** A B B A of one set, then A B of another. */
const FRAMES = [
  minuteA('one', { visit: 1 }),
  minuteB('one', { visit: 2 }),
  minuteB('one', { pass: 2, visit: 2 }),
  minuteA('one', { pass: 2, visit: 3 }),
  minuteA('two', { visit: 3 }),
  minuteB('two', { visit: 4 }),
];

const costOf = (evening: Evening, tap: ListTap) => {
  const cost = changeCost(evening.state(), tap, evening.now());
  if (!cost) throw new Error('no cost');
  return cost;
};
const walking = () => new Evening(FRAMES, planOf(FRAMES), 'phone', EVEN_DUSK).setUp().shoot();

describe('what a change costs', () => {
  it('swapping the next two: swaps, minutes, and what is left of the pairs', () => {
    // Left: B B A A B. Swapped: B and B change places, which costs nothing.
    const evening = walking();
    const nothing = costOf(evening, { tap: 'swap-next-two', frame: evening.nextKey() });
    expect(nothing.swaps).toBe(0);
    expect(nothing.longerS).toBeCloseTo(0, 6);
    // After one more: B A A B becomes A B A B: B comes off, on and off again.
    evening.shoot();
    const cost = costOf(evening, { tap: 'swap-next-two', frame: evening.nextKey() });
    expect(cost.swaps).toBe(2);
    // 60 s for each swap and 30 s to find the framing again.
    expect(cost.longerS).toBeCloseTo(180, 6);
    expect(cost.pairs.map(({ changed }) => [changed?.set, changed?.other])).toEqual([['one', B]]);
    const [pair] = cost.pairs;
    // As planned A B B A leaves little of the fade; A B A B leaves B later in both passes.
    expect(pair?.changed?.fade).toBeLessThan((pair?.going?.fade ?? Number.NaN) - 0.3);
    expect(pair?.changed?.heat).not.toBeNull();
    expect(pair?.going?.passes).toBe(2);
  });

  it('the fade that it foretells is the one that comes when it is done so', () => {
    const evening = walking().shoot();
    const cost = costOf(evening, { tap: 'swap-next-two', frame: evening.nextKey() });
    const foretold = cost.pairs[0]?.changed?.fade ?? Number.NaN;
    evening.tap({ tap: 'swap-next-two', frame: evening.nextKey() });
    // By the plan's allowances: 90 s a swap, no dial to turn, settling and writing.
    for (let frames = 0; frames < 2; frames += 1) {
      evening.pass(89).untilExpose();
      evening.shoot();
    }
    const [one, , three, four] = evening.state().made;
    const mid = (made: typeof one) => (made?.startedAt.wallMs ?? 0) / 60_000;
    expect(three?.planned.rig).toBe(A);
    expect(four?.planned.rig).toBe(B);
    const [, second] = evening.state().made;
    const real = (-0.2 * (mid(second) - mid(one) + mid(four) - mid(three))) / 2;
    expect(Math.abs(real - foretold)).toBeLessThan(0.2);
  });

  it('dropping a set: shorter, fewer swaps, and a pair that is lost', () => {
    const evening = walking().shoot().shoot().shoot();
    const cost = costOf(evening, { tap: 'drop-set', set: 'two' as never });
    expect(cost.swaps).toBe(-1);
    expect(cost.longerS).toBeLessThan(-200);
    expect(cost.pairs).toHaveLength(1);
    expect(cost.pairs[0]?.going).toMatchObject({ set: 'two', passes: 1 });
    expect(cost.pairs[0]?.changed).toBeNull();
  });

  it('dropping the rest of a set leaves its whole passes', () => {
    const evening = walking().shoot();
    const cost = costOf(evening, { tap: 'drop-set', set: 'one' as never });
    const [pair] = cost.pairs;
    expect([pair?.going?.passes, pair?.changed?.passes]).toEqual([2, 1]);
    // A B alone, of which the second pass would have cancelled the fade.
    expect(Math.abs(pair?.changed?.fade ?? 0)).toBeGreaterThan(Math.abs(pair?.going?.fade ?? 9));
  });

  it('following the light costs the dials that are turned back after it', () => {
    const evening = walking();
    evening.pass(600);
    const state = evening.state();
    const scene = sceneOf(state);
    const hand = setInHand(state);
    if (!scene || !hand) throw new Error('no light');
    const offers = rematches(state, scene, hand, evening.now().wallMs as UtcMs);
    const longer = offers.map(({ dial, rigs }) => [
      dial,
      Math.round(costOf(evening, { tap: 'rematch', set: hand.set.id, rigs }).longerS),
    ]);
    // Both rigs are dialled back for the next set, 15 s each.
    expect(longer).toEqual([
      ['iso', 30],
      ['f-number', 30],
    ]);
  });

  it('says nothing of heat or fade that nobody knows', () => {
    const evening = new Evening(FRAMES).setUp().shoot();
    evening.tap({ tap: 'battery-changed', rig: B });
    const cost = costOf(evening, { tap: 'drop-set', set: 'one' as never });
    expect(cost.pairs[0]?.going).toMatchObject({ fade: null, heat: null });
    expect(changeCost(evening.state(), { tap: 'drop-set', set: 'x' as never }, evening.now())).toBe(
      null,
    );
  });

  it('is quick over two thousand frames still to be made', () => {
    const events = longEvening({
      repeats: 50,
      sets: 20,
      rigs: 2,
      time: '1/10',
      setsLeft: 20,
      tries: 1,
      name: 'Two thousand',
      ended: false,
    });
    const state = fold(events);
    if (!state) throw new Error('nothing to fold');
    const taken: number[] = [];
    for (let round = 0; round < 9; round += 1) {
      const [first] = state.queue;
      if (!first) throw new Error('nothing left');
      const from = performance.now();
      expect(
        changeCost(state, { tap: 'swap-next-two', frame: first.key }, state.startedAt),
      ).not.toBeNull();
      taken.push(performance.now() - from);
    }
    expect(Math.min(...taken)).toBeLessThan(50);
  });
});
