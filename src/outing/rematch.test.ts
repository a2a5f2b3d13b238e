import { describe, expect, it } from 'vitest';
import { EVEN_DUSK, minutesOn } from '../../test/arbitraries/sky.ts';
import { A, B, dialled, Evening, frame, planOf, refusedFor } from '../../test/evenings/evening.ts';
import { assumedScene } from '../light/scene.ts';
import type { SetId } from '../plan/ids.ts';
import type { Hold, Plan } from '../plan/plan.ts';
import { stops, type UtcMs } from '../science/units.ts';
import { setInHand } from './light.ts';
import { type Rematch, rematches, withRematch } from './rematch.ts';

/*
 * Under EV 8 - 0.2 a minute an exposure of f/8, 1 s, ISO 100, made for EV 6, is right at minute 10.
 * At minute 30 the scene has EV 2: four stops too dark.
 */

const frames = [
  frame('base', A, dialled('8', '1', '100')),
  frame('base', B, dialled('8', '1', '100'), { visit: 2 }),
  frame('base', B, dialled('8', '1', '100'), { visit: 2, pass: 2 }),
  frame('base', A, dialled('8', '1', '100'), { visit: 3, pass: 2 }),
];
const SCENE = assumedScene(EVEN_DUSK);

const evening = (hold?: Hold, list = frames): Evening => {
  const plan = planOf(list);
  const held: Plan = hold ? { ...plan, sets: plan.sets.map((set) => ({ ...set, hold })) } : plan;
  return new Evening(list, held, 'phone', EVEN_DUSK).setUp();
};
const offers = (run: Evening, minute = 30): readonly Rematch[] => {
  const state = run.state();
  const hand = setInHand(state);
  if (!hand) throw new Error('a set');
  return rematches(state, SCENE, hand, minutesOn(minute) as UtcMs);
};
const by = (found: readonly Rematch[], dial: Rematch['dial']): Rematch => {
  const one = found.find((each) => each.dial === dial);
  if (!one) throw new Error(`no offer by ${dial}`);
  return one;
};
const marks = (offer: Rematch, rig: string) => {
  const { fMark, time, isoMark } = offer.rigs.find((each) => each.rig === rig)?.settings ?? {};
  return [fMark, time?.kind === 'dial' ? time.mark : 'bulb', isoMark];
};

describe('settings for a set that is no longer right', () => {
  it('bring the reference back by one dial, and hold the other alike', () => {
    const found = offers(evening());
    expect(marks(by(found, 'time'), A)).toEqual(['8', '16', '100']);
    expect(marks(by(found, 'time'), B)).toEqual(['8', '15', '100']);
    expect(marks(by(found, 'iso'), A)).toEqual(['8', '1', '1600']);
    expect(marks(by(found, 'iso'), B)).toEqual(['8', '1', '1600']);
    for (const { miss } of found) expect(Math.abs(miss)).toBeLessThan(0.2);
  });

  it('keep what the hold keeps apart', () => {
    const narrower: Hold = {
      kind: 'same-iso-and-time',
      aperture: { rule: 'same-f-number', plus: stops(-2 / 3) },
    };
    expect(marks(by(offers(evening(narrower)), 'iso'), B)).toEqual(['10', '1', '1600']);
  });

  it('turn the same dial on each rig that is set by hand', () => {
    const free: Hold = { kind: 'free', settings: { [B]: dialled('4', '1', '100') } };
    const list = frames.map((each) =>
      each.rig === B ? { ...frame('base', B, dialled('4', '1', '100')), key: each.key } : each,
    );
    const found = by(offers(evening(free, list)), 'iso');
    expect(marks(found, A)).toEqual(['8', '1', '1600']);
    expect(marks(found, B)).toEqual(['4', '1', '400']);
  });

  it('leave out what the other rig cannot follow', () => {
    const list = frames.map(({ rig, pass, visit }) =>
      frame('base', rig, dialled('16', '2', '100'), { pass, visit }),
    );
    // Made for EV 7, a stop below the scene at minute 0: f/22 on Alder, whose lens goes on to f/32.
    expect(marks(by(offers(evening(undefined, list), 0), 'f-number'), B)).toEqual([
      '22',
      '2',
      '100',
    ]);
    const narrower: Hold = {
      kind: 'same-iso-and-time',
      aperture: { rule: 'same-f-number', plus: stops(-2 / 3) },
    };
    // Birch would need f/28, and ends at f/22.
    const found = offers(evening(narrower, list), 0);
    expect(found.map(({ dial }) => dial)).toEqual(['time']);
  });

  it('leave out a dial that ends too soon, and what stands already', () => {
    // Alder's lens opens to f/4: two stops of the four.
    expect(offers(evening()).map(({ dial }) => dial)).toEqual(['time', 'iso']);
    expect(offers(evening(), 10)).toEqual([]);
  });
});

describe('taking them', () => {
  const taken = (run: Evening): Evening => {
    const { rigs } = by(offers(run), 'iso');
    return run.tap({ tap: 'rematch', set: 'base' as SetId, rigs });
  };

  it('changes what is not shot yet, and only that', () => {
    const run = evening().shoot();
    const before = run.state();
    taken(run);
    const { queue, made, skipped, dropped } = run.state();
    expect(queue.map(({ key }) => key)).toEqual(before.queue.map(({ key }) => key));
    expect(queue.map(({ settings }) => settings.isoMark)).toEqual(['1600', '1600', '1600']);
    expect(made).toEqual(before.made);
    expect([skipped, dropped]).toEqual([[], []]);
    const last = run.events.at(-1);
    expect(last).toMatchObject({ kind: 'replanned', data: { reason: 'set-rematched' } });
    run.shoot();
    expect(run.state().made.at(-1)?.settings?.isoMark).toBe('1600');
  });

  it('is taken back by undo', () => {
    const run = evening().shoot();
    const before = run.state().queue;
    taken(run).undo();
    expect(run.state().queue).toEqual(before);
  });

  it('makes no sense for a set that is shot', () => {
    const run = evening();
    const { rigs } = by(offers(run), 'iso');
    run.shootAll();
    expect(refusedFor(run.try({ tap: 'rematch', set: 'base' as SetId, rigs }))).toBe(
      'set-has-no-frames-left',
    );
  });

  it('leaves a dark whose frame is shot as it was, and takes the later ones along', () => {
    const dark = (rig: typeof A, pass: number) =>
      frame('dark', rig, dialled('8', '1', '100'), { pass });
    const list = [frames[0], dark(A, 1), frames[3], dark(A, 2)].filter(
      (each) => each !== undefined,
    );
    const plan = planOf(list);
    const sets = plan.sets.map((set) =>
      set.id === 'dark' ? { ...set, kind: 'capped-dark' as const } : set,
    );
    const run = new Evening(list, { ...plan, sets }, 'phone', EVEN_DUSK).setUp().shoot();
    const state = run.state();
    const hand = setInHand(state);
    if (!hand) throw new Error('a set');
    const { rigs } = by(rematches(state, SCENE, hand, minutesOn(30)), 'iso');
    expect(withRematch(state, hand.set, rigs).map(({ settings }) => settings.isoMark)).toEqual([
      '100',
      '1600',
      '1600',
    ]);
  });
});
