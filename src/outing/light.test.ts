import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn, skyOf } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, Evening, frame, planOf } from '../../test/evenings/evening.ts';
import { assumedScene, type Scene } from '../light/scene.ts';
import type { SkyTable } from '../light/skyTable.ts';
import type { Plan } from '../plan/plan.ts';
import { ev, type Stops, type UtcMs } from '../science/units.ts';
import { sceneOf, setInHand, setInLight, wantedReading } from './light.ts';

/*
 * An evening that begins 30 minutes after DUSK under a sky of EV 8 - 0.2 a minute. Its exposure is
 * f/8, 1 s, ISO 100: made for EV 6, right from minute 10 on.
 */

const frames = [
  frame('base', A, dialled('8', '1', '100')),
  frame('base', B, dialled('8', '1', '100'), { visit: 2 }),
];
const evening = (sky: SkyTable | null = EVEN_DUSK, plan: Plan = planOf(frames)): Evening =>
  new Evening(frames, plan, 'phone', sky).setUp();

const inHand = (of: Evening) => {
  const found = setInHand(of.state());
  if (!found) throw new Error('a set');
  return found;
};
const light = (minute: number, tolerance = 1, scene: Scene | null = null) =>
  setInLight(
    scene ?? assumedScene(EVEN_DUSK),
    inHand(evening()),
    tolerance as Stops,
    minutesOn(minute),
  );

describe('the light of an outing', () => {
  it('is its sky as its readings move it, each meter by itself', () => {
    const run = evening();
    for (const by of [0, 1, 2]) {
      const minute = 30 + (run.now().wallMs - minutesOn(30)) / 60_000;
      const sky = 8 - 0.2 * minute;
      run.tap({ tap: 'reading', meter: 'spot', reading: { kind: 'ev', ev100: ev(sky - 1) } });
      run.tap({ tap: 'reading', meter: 'camera', reading: { kind: 'ev', ev100: ev(sky + 0.5) } });
      run.pass(300 + by);
    }
    const scene = sceneOf(run.state());
    expect(scene?.from).toBe('readings');
    const offset = (meter: string) =>
      scene?.offsets.find((each) => each.meter === meter)?.stops ?? Number.NaN;
    expect(offset('spot')).toBeCloseTo(-1, 1);
    expect(offset('camera')).toBeCloseTo(0.5, 1);
  });

  it('is not known without a sky, whatever is read', () => {
    const run = evening(null);
    run.tap({ tap: 'reading', meter: 'spot', reading: { kind: 'ev', ev100: ev(3) } });
    expect(sceneOf(run.state())).toBeNull();
  });
});

describe('the set in hand', () => {
  it('is that of the next frame, with its reference, also when that is shot', () => {
    const run = evening();
    expect(inHand(run).reference.rig).toBe(A);
    run.shoot();
    expect(run.state().queue.map(({ rig }) => rig)).toEqual([B]);
    expect(inHand(run)).toMatchObject({ set: { id: 'base' }, reference: { rig: A } });
    run.shoot();
    expect(setInHand(run.state())).toBeNull();
  });

  it('is no dark and no wall', () => {
    const plan = planOf(frames);
    for (const kind of ['capped-dark', 'flat'] as const) {
      const other = { ...plan, sets: plan.sets.map((set) => ({ ...set, kind })) };
      expect(setInHand(evening(EVEN_DUSK, other).state())).toBeNull();
    }
  });

  it('fits until the light has left its tolerance, said from a quarter of an hour on', () => {
    // EV 6 at the middle of the second; a stop below it 5 minutes later.
    expect(light(9.2)).toMatchObject({ how: 'fits', minutes: 5 });
    expect(light(8.5)).toMatchObject({ how: 'fits', minutes: 6 });
    expect(light(9.2, 3.5)).toBeNull();
    expect(light(16)).toMatchObject({ how: 'off', miss: expect.closeTo(-1.2, 2) });
    expect(light(2)).toMatchObject({ how: 'off', miss: expect.closeTo(1.6, 2) });
  });

  it('never says a minute without its width', () => {
    const fits = light(9.2);
    if (fits?.how !== 'fits') throw new Error('fits');
    // The model alone is not sure to three stops: it may be over already, or far away.
    expect(fits.least).toBe(0);
    expect(fits.most === null || fits.most > 15).toBe(true);
    const run = evening();
    for (const minute of [0, 5, 10]) {
      const now = 30 + minute;
      run.tap({
        tap: 'reading',
        meter: 'spot',
        reading: { kind: 'ev', ev100: ev(8 - 0.2 * now) },
      });
      run.pass(299);
    }
    const scene = sceneOf(run.state());
    const read = light(9.2, 1, scene);
    if (read?.how !== 'fits') throw new Error('fits');
    expect(read.least).toBeLessThanOrEqual(read.minutes);
    expect(read.most ?? Number.POSITIVE_INFINITY).toBeGreaterThanOrEqual(read.minutes);
  });

  it('does not run away from light that stands still', () => {
    const still = assumedScene(skyOf(() => 6, 120));
    expect(light(20, 1, still)).toBeNull();
  });

  it('has its minutes run down with the clock', () => {
    fc.assert(
      fc.property(fc.double({ min: 5.1, max: 14.8, noNaN: true }), (minute) => {
        const found = light(minute);
        if (found?.how !== 'fits') throw new Error('fits');
        // Right by the middle of the second, until minute 15.
        expect(found.minutes).toBe(Math.floor(15 - minute - 0.5 / 60));
        expect(found.least).toBeLessThanOrEqual(found.minutes);
        expect(found.most ?? 99).toBeGreaterThanOrEqual(found.minutes);
      }),
    );
  });
});

describe('a reading', () => {
  const wanted = (run: Evening) => {
    const state = run.state();
    const scene = sceneOf(state);
    return scene && wantedReading(scene, state, run.now().wallMs as UtcMs);
  };

  it('is wanted at first, and again ten minutes after the last', () => {
    const run = evening();
    expect(wanted(run)).toBe('reading');
    run.tap({ tap: 'reading', meter: 'spot', reading: { kind: 'ev', ev100: ev(2) } });
    expect(wanted(run)).toBeNull();
    run.pass(9 * 60);
    expect(wanted(run)).toBeNull();
    run.pass(60);
    expect(wanted(run)).toBe('reading');
  });

  it('becomes a test frame where meters give up', () => {
    const run = evening();
    // EV -3 is reached 55 minutes after DUSK.
    run.pass(26 * 60);
    expect(wanted(run)).toBe('test-frame');
  });

  it('is not asked for past the end of the sky', () => {
    const run = evening();
    run.pass(((minutesOn(121) as UtcMs) - run.now().wallMs) / 1000);
    expect(wanted(run)).toBeNull();
  });
});
