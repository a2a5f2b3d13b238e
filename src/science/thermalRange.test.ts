import { expect, test } from 'vitest';
import { cornerModels, overCorners, type Ranged, UNMEASURED, usualModel } from './thermalRange.ts';

test('all corners are different, and the value to work with lies among them', () => {
  const corners = cornerModels(UNMEASURED);
  expect(new Set(corners.map((model) => JSON.stringify(model))).size).toBe(32);
  const usual = usualModel(UNMEASURED);
  for (const mode of ['idle', 'exposing', 'live-view'] as const) {
    const plateaus = corners.map(({ plateaus }) => plateaus[mode]);
    expect(Math.min(...plateaus)).toBeLessThan(usual.plateaus[mode]);
    expect(Math.max(...plateaus)).toBeGreaterThan(usual.plateaus[mode]);
  }
});

test('a measured body has one corner, and its range is its value', () => {
  const exactly = <T extends number>({ usual }: Ranged<T>): Ranged<T> => ({
    usual,
    least: usual,
    most: usual,
  });
  const { tau, doubling, exposing, liveView, idle } = UNMEASURED;
  const measured = {
    tau: exactly(tau),
    doubling: exactly(doubling),
    exposing: exactly(exposing),
    liveView: exactly(liveView),
    idle: exactly(idle),
  };
  const found = overCorners(measured, ({ plateaus }) => plateaus.exposing);
  expect(found.least).toBe(found.usual);
  expect(found.most).toBe(found.usual);
});
