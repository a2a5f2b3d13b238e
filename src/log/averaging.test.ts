import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { assumedScene } from '../light/scene.ts';
import type { FrameKey } from '../plan/ids.ts';
import { averagingOf, type PairedFrame } from './averaging.ts';

/** A fade of 0.12 stop a minute, as in the handbook's worked example. */
const DUSK_012 = assumedScene(skyOf((minute) => 8 - 0.12 * minute, 120));

/** Frames in the order of some letters, A the reference, at some minutes; each rig once a pass. */
function paired(letters: string, minutes: readonly number[]): readonly PairedFrame[] {
  const turns = { A: 0, B: 0 };
  return [...letters].map((letter, place): PairedFrame => {
    const rig = letter as 'A' | 'B';
    turns[rig] += 1;
    return {
      key: `${letter}${turns[rig]}` as FrameKey,
      isReference: letter === 'A',
      pass: turns[rig],
      midMs: minutesOn(minutes[place] ?? Number.NaN),
    };
  });
}

const weightsOf = (frames: readonly PairedFrame[]) => averagingOf(frames, 'light', DUSK_012);

describe('how a pair’s figure is taken over its frames', () => {
  it('is a plain mean where the times are a mirror, evenly spaced or not', () => {
    // Worked: 0, 5, 6.5, 11.5 min leave nothing.
    const { averaging, weights } = weightsOf(paired('ABBA', [0, 5, 6.5, 11.5]));
    expect(averaging).toEqual({ kind: 'plain' });
    expect([...weights.values()]).toEqual([-0.5, 0.5, 0.5, -0.5]);
  });

  it('is weighted where they are skewed, with the price in noise', () => {
    // Worked: 0, 5, 6.5, 9 min at -0.12 stop a minute leave A +0.150 over B, at a price of 1.02.
    const { averaging, weights } = weightsOf(paired('ABBA', [0, 5, 6.5, 9]));
    if (averaging.kind !== 'weighted') throw new Error(averaging.kind);
    expect(averaging.leaves).toBeCloseTo(-0.15, 3);
    expect(averaging.price).toBeCloseTo(1.02, 2);
    expect(weights.size).toBe(4);
  });

  it('weights A B A B, which no plain mean evens out, at a price of 1.12', () => {
    const { averaging } = weightsOf(paired('ABAB', [0, 2, 4, 6]));
    if (averaging.kind !== 'weighted') throw new Error(averaging.kind);
    expect(averaging.price).toBeCloseTo(1.12, 2);
    // Worked: A +0.240 over B.
    expect(averaging.leaves).toBeCloseTo(-0.24, 3);
  });

  it('says of A B that the drift cannot be told from the rigs', () => {
    expect(weightsOf(paired('AB', [0, 2])).averaging).toEqual({
      kind: 'not-separable',
      price: null,
      leaves: expect.closeTo(-0.24, 3),
    });
  });

  it('does not pay more than twice the noise', () => {
    const { averaging, weights } = weightsOf(paired('ABAB', [0, 20, 1, 21]));
    if (averaging.kind !== 'not-separable') throw new Error(averaging.kind);
    expect(averaging.price).toBeGreaterThan(2);
    expect([...weights.values()]).toEqual([-0.5, 0.5, -0.5, 0.5]);
  });

  it('goes by a usual dusk where nobody knows the sky, and by none on a wall', () => {
    const skewed = paired('ABBA', [0, 5, 6.5, 9]);
    expect(averagingOf(skewed, 'light', null).averaging).toMatchObject({
      kind: 'weighted',
      leaves: expect.closeTo(-0.15, 6),
    });
    expect(averagingOf(skewed, 'flat', null).averaging).toEqual({ kind: 'plain' });
    expect(averagingOf([], 'light', null).weights.size).toBe(0);
  });

  it('takes a steeper dusk more seriously', () => {
    const hardly = paired('ABBA', [0, 5, 6.5, 11.8]);
    expect(weightsOf(hardly).averaging.kind).toBe('plain');
    const steep = averagingOf(hardly, 'light', assumedScene(EVEN_DUSK));
    expect(steep.averaging.kind).toBe('weighted');
  });

  it('weighs to 1 and -1, and leaves nothing of a steady fade where it weighs', () => {
    const minute = fc.integer({ min: 0, max: 100 });
    const letters = fc.constantFrom('ABBA', 'ABAB', 'ABBABAAB', 'BAAB');
    fc.assert(
      fc.property(letters, fc.array(minute, { minLength: 8, maxLength: 8 }), (order, minutes) => {
        const frames = paired(order, minutes);
        const { averaging, weights } = weightsOf(frames);
        const of = (isReference: boolean) =>
          frames
            .filter((frame) => frame.isReference === isReference)
            .reduce((sum, { key }) => sum + (weights.get(key) ?? 0), 0);
        expect(of(false)).toBeCloseTo(1, 9);
        expect(of(true)).toBeCloseTo(-1, 9);
        const left = frames.reduce(
          (sum, { key }, place) => sum + (weights.get(key) ?? 0) * -0.12 * (minutes[place] ?? 0),
          0,
        );
        if (averaging.kind === 'weighted') {
          expect(left).toBeCloseTo(0, 6);
          expect(averaging.price).toBeLessThanOrEqual(2);
        } else if (averaging.kind === 'plain') {
          expect(Math.abs(left)).toBeLessThanOrEqual(0.02 + 1e-6);
        } else {
          expect(left).toBeCloseTo(averaging.leaves, 4);
        }
      }),
    );
  });
});
