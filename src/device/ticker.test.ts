import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { FakePage } from '../../test/contract/fakes/page.ts';
import { pageTicker } from './ticker.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

it('paints at once, then four to ten times a second, and no more once it is ended', () => {
  const paint = vi.fn();
  const end = pageTicker(new FakePage()).start(paint);
  expect(paint).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(10_000);
  const [least, most] = [4 * 10, 10 * 10];
  expect(paint.mock.calls.length).toBeGreaterThan(least);
  expect(paint.mock.calls.length).toBeLessThanOrEqual(most);
  paint.mockClear();
  end();
  vi.advanceTimersByTime(10_000);
  expect(paint).not.toHaveBeenCalled();
});

it('rests while hidden, and paints at once when the page is back', () => {
  const page = new FakePage();
  const paint = vi.fn();
  pageTicker(page).start(paint);
  page.hide();
  paint.mockClear();
  vi.advanceTimersByTime(10_000);
  expect(paint).not.toHaveBeenCalled();
  page.show();
  expect(paint).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(1000);
  expect(paint.mock.calls.length).toBeGreaterThan(4);
});

it('does not paint twice as often after several returns', () => {
  const page = new FakePage();
  const paint = vi.fn();
  pageTicker(page).start(paint);
  page.show(['visibilitychange', 'pageshow', 'focus']);
  paint.mockClear();
  vi.advanceTimersByTime(1000);
  expect(paint).toHaveBeenCalledTimes(5);
});

it('started while hidden it waits for the return, and ended while hidden it stays away', () => {
  const page = new FakePage();
  page.hide();
  const paint = vi.fn();
  const end = pageTicker(page).start(paint);
  expect(paint).not.toHaveBeenCalled();
  end();
  page.show();
  vi.advanceTimersByTime(1000);
  expect(paint).not.toHaveBeenCalled();
});
