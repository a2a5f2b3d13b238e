import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  blurDisc,
  CIRCLE_DIVISOR,
  circleFromPixels,
  circleOfConfusion,
  depthOfField,
  distanceFromLens,
  entrancePupil,
  type Focused,
  fNumberOfPupil,
  hyperfocal,
  hyperfocalSimple,
} from './focus.ts';
import { cropRatio, diagonal, equivalentFNumber, equivalentFocal } from './formats.ts';
import { must, refuse } from './refusal.ts';
import { distance, fNumber, micrometres, millimetres, ratio } from './units.ts';

const focal = fc.double({ min: 8, max: 600, noNaN: true });
/** Subjects from twice the focal length to ten thousand times. */
const anyLens: fc.Arbitrary<Focused> = fc
  .record({
    focal,
    n: fc.double({ min: 0.9, max: 64, noNaN: true }),
    circle: fc.double({ min: 0.003, max: 0.1, noNaN: true }),
    away: fc.double({ min: 2, max: 1e4, noNaN: true }),
  })
  .map((of) => ({
    focal: millimetres(of.focal),
    n: fNumber(of.n),
    circle: millimetres(of.circle),
    subject: distance(of.focal * of.away),
    closest: null,
  }));

describe('depth of field', () => {
  test('lies around the subject', () => {
    fc.assert(
      fc.property(anyLens, (lens) => {
        const { near, far } = must(depthOfField(lens));
        expect(near).toBeGreaterThan(0);
        expect(near).toBeLessThan(lens.subject);
        expect(far).toBeGreaterThan(lens.subject);
      }),
    );
  });

  test('ends where the blur disc is as large as the circle of confusion', () => {
    fc.assert(
      fc.property(anyLens, (lens) => {
        const { near, far } = must(depthOfField(lens));
        const blurAt = (point: number) =>
          must(blurDisc(lens.focal, lens.n, lens.subject, distance(point))) / lens.circle;
        expect(blurAt(near)).toBeCloseTo(1, 6);
        if (Number.isFinite(far)) expect(blurAt(far)).toBeCloseTo(1, 4);
        else expect(blurAt(far)).toBeLessThanOrEqual(1 + 1e-6);
      }),
    );
  });

  test('reaches from half the hyperfocal distance to infinity when focused there', () => {
    fc.assert(
      fc.property(anyLens, (lens) => {
        const subject = hyperfocal(lens.focal, lens.n, lens.circle);
        const { near, far } = must(depthOfField({ ...lens, subject }));
        expect(near / subject).toBeCloseTo(0.5, 9);
        expect(far).toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });

  test('is the same for equivalent frames', () => {
    const reference = { width: millimetres(36), height: millimetres(24) };
    const body = { width: millimetres(17.3), height: millimetres(13) };
    const crop = cropRatio(reference, body);
    const circle = (of: typeof body) => circleOfConfusion(diagonal(of), CIRCLE_DIVISOR.usual);
    fc.assert(
      fc.property(anyLens, ({ focal: f, n }) => {
        const focal2 = equivalentFocal(f, crop);
        const n2 = equivalentFNumber(n, crop);
        const equal = hyperfocalSimple(focal2, n2, circle(body));
        expect(equal / hyperfocalSimple(f, n, circle(reference))).toBeCloseTo(1, 9);
      }),
    );
  });

  test('is given at the closest focus itself', () => {
    const lens = { focal: millimetres(50), n: fNumber(8), circle: millimetres(0.03) };
    const closest = distance(450);
    expect(depthOfField({ ...lens, subject: closest, closest })).toHaveProperty('near');
  });

  test.each([
    ['at the focal length', { subject: distance(50) }, 'focus-inside-focal-length'],
    [
      'inside the closest focus',
      { subject: distance(300), closest: distance(450) },
      'focus-inside-closest',
    ],
  ])('is refused %s', (_, change, rule) => {
    const lens: Focused = {
      focal: millimetres(50),
      n: fNumber(8),
      circle: millimetres(0.03),
      subject: distance(3000),
      closest: null,
    };
    expect(depthOfField({ ...lens, ...change })).toEqual(refuse(rule));
  });
});

test('an f-number and its pupil lead back to each other', () => {
  fc.assert(
    fc.property(focal, fc.double({ min: 0.9, max: 64, noNaN: true }), (f, n) => {
      const pupil = entrancePupil(millimetres(f), fNumber(n));
      expect(fNumberOfPupil(millimetres(f), pupil)).toBeCloseTo(n, 9);
    }),
  );
});

test('a circle of two pixels of 6 µm is 0.012 mm', () => {
  expect(circleFromPixels(micrometres(6), ratio(2))).toBeCloseTo(0.012, 12);
});

test('a distance from the sensor is the subject plus its image', () => {
  fc.assert(
    fc.property(focal, fc.double({ min: 4, max: 1e4, noNaN: true }), (f, times) => {
      const fromSensor = f * times;
      const s = must(distanceFromLens(distance(fromSensor), millimetres(f)));
      expect((s + (f * s) / (s - f)) / fromSensor).toBeCloseTo(1, 9);
    }),
  );
  const infinite = distance(Number.POSITIVE_INFINITY);
  expect(must(distanceFromLens(infinite, millimetres(50)))).toBe(infinite);
});

describe('the blur disc', () => {
  const lens = [millimetres(50), fNumber(2.8)] as const;
  const infinite = distance(Number.POSITIVE_INFINITY);

  test('is nothing in focus, at infinity too', () => {
    expect(must(blurDisc(...lens, distance(3000), distance(3000)))).toBe(0);
    expect(must(blurDisc(...lens, infinite, infinite))).toBe(0);
  });

  test('at infinity is the limit of ever farther points', () => {
    const limit = must(blurDisc(...lens, distance(3000), infinite));
    expect(must(blurDisc(...lens, distance(3000), distance(1e12)))).toBeCloseTo(limit, 8);
  });
});
