import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stopsBetweenFNumbers, stopsBetweenIsos } from './exposure.ts';
import { entrancePupil } from './focus.ts';
import {
  areaStops,
  aspectStops,
  cropRatio,
  cropStops,
  diagonal,
  equivalentFNumber,
  equivalentFocal,
  equivalentIso,
  reversedCrop,
  type SensorFormat,
} from './formats.ts';
import { fNumber, iso, millimetres } from './units.ts';
import { angleOfView } from './view.ts';

const side = fc.double({ min: 2, max: 300, noNaN: true }).map(millimetres);
const anyFormat = fc.record({ width: side, height: side });
const anyFocal = fc.double({ min: 4, max: 1000, noNaN: true }).map(millimetres);
const anyF = fc.double({ min: 0.5, max: 128, noNaN: true }).map(fNumber);

const format = (width: number, height: number): SensorFormat => ({
  width: millimetres(width),
  height: millimetres(height),
});

describe('equivalence', () => {
  test('keeps the entrance pupil and the diagonal angle of view', () => {
    fc.assert(
      fc.property(anyFormat, anyFormat, anyFocal, anyF, (reference, body, focal, n) => {
        const crop = cropRatio(reference, body);
        const focal2 = equivalentFocal(focal, crop);
        const n2 = equivalentFNumber(n, crop);
        expect(entrancePupil(focal2, n2) / entrancePupil(focal, n)).toBeCloseTo(1, 9);
        expect(angleOfView(diagonal(body), focal2)).toBeCloseTo(
          angleOfView(diagonal(reference), focal),
          9,
        );
      }),
    );
  });

  test('renders as bright as the reference', () => {
    fc.assert(
      fc.property(anyFormat, anyFormat, anyF, (reference, body, n) => {
        const crop = cropRatio(reference, body);
        const s = iso(800);
        const light = stopsBetweenFNumbers(n, equivalentFNumber(n, crop));
        const gain = stopsBetweenIsos(s, equivalentIso(s, crop));
        expect(light + gain).toBeCloseTo(0, 9);
      }),
    );
  });

  test('goes back by the reversed ratio', () => {
    fc.assert(
      fc.property(anyFormat, anyFormat, anyFocal, (reference, body, focal) => {
        const crop = cropRatio(reference, body);
        const there = equivalentFocal(focal, crop);
        expect(equivalentFocal(there, reversedCrop(crop)) / focal).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('the crop ratio', () => {
  test('is below 1 for the smaller body, and its inverse the other way', () => {
    const crop = cropRatio(format(36, 24), format(17.3, 13));
    expect(crop).toBeCloseTo(1 / 1.9994, 4);
    expect(cropRatio(format(17.3, 13), format(36, 24)) * crop).toBeCloseTo(1, 12);
  });

  // Reference, section 3: 36x24 against 17.3x13.0, 1.9991 by diagonal and 1.9417 by area.
  test('misstates the light between 3:2 and 4:3', () => {
    const reference = format(36, 24);
    const body = format(17.3, 13);
    expect(cropStops(cropRatio(reference, body))).toBeCloseTo(-1.9991, 4);
    expect(areaStops(reference, body)).toBeCloseTo(-1.9417, 4);
    expect(aspectStops(reference, body)).toBeCloseTo(-0.0574, 4);
  });

  test('tells the light exactly where the aspect ratios agree', () => {
    fc.assert(
      fc.property(anyFormat, fc.double({ min: 0.1, max: 10, noNaN: true }), (reference, by) => {
        const body = format(reference.width * by, reference.height * by);
        expect(aspectStops(reference, body)).toBeCloseTo(0, 9);
      }),
    );
  });
});
