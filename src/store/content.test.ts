import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameContent } from './content.ts';

const anyValue = fc.jsonValue({ depthSize: 'medium' });

/** The same value with the fields of every object the other way round. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, field]) => [key, turned(field)]),
  );
}

describe('two stored values say the same', () => {
  it('when one went out into a file and came back, in whatever order of fields', () => {
    fc.assert(
      fc.property(anyValue, (value) => {
        expect(sameContent(value, JSON.parse(JSON.stringify(value)))).toBe(true);
        expect(sameContent(turned(value), value)).toBe(true);
      }),
    );
  });

  it('exactly when their canonical texts are equal', () => {
    const canonical = (value: unknown): string =>
      JSON.stringify(value, (_, part: unknown) =>
        typeof part === 'object' && part !== null && !Array.isArray(part)
          ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
          : part,
      );
    // Few and small values, so that equal pairs do come up.
    const small = fc.jsonValue({ maxDepth: 2, depthSize: 'xsmall' });
    fc.assert(
      fc.property(small, small, (a, b) => {
        expect(sameContent(a, b)).toBe(canonical(a) === canonical(b));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    ['a field that is undefined, and none', { a: 1, b: undefined }, { a: 1 }, true],
    ['zero and minus zero', { at: -0 }, { at: 0 }, true],
    ['an unknown number and itself', [Number.NaN], [Number.NaN], true],
    ['an unknown number and zero', [Number.NaN], [0], false],
    ['an empty list and an empty object', [], {}, false],
    ['null and an object', null, {}, false],
    ['a number and its text', 1, '1', false],
    ['fields of other names', { a: 1 }, { b: 1 }, false],
    ['a longer list', [1, 2], [1], false],
    ['a list in another order', [1, 2], [2, 1], false],
  ])('%s', (_, a, b, same) => {
    expect(sameContent(a, b)).toBe(same);
    expect(sameContent(b, a)).toBe(same);
  });
});
