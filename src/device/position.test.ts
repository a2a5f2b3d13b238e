import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { browserPosition } from './position.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const found = (altitude: number | null) =>
  ({
    coords: { latitude: 54.9, longitude: -3.6, altitude, accuracy: 38 },
  }) as GeolocationPosition;

test('a position comes with its height where the phone knows it', async () => {
  for (const altitude of [12.5, null]) {
    const position = browserPosition({ getCurrentPosition: (done) => done(found(altitude)) });
    expect(await position.ask()).toEqual({
      kind: 'here',
      latDeg: 54.9,
      lonDeg: -3.6,
      heightM: altitude,
      withinM: 38,
    });
    expect(vi.getTimerCount()).toBe(0);
  }
});

test.each([
  [1, 'refused'],
  [2, 'not-found'],
  [3, 'timeout'],
] as const)('fault %i is an answer: %s', async (code, kind) => {
  const position = browserPosition({
    getCurrentPosition: (_, refuse) => refuse?.({ code } as GeolocationPositionError),
  });
  expect(await position.ask()).toEqual({ kind });
});

test('a browser without the service says so', async () => {
  expect(await browserPosition(undefined).ask()).toEqual({ kind: 'absent' });
});

test('a question that nobody answers ends after a minute, and a late answer changes nothing', async () => {
  let answer: PositionCallback = () => undefined;
  const position = browserPosition({
    getCurrentPosition: (done) => {
      answer = done;
    },
  });
  const asked = position.ask();
  await vi.advanceTimersByTimeAsync(59_999);
  expect(vi.getTimerCount()).toBe(1);
  await vi.advanceTimersByTimeAsync(1);
  expect(await asked).toEqual({ kind: 'timeout' });
  answer(found(null));
  expect(await asked).toEqual({ kind: 'timeout' });
});
