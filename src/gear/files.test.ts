import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName, nextNumber } from './files.ts';

const files = { prefix: 'ALD_', digits: 4, rollsOverAfter: 9999, rawAndJpegShareNumber: true };

describe('the file counter of a body', () => {
  it('pads to the digits of the body and never cuts', () => {
    expect(fileName(files, 42)).toBe('ALD_0042');
    expect(fileName({ ...files, digits: 2 }, 123)).toBe('ALD_123');
  });

  it('starts again at 1 after its last number', () => {
    expect(nextNumber(files, 9998, 1)).toBe(9999);
    expect(nextNumber(files, 9999, 1)).toBe(1);
    expect(nextNumber(files, 9998, 4)).toBe(3);
    expect(nextNumber(files, 1, -1)).toBe(9999);
  });

  it('counts two a frame where raw and JPEG have a number each', () => {
    expect(nextNumber({ ...files, rawAndJpegShareNumber: false }, 10, 3)).toBe(16);
  });

  it('comes back to where it was for any number of frames', () => {
    const number = fc.integer({ min: 1, max: 9999 });
    fc.assert(
      fc.property(number, fc.integer({ min: 0, max: 100_000 }), (start, frames) => {
        const there = nextNumber(files, start, frames);
        expect(there).toBeGreaterThanOrEqual(1);
        expect(there).toBeLessThanOrEqual(9999);
        expect(nextNumber(files, there, -frames)).toBe(start);
      }),
    );
  });
});
