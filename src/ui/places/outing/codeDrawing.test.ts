import decodeQR from 'qr/decode.js';
import { expect, test } from 'vitest';
import { codeDrawing } from './codeDrawing.ts';

const TEXT = 'EVENFALL CLOCK FRAME 3F9A27C1';

/** Fills the rectangles of the path as a screen does, `scale` pixels a module. */
function painted({ side, path }: ReturnType<typeof codeDrawing>, scale: number) {
  const width = side * scale;
  const data = new Uint8Array(width * width * 3).fill(250);
  for (const [, ...figures] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    const [x = 0, y = 0, length = 0] = figures.map(Number);
    for (let row = y * scale; row < (y + 1) * scale; row += 1) {
      data.fill(17, (row * width + x * scale) * 3, (row * width + (x + length) * scale) * 3);
    }
  }
  return { width, height: width, data };
}

/** Mutation: `v1` left out of a run's start, or runs that begin one module late. */
test('what is drawn reads back as its text', () => {
  expect(decodeQR(painted(codeDrawing(TEXT), 6))).toBe(TEXT);
});

/** Mutation: a quiet zone of 2. */
test('a code keeps its quiet zone and stays small', () => {
  const { side, path } = codeDrawing(TEXT);
  // Version 2 has 25 modules (ISO/IEC 18004), and 4 are quiet on each side.
  expect(side).toBe(25 + 2 * 4);
  const starts = [...path.matchAll(/M(\d+) (\d+)h(\d+)/g)].map((run) => run.slice(1).map(Number));
  expect(starts.length).toBeGreaterThan(50);
  for (const [x = 0, y = 0, length = 0] of starts) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(4);
    expect(Math.max(x + length, y + 1)).toBeLessThanOrEqual(side - 4);
  }
});
