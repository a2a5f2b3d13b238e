import { describe, expect, it } from 'vitest';
import { canonical, contentHash } from './content.ts';

describe('content as one text', () => {
  it('is the same whatever the order of the fields, absent or undefined', () => {
    const one = { b: [1, { d: 2, c: null }], a: 'x' };
    const other = { a: 'x', b: [1, { c: null, d: 2, e: undefined }] };
    expect(canonical(one)).toBe('{"a":"x","b":[1,{"c":null,"d":2}]}');
    expect(canonical(other)).toBe(canonical(one));
  });

  it('keeps the order of a list and the type of a value', () => {
    expect(canonical([1, 2])).not.toBe(canonical([2, 1]));
    expect(canonical({ a: 1 })).not.toBe(canonical({ a: '1' }));
    expect(canonical({ a: null })).not.toBe(canonical({}));
  });
});

describe('the hash of content', () => {
  // Worked out by a second, separate program from the published constants.
  it.each([
    [1, 'af63ac4c86019afc'],
    ['foobar', '6477f76a9c2fba7e'],
    [[1, { b: 2, a: null }], 'b3818da0a7165160'],
  ])('of %j is %s', (value, hash) => {
    expect(contentHash(value)).toBe(hash);
  });
});
