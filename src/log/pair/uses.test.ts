import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MEASURES, type Measured, type Measures } from './measures.ts';
import { type Limits, NEEDS, USES, USUAL_LIMITS, verdictsOf } from './uses.ts';

const alike = (value = 0): Measured => ({ known: true, value, least: value, most: value });
const measures = (changed: Partial<Measures> = {}): Measures => ({
  ...(Object.fromEntries(MEASURES.map((measure) => [measure, alike()])) as Measures),
  ...changed,
});
const answer = (use: string, given: Measures, limits: Limits = USUAL_LIMITS) =>
  verdictsOf(given, limits).find((each) => each.use === use)?.fit;

const finite = fc.double({ min: -5, max: 5, noNaN: true });
const span = fc.tuple(finite, finite, finite).map((three): Measured => {
  const [least, value, most] = three.sort((a, b) => a - b);
  return { known: true, least: least ?? 0, value: value ?? 0, most: most ?? 0 };
});
const anyMeasures = fc
  .array(fc.oneof(span, fc.constant<Measured>({ known: false, why: { what: 'heat' } })), {
    minLength: MEASURES.length,
    maxLength: MEASURES.length,
  })
  .map((found) => Object.fromEntries(MEASURES.map((m, i) => [m, found[i]])) as unknown as Measures);

describe('a verdict', () => {
  it('is the one of the issue: noise may be compared, sharpness may not', () => {
    const given = measures({
      'light-per-area': alike(0.09),
      heat: alike(0.1),
      'depth-of-field': alike(0.7),
    });
    expect(answer('noise', given)).toBe('fit');
    expect(answer('sharpness', given)).toBe('not-fit');
  });

  // Seen to fail: with `nearest > limit` turned into `farthest > limit`.
  it('cannot be told where the span lies across the limit, and where something is unknown', () => {
    expect(
      answer(
        'brightness',
        measures({ rendered: { known: true, value: 0.08, least: 0.02, most: 0.14 } }),
      ),
    ).toBe('untold');
    expect(answer('noise', measures({ heat: { known: false, why: { what: 'heat' } } }))).toBe(
      'untold',
    );
  });

  it('is no where one thing lies beyond, whatever else is unknown', () => {
    const given = measures({ heat: { known: false, why: { what: 'heat' } }, iso: alike(-1) });
    expect(answer('noise', given)).toBe('not-fit');
  });

  it('leaves out what its user does not look at', () => {
    const given = measures({ parallax: { known: false, why: { what: 'parallax' } } });
    expect(answer('sharpness', given)).toBe('untold');
    expect(answer('sharpness', given, { ...USUAL_LIMITS, parallax: null })).toBe('fit');
    const nothing = Object.fromEntries(MEASURES.map((m) => [m, null])) as unknown as Limits;
    for (const { fit: says } of verdictsOf(given, nothing)) expect(says).toBe('untold');
  });

  it('takes figures as they are shown: 0.104 reads 0.10 and is within 0.1', () => {
    expect(answer('brightness', measures({ rendered: alike(0.104) }))).toBe('fit');
    expect(answer('brightness', measures({ rendered: alike(0.106) }))).toBe('not-fit');
  });

  it('never turns worse by a wider limit, nor knows which of the two is the reference', () => {
    fc.assert(
      fc.property(anyMeasures, fc.constantFrom(...USES), (given, use) => {
        const wide = Object.fromEntries(MEASURES.map((m) => [m, 10])) as unknown as Limits;
        const now = answer(use, given);
        if (now === 'fit') expect(answer(use, given, wide)).toBe('fit');
        expect(answer(use, given, wide)).not.toBe('not-fit');
        const turned = Object.fromEntries(
          MEASURES.map((m) => {
            const found = given[m];
            return [
              m,
              found.known
                ? { known: true, value: -found.value, least: -found.most, most: -found.least }
                : found,
            ];
          }),
        ) as unknown as Measures;
        expect(answer(use, turned)).toBe(now);
      }),
    );
  });

  it('looks at every measure in one use at least', () => {
    expect(new Set(USES.flatMap((use) => NEEDS[use]))).toEqual(new Set(MEASURES));
  });
});
