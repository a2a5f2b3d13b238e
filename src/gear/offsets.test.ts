import { describe, expect, it } from 'vitest';
import { stops } from '../science/units.ts';
import { offsetAt } from './offsets.ts';
import { PRACTICE_GEAR } from './practice.ts';
import type { Offset, Rig } from './rig.ts';

const [bare] = PRACTICE_GEAR.rigs as readonly [Rig];
const offset = (isoMark: string | null, value: number, date: string): Offset => ({
  isoMark,
  stops: stops(value),
  date,
  how: 'wall',
});
const rig = (...offsets: Offset[]): Rig => ({ ...bare, offsets });

describe('the offset of a rig', () => {
  it('is unknown, not zero, where none was found', () => {
    expect(offsetAt(bare, '100')).toBeNull();
    expect(offsetAt(rig(offset('400', 0.3, '2027-01-01')), '100')).toBeNull();
  });

  it('prefers the one found at this ISO, however old', () => {
    const at100 = offset('100', -0.2, '2026-01-01');
    expect(offsetAt(rig(at100, offset(null, 0.5, '2027-01-01')), '100')).toBe(at100);
  });

  it('falls back on the one for every ISO', () => {
    const every = offset(null, 0.5, '2027-01-01');
    expect(offsetAt(rig(offset('100', -0.2, '2027-01-01'), every), '12800')).toBe(every);
  });

  it('takes the latest date, and of one day the one entered later', () => {
    const newest = offset('100', 0.1, '2027-02-02');
    const again = offset('100', 0.15, '2027-02-02');
    expect(offsetAt(rig(newest, offset('100', 0.4, '2027-02-01')), '100')).toBe(newest);
    expect(offsetAt(rig(newest, again), '100')).toBe(again);
  });
});
