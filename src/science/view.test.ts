import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SensorFormat } from './formats.ts';
import { isRefusal, must } from './refusal.ts';
import { distance, micrometres, millimetres, pixels } from './units.ts';
import {
  AT_INFINITY,
  anglesOfView,
  commonCrop,
  edgesWithin,
  type Framing,
  magnificationAt,
  parallaxPixels,
  pixelPitch,
} from './view.ts';

const length = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map(millimetres);
const anyFraming: fc.Arbitrary<Framing> = fc.record({
  format: fc.record({ width: length(2, 300), height: length(2, 300) }),
  focal: length(4, 1000),
  magnification: fc.constant(AT_INFINITY),
});

const format = (width: number, height: number): SensorFormat => ({
  width: millimetres(width),
  height: millimetres(height),
});
const framing = (of: SensorFormat, focal: number): Framing => ({
  format: of,
  focal: millimetres(focal),
  magnification: AT_INFINITY,
});

describe('the common crop', () => {
  test('is a part of both frames', () => {
    fc.assert(
      fc.property(anyFraming, anyFraming, (first, second) => {
        const { ofFirst, ofSecond } = commonCrop(first, second);
        for (const part of [ofFirst, ofSecond]) {
          expect(part).toBeGreaterThan(0);
          expect(part).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  test('changes with the order, and is whole for one framing', () => {
    fc.assert(
      fc.property(anyFraming, anyFraming, (first, second) => {
        expect(commonCrop(first, second).ofFirst).toBe(commonCrop(second, first).ofSecond);
        expect(commonCrop(first, first)).toEqual({ ofFirst: 1, ofSecond: 1 });
      }),
    );
  });

  // Reference, section 4: framed by width 100 % of the 3:2 frame and 88.72 % of the 4:3 frame.
  test('framed by width leaves bands on the 4:3 frame', () => {
    const wide = framing(format(36, 24), 50);
    const tall = framing(format(17.3, 13), (50 * 17.3) / 36);
    const { ofFirst, ofSecond } = commonCrop(wide, tall);
    expect(ofFirst).toBeCloseTo(1, 9);
    expect(ofSecond).toBeCloseTo(0.8872, 4);
    const edges = edgesWithin(wide, tall);
    expect(edges.horizontal).toBeCloseTo(1, 9);
    expect(edges.vertical).toBeCloseTo(0.8872, 4);
  });
});

test('the edges of one frame in another are the inverse the other way', () => {
  fc.assert(
    fc.property(anyFraming, anyFraming, (first, second) => {
      const there = edgesWithin(first, second);
      const back = edgesWithin(second, first);
      expect(there.horizontal * back.horizontal).toBeCloseTo(1, 9);
      expect(there.vertical * back.vertical).toBeCloseTo(1, 9);
    }),
  );
});

test('the diagonal angle is the widest and below 180 degrees', () => {
  fc.assert(
    fc.property(anyFraming, (of) => {
      const angles = anglesOfView(of);
      expect(angles.diagonal).toBeGreaterThan(Math.max(angles.horizontal, angles.vertical));
      expect(angles.diagonal).toBeLessThan(180);
    }),
  );
});

test('nothing is magnified at infinity, and nothing focuses inside the focal length', () => {
  const focal = millimetres(50);
  expect(must(magnificationAt(focal, distance(Number.POSITIVE_INFINITY)))).toBe(0);
  expect(must(magnificationAt(focal, distance(100)))).toBe(1);
  expect(isRefusal(magnificationAt(focal, distance(50)))).toBe(true);
});

describe('parallax', () => {
  const pair = {
    base: millimetres(100),
    focal: millimetres(35),
    pitch: pixelPitch(millimetres(36), pixels(6000)),
    subject: distance(20_000),
    aimedAt: distance(Number.POSITIVE_INFINITY),
  };

  // 100 mm x 35 mm / 20 m = 0.175 mm on the sensor, 29.17 pixels of 6 µm.
  test('is base times focal length over distance, in pixels', () => {
    expect(pair.pitch).toBe(micrometres(6));
    expect(parallaxPixels(pair)).toBeCloseTo(29.1667, 4);
  });

  test('vanishes at the distance aimed at and grows away from it', () => {
    fc.assert(
      fc.property(length(1000, 1e6), fc.double({ min: 1.01, max: 50, noNaN: true }), (at, by) => {
        const aimedAt = distance(at);
        const shift = (subject: number) =>
          parallaxPixels({ ...pair, aimedAt, subject: distance(subject) });
        expect(shift(at)).toBe(0);
        expect(shift(at / by)).toBeGreaterThan(0);
        expect(shift(at * by)).toBeGreaterThan(0);
        expect(shift(at / by)).toBeGreaterThan(shift(at / Math.sqrt(by)));
      }),
    );
  });
});
