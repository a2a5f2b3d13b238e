import { expect, test } from 'vitest';
import { firstValues } from '../science/heatFit.ts';
import { must } from '../science/refusal.ts';
import { doublings, kelvins } from '../science/sensorUnits.ts';
import { seconds } from '../science/units.ts';
import { NOTHING_MEASURED } from './bodyHeat.ts';
import { firstHeat } from './firstHeat.ts';
import { heatFields } from './parse.ts';

/** A body of 500 s and 1.4 doublings, seen at rest and at steps of its time constant. */
const heats = {
  first: doublings(0),
  second: doublings(1.4 * (1 - Math.exp(-1))),
  third: doublings(1.4 * (1 - Math.exp(-2))),
};

test('first values become figures of a body, with range and source', () => {
  const from = 'capped series of 2027-02-12, first values';
  const found = firstHeat(must(firstValues(heats, seconds(500))), kelvins(6.5), from);
  expect(found.tau).toMatchObject({ usual: 500, from });
  expect(found.exposing).toMatchObject({ usual: 9.1, from });
  const { tau, exposing } = found;
  expect(tau && tau.least < 500 && tau.most > 500).toBe(true);
  // 0.0625 doublings either way, by the closed form of the error for q = 1/e.
  expect(exposing?.least).toBeCloseTo(8.7, 9);
  expect(exposing?.most).toBeCloseTo(9.5, 9);
  expect(heatFields.tau(tau)).toEqual(tau);
  expect(heatFields.exposing(exposing)).toEqual(exposing);
  expect({ ...NOTHING_MEASURED, ...found }.doubling).toBeNull();
});
