import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SessionId } from '../outing/ids.ts';
import type { Instant } from '../outing/instant.ts';
import { systemClock } from './clock.ts';

const session = 'session-1' as SessionId;
const zone = process.env['TZ'];

beforeEach(() => void vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  if (zone === undefined) Reflect.deleteProperty(process.env, 'TZ');
  else process.env['TZ'] = zone;
});

describe('the clock', () => {
  it('gives what the journal takes', () => {
    vi.setSystemTime(Date.UTC(2027, 1, 12, 17, 30));
    const now: Instant = systemClock(session).now();
    expect(now).toMatchObject({ wallMs: Date.UTC(2027, 1, 12, 17, 30), session });
  });

  it.each([
    ['Europe/London', Date.UTC(2027, 1, 12, 17), 0],
    ['Europe/London', Date.UTC(2027, 6, 12, 17), 60],
    ['America/St_Johns', Date.UTC(2027, 1, 12, 17), -210],
    ['Pacific/Chatham', Date.UTC(2027, 1, 12, 17), 825],
  ])('is ahead of UTC in %s as its zone says', (name, wallMs, offsetMin) => {
    process.env['TZ'] = name;
    vi.setSystemTime(wallMs);
    const now = systemClock(session).now();
    expect(now).toMatchObject({ offsetMin, zone: name });
    // -0 would come back from a file as 0.
    expect(Object.is(now.offsetMin, -0)).toBe(false);
  });

  it('asks for the zone where it is cheap to have, each time', () => {
    let zoneHere = 'Europe/London';
    vi.stubGlobal('Temporal', { Now: { timeZoneId: () => zoneHere } });
    const clock = systemClock(session);
    expect(clock.now().zone).toBe('Europe/London');
    zoneHere = 'Europe/Paris';
    expect(clock.now().zone).toBe('Europe/Paris');
  });

  it('the steady clock goes on when the wall clock is set back', () => {
    const clock = systemClock(session);
    const before = clock.now();
    vi.advanceTimersByTime(5000);
    vi.setSystemTime(before.wallMs - 3_600_000);
    const after = clock.now();
    expect(after.wallMs - before.wallMs).toBe(-3_600_000);
    expect(after.monoMs - before.monoMs).toBeCloseTo(5000);
  });
});
