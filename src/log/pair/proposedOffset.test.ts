import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../../gear/practice.ts';
import type { Offset, Rig } from '../../gear/rig.ts';
import { type Assembled, assemble } from '../../gear/rig.ts';
import { causesBetween, levelsOf } from '../../plan/causes.ts';
import { differencesFrom, evenUp } from '../../plan/differences.ts';
import type { SetId } from '../../plan/ids.ts';
import { mulberry32, seed } from '../../science/mulberry32.ts';
import { fNumber, iso, seconds, stops } from '../../science/units.ts';
import { agreementOf, proposedOffsets, type SetLeftOver } from './proposedOffset.ts';

const left = (
  set: string,
  over: number,
  sigma = 0.05,
  more: Partial<SetLeftOver> = {},
): SetLeftOver => ({
  set: set as SetId,
  isoMark: '100',
  referenceIsoMark: '100',
  stops: stops(over),
  sigma: stops(sigma),
  glass: stops(0),
  ...more,
});

describe('leftovers over sets', () => {
  it('agree, differ, say nothing or are too few', () => {
    expect(agreementOf([left('a', 0.3)]).says).toBe('too-few');
    expect(agreementOf([left('a', 0.3), left('a', 0.3)]).says).toBe('too-few');
    expect(agreementOf([left('a', 0.3), left('b', 0.34)]).says).toBe('offset');
    expect(agreementOf([left('a', 0.3), left('b', -0.3)]).says).toBe('differ');
    expect(agreementOf([left('a', 0.02), left('b', -0.03)]).says).toBe('nothing');
  });

  it('weigh by how sure they are', () => {
    const found = agreementOf([left('a', 0.3, 0.05), left('b', 0.4, 0.1)]);
    // (0.3 x 4 + 0.4) / 5
    expect(found).toMatchObject({ says: 'offset', mean: expect.closeTo(0.32, 9) });
  });

  // Seen to fail: with one degree of freedom too many in the chi-square 1.4 in 100 of two sets differ.
  it('that only scatter by their widths are called unlike 5 times in a hundred', () => {
    const random = mulberry32(seed(7));
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    for (const sets of [2, 3, 6]) {
      let differ = 0;
      let nothing = 0;
      const evenings = 4000;
      for (let i = 0; i < evenings; i += 1) {
        const drawn = Array.from({ length: sets }, (_, n) => left(`${n}`, 0.05 * normal()));
        const { says } = agreementOf(drawn);
        if (says === 'differ') differ += 1;
        if (says === 'nothing') nothing += 1;
      }
      expect(differ / evenings).toBeGreaterThan(0.035);
      expect(differ / evenings).toBeLessThan(0.065);
      // Of rigs that give what their marks say, five in a hundred are told to have an offset.
      expect(nothing / (evenings - differ)).toBeGreaterThan(0.935);
      expect(nothing / (evenings - differ)).toBeLessThan(0.965);
    }
  });
});

describe('the offset that is proposed', () => {
  const [one, two] = PRACTICE_GEAR.rigs;
  const parts = (rig: Rig | undefined): Assembled => {
    const found = rig && assemble(PRACTICE_GEAR, rig.id);
    if (!found) throw new Error('a rig');
    return found;
  };
  const offset = (value: number): Offset => ({
    isoMark: null,
    stops: stops(value),
    date: '2027-01-01',
    how: 'wall',
  });
  const maybe = fc.option(fc.double({ min: -1, max: 1, noNaN: true }));

  // Seen to fail: without the glass in `before`.
  it('makes the prediction what was needed, whatever was known before', () => {
    fc.assert(
      fc.property(
        maybe,
        maybe,
        maybe,
        maybe,
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (theirs, ours, glassA, glassB, needs) => {
          const side = (
            assembled: Assembled,
            known: number | null,
            glass: number | null,
          ): Assembled => ({
            ...assembled,
            rig: { ...assembled.rig, offsets: known === null ? [] : [offset(known)] },
            lens: { ...assembled.lens, transmissionStops: glass === null ? null : stops(glass) },
          });
          const settings = {
            fMark: '8',
            isoMark: '100',
            time: { kind: 'dial', mark: '60' },
          } as const;
          const exact = { n: fNumber(8), t: seconds(60), s: iso(100) };
          const predicted = (reference: Assembled, other: Assembled) => {
            const levels = [reference, other].map((assembled) =>
              levelsOf({ assembled, settings, exact }),
            );
            const [a, b] = levels;
            if (!a || !b) throw new Error('two');
            return differencesFrom(
              causesBetween(a, b),
              { reference, other },
              { kind: 'same-exposure' },
            );
          };
          const reference = side(parts(one), theirs, glassA);
          const other = side(parts(two), ours, glassB);
          const before = predicted(reference, other);
          const glass = before.lines.find(({ cause }) => cause === 'transmission');
          const needed = evenUp(before).stops + needs;
          const sets = ['a', 'b'].map((set) =>
            left(set, needed - evenUp(before).stops, 0.05, {
              glass: glass?.counted && glass.difference.known ? glass.difference.stops : stops(0),
            }),
          );
          const agreed = agreementOf(sets);
          if (agreed.says !== 'offset') throw new Error(agreed.says);
          const proposed = proposedOffsets(reference.rig, other.rig, agreed, {
            on: '2027-02-12',
            how: 'leftovers',
          });
          const after = predicted(
            { ...reference, rig: proposed.reference ?? reference.rig },
            { ...other, rig: proposed.other },
          );
          expect(evenUp(after).stops).toBeCloseTo(needed, 9);
          expect(proposed.reference === null).toBe(theirs !== null);
        },
      ),
    );
  });
});
