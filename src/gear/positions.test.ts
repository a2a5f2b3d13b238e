import { describe, expect, it } from 'vitest';
import { must } from '../science/refusal.ts';
import { seconds } from '../science/units.ts';
import type { Body } from './body.ts';
import type { Lens } from './lens.ts';
import { exactSettings, positionsOf } from './positions.ts';
import { PRACTICE_GEAR } from './practice.ts';

const [alder, birch, cedar] = PRACTICE_GEAR.bodies as readonly [Body, Body, Body];
const [alder45, birch35, cedar17] = PRACTICE_GEAR.lenses as readonly [Lens, Lens, Lens];

const marks = (positions: readonly { readonly mark: string }[]): string[] =>
  positions.map(({ mark }) => mark);

describe('the practice rigs on their dials', () => {
  it('lets Alder double from 1 to 64 s and stay in thirds below', () => {
    const { times, fNumbers, isos } = must(positionsOf(alder, alder45));
    expect(marks(times).slice(-9)).toEqual(['0.6', '0.8', '1', '2', '4', '8', '16', '32', '64']);
    expect(times.at(-1)?.exact).toBe(64);
    expect(marks(fNumbers).at(0)).toBe('4');
    expect(marks(fNumbers).at(-1)).toBe('32');
    expect(marks(isos).at(0)).toBe('64');
    expect(marks(isos).at(-1)).toBe('25600');
  });

  it('ends Birch at a true 60 s after an exact 30', () => {
    const { times } = must(positionsOf(birch, birch35));
    expect(marks(times).slice(-3)).toEqual(['25', '30', '60']);
    expect(times.at(-2)?.exact).toBe(32);
    expect(times.at(-1)?.exact).toBe(60);
    expect(times.some(({ uncertain }) => uncertain)).toBe(false);
  });

  it('owns that nobody measured what Cedar runs at 15 and 30 s', () => {
    const { times, fNumbers } = must(positionsOf(cedar, cedar17));
    const uncertain = marks(times.filter((time) => time.uncertain));
    expect(uncertain).toContain('15');
    expect(uncertain).toContain('30');
    expect(uncertain).not.toContain('8');
    expect(marks(fNumbers).at(0)).toBe('1.8');
  });
});

describe('exactSettings', () => {
  it('computes with the value behind each mark', () => {
    const exact = must(
      exactSettings(
        { body: birch, lens: birch35 },
        { fMark: '8', time: { kind: 'dial', mark: '1/10' }, isoMark: '125' },
      ),
    );
    expect(exact.n).toBe(8);
    expect(exact.t).toBeCloseTo(1 / 10.0794, 6);
    expect(exact.s).toBeCloseTo(125.99, 2);
  });

  it('takes bulb seconds as they are', () => {
    const exact = must(
      exactSettings(
        { body: alder, lens: alder45 },
        { fMark: '6.3', time: { kind: 'bulb', seconds: seconds(241.5) }, isoMark: '100' },
      ),
    );
    expect(exact.t).toBe(241.5);
  });

  it.each([
    ['f-mark-not-on-lens', '2.8', '64', '100'],
    ['time-mark-not-on-body', '8', '60', '100'],
    ['iso-mark-not-on-body', '8', '64', '50'],
  ])('refuses by %s what the rig has no position for', (rule, fMark, mark, isoMark) => {
    const settings = { fMark, time: { kind: 'dial', mark }, isoMark } as const;
    expect(exactSettings({ body: alder, lens: alder45 }, settings)).toEqual({
      refused: true,
      rule,
    });
  });
});
