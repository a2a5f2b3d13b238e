import { expect, test } from 'vitest';
import { stopsBetweenTimes } from './exposure.ts';
import { handTimingStops, wallTime } from './longExposure.ts';
import { must, refuse } from './refusal.ts';
import { duration, seconds } from './units.ts';

// Reference, section 2.2: 0.2 s cost 0.138 stop at 2 s, 0.036 at 8 s, 0.0096 at 30 s.
test.each([
  [2, 0.2, 0.138, 3],
  [8, 0.2, 0.036, 3],
  [30, 0.2, 0.0096, 4],
  [240, 1, 0.006, 3],
])('at %d s an error of %d s costs %d stop', (t, error, cost, digits) => {
  const stops = handTimingStops(seconds(t), seconds(error));
  expect(stops).toBeCloseTo(cost, digits);
  expect(stops).toBeCloseTo(stopsBetweenTimes(seconds(t), seconds(t + error)), 12);
});

test('a dark frame doubles the exposure, not the waits', () => {
  const run = { t: seconds(64), frames: 3, settle: duration(2), write: duration(1) };
  const open = must(wallTime({ ...run, darkFrame: false }));
  const closed = must(wallTime({ ...run, darkFrame: true }));
  expect(closed - open).toBe(3 * 64);
});

test.each([0, -1, 1.5, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d frames', (frames) => {
  const run = { t: seconds(1), settle: duration(0), write: duration(0), darkFrame: false };
  expect(wallTime({ ...run, frames })).toEqual(refuse('frame-count-not-whole'));
});
