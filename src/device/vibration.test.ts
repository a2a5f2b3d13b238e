import { expect, it, vi } from 'vitest';
import { phoneVibration } from './vibration.ts';

it('tells the cues apart as the tones do: one short, two short, one long', () => {
  const vibrate = vi.fn((_pattern: number[]) => true);
  const vibration = phoneVibration({ vibrate });
  for (const kind of ['lead-in', 'near-end', 'end'] as const)
    expect(vibration.vibrate(kind)).toBe(true);
  const pulses = vibrate.mock.calls.map(([pattern]) => pattern.filter((_, i) => i % 2 === 0));
  expect(pulses.map((each) => each.length)).toEqual([1, 2, 1]);
  const [leadIn = [], nearEnd = [], end = []] = pulses;
  expect(Math.min(...end)).toBeGreaterThan(3 * Math.max(...leadIn, ...nearEnd));
});

it('says so where the phone refuses or has no motor', () => {
  expect(phoneVibration({ vibrate: () => false }).vibrate('end')).toBe(false);
  const none = phoneVibration({});
  expect([none.supported, none.vibrate('end')]).toEqual([false, false]);
});
