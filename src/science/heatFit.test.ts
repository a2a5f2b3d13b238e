import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstValues, heatsOfLevels, type ThreeHeats } from './heatFit.ts';
import { isRefusal, must } from './refusal.ts';
import { type Doublings, doublings } from './sensorUnits.ts';
import { type Seconds, seconds } from './units.ts';

/** Heat so long after the rested body began to expose without a break. */
const heatAt = (tau: number, plateau: number, after: number): Doublings =>
  doublings(plateau * (1 - Math.exp(-after / tau)));

const heatsAt = (tau: number, plateau: number, step: number, after = 0): ThreeHeats => ({
  first: heatAt(tau, plateau, after),
  second: heatAt(tau, plateau, after + step),
  third: heatAt(tau, plateau, after + 2 * step),
});

/** The stated plateau of a body that nobody has measured: 10 K at a doubling of 6.5 K. */
const STATED = 10 / 6.5;

const valuesOf = (step: number) => must(firstValues(heatsAt(480, STATED, step), seconds(step)));

describe('first values of a fit', () => {
  // Heat and noise, section 1.5: a true 480 s, each heat off by 0.02 doublings, 68 %, simulated.
  it.each([
    { step: 480, least: 437, most: 532 },
    { step: 240, least: 396, most: 615 },
  ])('range from $least to $most s for steps of $step s', ({ step, least, most }) => {
    const { tau } = valuesOf(step);
    expect(tau.usual).toBeCloseTo(480, 9);
    expect(Math.abs(tau.least / least - 1)).toBeLessThan(0.005);
    expect(Math.abs(tau.most / most - 1)).toBeLessThan(0.005);
  });

  it('know the plateau better with longer steps', () => {
    const [long, short] = [valuesOf(480).plateau, valuesOf(240).plateau];
    expect(long.usual).toBeCloseTo(STATED, 9);
    expect(short.usual).toBeCloseTo(STATED, 9);
    // By hand: 0.02 sqrt(q^4 + 4 q^2 + 1)/(1 - q)^2 with q = 1/e.
    expect(long.most - long.usual).toBeCloseTo(0.06251, 5);
    expect(long.usual - long.least).toBeCloseTo(0.06251, 5);
    expect(short.most - short.usual).toBeGreaterThan(0.2);
  });

  it.each([
    ['not-rising', heatsAt(480, -1, 480), 480],
    // The published check of a rise whose increments grow.
    ['not-settling', { first: 0, second: 0.2, third: 0.45 }, 240],
    ['not-settling', { first: 0, second: 0.2, third: 0.2 }, 240],
    ['not-settling', { first: 0, second: 0.2, third: 0.1 }, 240],
    // The reference asks for half a time constant.
    ['step-too-short', heatsAt(480, STATED, 239), 239],
    ['rise-within-error', heatsAt(480, 0.1, 480), 480],
  ] as const)('are refused: %s', (rule, heats, step) => {
    expect(firstValues(heats as ThreeHeats, seconds(step))).toEqual({ refused: true, rule });
  });
});

describe('heats of dark levels', () => {
  const levelsOf = (heats: ThreeHeats, unit: number) =>
    [heats.first, heats.second, heats.third].map((heat) => unit * 2 ** heat) as [
      number,
      number,
      number,
    ];

  it('are those of the body, in whatever unit its levels are', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 240, max: 900, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        fc.double({ min: 0.5, max: 1.5, noNaN: true }),
        fc.double({ min: 0, max: 240, noNaN: true }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        (tau, plateau, steps, after, unit) => {
          const step = seconds(steps * tau);
          const heats = heatsAt(tau, plateau, step, after);
          const found = must(heatsOfLevels(levelsOf(heats, unit), step, after as Seconds));
          expect(found.first).toBeCloseTo(heats.first, 6);
          expect(found.third).toBeCloseTo(heats.third, 6);
        },
      ),
    );
  });

  it('are refused where a level is no level, or the levels do not settle', () => {
    expect(heatsOfLevels([0, 1, 2], seconds(480), seconds(120))).toMatchObject({
      rule: 'level-not-positive',
    });
    expect(isRefusal(heatsOfLevels([1, 2, 8], seconds(480), seconds(120)))).toBe(true);
  });
});
