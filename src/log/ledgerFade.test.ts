import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn } from '../../test/arbitraries/sky.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { fitScene } from '../light/fit.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import type { KnownOrUnknown } from '../plan/causes.ts';
import type { Differences } from '../plan/differences.ts';
import type { SetId } from '../plan/ids.ts';
import type { SetKind } from '../plan/plan.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import { preparePlan } from '../plan/prepare.ts';
import { ev, later, seconds } from '../science/units.ts';
import { type CountedFrame, ledgersOf, type SetLedger } from './ledger.ts';

/*
 * Under a sky that falls evenly by 0.2 stop a minute, exposures of one length differ by 0.2 stop for
 * each minute between their beginnings.
 */

const PLAN = practicePlan();
const { frames } = preparePlan(PLAN, PRACTICE_GEAR);
const set = PLAN.sets[0]?.id as SetId;
const one = frames.filter((frame) => frame.set === set);

/** The four frames of the first set, A B B A, begun at these minutes and all a minute long. */
const begun = (...minutes: readonly number[]): readonly CountedFrame[] =>
  one.map(({ exact, ...frame }, place) => ({
    ...frame,
    exact: { ...exact, t: seconds(60) },
    openedMs: minutesOn(minutes[place] ?? Number.NaN),
  }));

const ledgerOf = (
  scene: Scene | null,
  made: readonly CountedFrame[],
  kind: SetKind = 'light',
): SetLedger => {
  const plan = { ...PLAN, sets: PLAN.sets.slice(0, 1).map((each) => ({ ...each, kind })) };
  const [found] = ledgersOf(plan, PRACTICE_GEAR, made, scene);
  if (!found) throw new Error('a ledger');
  return found;
};
const fadeOf = (differences: Differences | null | undefined): KnownOrUnknown | undefined =>
  differences?.lines.find(({ cause }) => cause === 'fade')?.difference;
const stopsOf = (fade: KnownOrUnknown | undefined): number =>
  fade?.known ? fade.stops : Number.NaN;

const MODEL = assumedScene(EVEN_DUSK);
const metered = (minutes: readonly number[]): Scene =>
  fitScene(
    EVEN_DUSK,
    minutes.map((minute) => ({
      at: minutesOn(minute),
      meter: 'spot',
      ev100: ev(10 - 0.2 * minute),
    })),
  );

describe('the fade in the ledger', () => {
  it('is each pass’s own, and the mean’s what their weights leave', () => {
    const ledger = ledgerOf(MODEL, begun(10, 14, 17, 24));
    expect(ledger.passes.map(({ differences }) => stopsOf(fadeOf(differences)))).toEqual([
      expect.closeTo(-0.8, 6),
      expect.closeTo(1.4, 6),
    ]);
    expect(ledger.averaging.kind).toBe('weighted');
    expect(stopsOf(fadeOf(ledger.mean))).toBeCloseTo(0, 6);
  });

  it('is more certain in the mean than in one pass', () => {
    const ledger = ledgerOf(MODEL, begun(10, 14, 16, 20));
    const sigma = (differences: Differences | null | undefined) => {
      const fade = fadeOf(differences);
      return fade?.known ? (fade.estimate?.sigma ?? Number.NaN) : Number.NaN;
    };
    expect(sigma(ledger.mean)).toBeGreaterThan(0);
    expect(sigma(ledger.mean)).toBeLessThan(sigma(ledger.passes[0]?.differences));
  });

  it('comes from readings where there are any, else from the model, and says which', () => {
    const from = (scene: Scene) => {
      const fade = fadeOf(ledgerOf(scene, begun(10, 14, 17, 24)).mean);
      return fade?.known ? fade.estimate?.from : null;
    };
    expect(from(MODEL)).toBe('model');
    expect(from(metered([10, 15, 20, 25]))).toBe('readings');
  });

  it('enters the sum, the light on the sensors and the even-up', () => {
    const onePass = begun(10, 14).filter(({ pass }) => pass === 1);
    const without = ledgerOf(null, onePass).mean;
    const faded = ledgerOf(MODEL, onePass).mean;
    const moved = (figure: (differences: Differences) => number): number =>
      faded && without ? figure(faded) - figure(without) : Number.NaN;
    expect(moved(({ sum }) => sum.stops)).toBeCloseTo(-0.8, 6);
    expect(moved(({ light }) => light.perArea.stops)).toBeCloseTo(-0.8, 6);
    expect(moved(({ residual }) => residual?.stops ?? Number.NaN)).toBeCloseTo(-0.8, 6);
    expect(without?.sum.missing).toContain('fade');
    expect(faded?.sum.missing).not.toContain('fade');
  });

  it('is the same whatever the meter’s own offset is', () => {
    const shift = (by: number): number => {
      const readings = [10, 15, 20, 25].map((minute) => ({
        at: minutesOn(minute),
        meter: 'spot',
        ev100: ev(8 + by - 0.2 * minute),
      }));
      const { passes } = ledgerOf(fitScene(EVEN_DUSK, readings), begun(10, 14, 17, 24));
      return stopsOf(fadeOf(passes[0]?.differences));
    };
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (by) => {
        expect(shift(by)).toBeCloseTo(shift(0), 2);
      }),
      { numRuns: 30 },
    );
  });

  it('stays unknown, never zero: without a sky, past its end, and on a wall lit by hand', () => {
    const unknown = (why: string) => ({ known: false, why });
    expect(fadeOf(ledgerOf(null, begun(10, 14, 17, 24)).mean)).toEqual(unknown('no-sky'));
    expect(fadeOf(ledgerOf(MODEL, begun(10, 14, 17, 120)).mean)).toEqual(unknown('no-sky'));
    expect(fadeOf(ledgerOf(MODEL, begun(10, 14, 17, 24), 'flat').mean)).toEqual(
      unknown('not-modelled'),
    );
  });

  it('follows each pass that is whole, wherever the frames lie', () => {
    const minute = fc.integer({ min: 1, max: 100 });
    fc.assert(
      fc.property(fc.tuple(minute, minute, minute, minute), ([a, b, c, d]) => {
        const { mean, averaging } = ledgerOf(MODEL, begun(a, b, c, d));
        // By the letters of A B B A; weights leave nothing of a fade as even as this one.
        const plain = -0.1 * (b - a + c - d);
        const left = averaging.kind === 'weighted' ? 0 : plain;
        expect(stopsOf(fadeOf(mean))).toBeCloseTo(left, 6);
        expect('leaves' in averaging ? averaging.leaves : plain).toBeCloseTo(plain, 6);
        if (averaging.kind === 'plain') expect(Math.abs(plain)).toBeLessThanOrEqual(0.02 + 1e-9);
      }),
    );
  });

  it('keeps its sign by the later frame: darker at dusk', () => {
    const made = begun(10, 14, 17, 24).map((frame) =>
      frame.rig === PLAN.rigs[0] ? { ...frame, openedMs: later(frame.openedMs, 3600) } : frame,
    );
    expect(stopsOf(fadeOf(ledgerOf(MODEL, made).mean))).toBeCloseTo(0.3 + 12, 6);
  });
});
