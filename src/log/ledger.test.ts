import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DUSK } from '../../test/arbitraries/sky.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { Gear } from '../gear/rig.ts';
import type { Cause } from '../plan/causes.ts';
import { type Differences, evenUp } from '../plan/differences.ts';
import type { FrameKey, SetId } from '../plan/ids.ts';
import type { Plan } from '../plan/plan.ts';
import { practicePlan } from '../plan/practicePlan.ts';
import { preparePlan } from '../plan/prepare.ts';
import { iso, later, seconds, stops, type UtcMs } from '../science/units.ts';
import { type CountedFrame, ledgersOf, type SetLedger } from './ledger.ts';

const PRACTICE_PLAN = practicePlan();

const { frames: planned, table, timeline } = preparePlan(PRACTICE_PLAN, PRACTICE_GEAR);
const [alder, birch] = PRACTICE_PLAN.rigs;
const firstSet = PRACTICE_PLAN.sets[0]?.id as SetId;

/** When a frame is made if the list starts on time. */
const openedMs = (key: FrameKey): UtcMs =>
  later(DUSK, timeline.frames.find((times) => times.key === key)?.startS ?? Number.NaN);

/** Every frame made as planned, some of them changed. */
const made = (change: (frame: CountedFrame) => CountedFrame = (frame) => frame) =>
  planned.map(({ set, rig, pass, settings, exact, key }) =>
    change({ key, set, rig, pass, settings, exact, openedMs: openedMs(key) }),
  );

const ledgers = (frames: readonly CountedFrame[], gear: Gear = PRACTICE_GEAR) =>
  ledgersOf(PRACTICE_PLAN, gear, frames, null);

const first = (frames: readonly CountedFrame[], gear?: Gear): SetLedger => {
  const found = ledgers(frames, gear).find(({ set }) => set === firstSet);
  if (!found) throw new Error('the first set');
  return found;
};

const stopsOf = (differences: Differences | null, cause: Cause): number => {
  const difference = differences?.lines.find((line) => line.cause === cause)?.difference;
  if (!difference?.known) throw new Error(`${cause} unknown`);
  return difference.stops;
};

describe('an evening that went as planned', () => {
  it('comes to what the plan said, in every set and pass', () => {
    for (const [index, ledger] of ledgers(made()).entries()) {
      const prepared = table[index];
      const row = prepared?.kind === 'compared' ? prepared.others[0] : null;
      expect(ledger.passes.map(({ pass }) => pass)).toEqual([1, 2]);
      expect(ledger.unpaired).toEqual([]);
      for (const { differences } of ledger.passes) expect(differences).toEqual(row?.differences);
      expect(ledger.mean?.sum.stops).toBeCloseTo(row?.differences.sum.stops ?? Number.NaN, 9);
    }
  });

  it('evens Birch up by the 0.76 stop that it got less', () => {
    const { mean } = first(made());
    expect(mean && evenUp(mean).stops).toBeCloseTo(0.76, 2);
    expect(mean?.light.wholeSensor.stops).toBeCloseTo(-1.5, 2);
  });

  it('lists what nobody measured or modelled as unknown', () => {
    const { mean } = first(made());
    expect(mean?.sum.missing).toEqual(['offset', 'transmission', 'fade']);
    expect(mean?.lines.find(({ cause }) => cause === 'fade')?.difference).toEqual({
      known: false,
      why: 'no-sky',
    });
  });
});

describe('what was really done', () => {
  it('moves sum, even-up and light with the bulb time that really elapsed', () => {
    const before = first(made()).mean;
    const after = first(
      made((frame) =>
        frame.set === firstSet && frame.rig === alder
          ? { ...frame, exact: { ...frame.exact, t: seconds(128) } }
          : frame,
      ),
    ).mean;
    expect(stopsOf(after, 'time') - stopsOf(before, 'time')).toBeCloseTo(-1, 9);
    expect((after?.sum.stops ?? 0) - (before?.sum.stops ?? 0)).toBeCloseTo(-1, 9);
    expect((after?.light.perArea.stops ?? 0) - (before?.light.perArea.stops ?? 0)).toBeCloseTo(
      -1,
      9,
    );
  });

  it('moves brightness but not light with the ISO', () => {
    const before = first(made()).mean;
    const after = first(
      made((frame) =>
        frame.set === firstSet && frame.rig === birch
          ? {
              ...frame,
              settings: { ...frame.settings, isoMark: '200' },
              exact: { ...frame.exact, s: iso(200) },
            }
          : frame,
      ),
    ).mean;
    expect((after?.sum.stops ?? 0) - (before?.sum.stops ?? 0)).toBeCloseTo(1, 9);
    expect(after?.light).toEqual(before?.light);
  });

  it('takes each pass by itself and the mean in stops', () => {
    const ledger = first(
      made((frame) =>
        frame.set === firstSet && frame.rig === birch && frame.pass === 2
          ? { ...frame, exact: { ...frame.exact, t: seconds(15) } }
          : frame,
      ),
    );
    const [one, two] = ledger.passes.map(({ differences }) => stopsOf(differences, 'time'));
    expect((two ?? 0) - (one ?? 0)).toBeCloseTo(-2, 9);
    // A mean of light would say -0.68.
    expect(stopsOf(ledger.mean, 'time') - (one ?? 0)).toBeCloseTo(-1, 9);
  });

  it('takes the mean of repeats in stops, unlike numbers of them too', () => {
    const repeats = made().flatMap((frame) =>
      frame.set === firstSet && frame.rig === birch && frame.pass === 1
        ? [frame, { ...frame, exact: { ...frame.exact, t: seconds(15) } }]
        : [frame],
    );
    const [one, two] = first(repeats).passes.map(({ differences }) => stopsOf(differences, 'time'));
    expect((one ?? 0) - (two ?? 0)).toBeCloseTo(-1, 9);
  });

  it('names a pass that lacks one side and leaves it out of the mean', () => {
    const ledger = first(
      made().filter(
        (frame) => !(frame.set === firstSet && frame.rig === birch && frame.pass === 2),
      ),
    );
    expect(ledger.passes.map(({ pass }) => pass)).toEqual([1]);
    expect(ledger.unpaired).toEqual([2]);
    expect(ledger.mean?.sum.stops).toBeCloseTo(-0.76, 2);
  });

  it('has no mean where no pass is complete', () => {
    const ledger = first(made().filter(({ rig }) => rig === alder));
    expect(ledger).toMatchObject({ passes: [], unpaired: [1, 2], mean: null });
  });
});

describe('what is known in one pass only', () => {
  const gear: Gear = {
    ...PRACTICE_GEAR,
    rigs: PRACTICE_GEAR.rigs.map((rig) => ({
      ...rig,
      offsets: [
        {
          isoMark: '100',
          stops: stops(rig.id === birch ? 0.2 : 0),
          date: '2027-01-10',
          how: 'evenly lit wall',
        },
      ],
    })),
  };

  it('is known where both rigs have it', () => {
    expect(stopsOf(first(made(), gear).mean, 'offset')).toBeCloseTo(0.2, 9);
  });

  it('is unknown in the mean, and not zero', () => {
    const ledger = first(
      made((frame) =>
        frame.set === firstSet && frame.rig === birch && frame.pass === 2
          ? { ...frame, settings: { ...frame.settings, isoMark: '125' } }
          : frame,
      ),
      gear,
    );
    expect(stopsOf(ledger.passes[0]?.differences ?? null, 'offset')).toBeCloseTo(0.2, 9);
    const difference = ledger.mean?.lines.find(({ cause }) => cause === 'offset')?.difference;
    expect(difference).toEqual({ known: false, why: 'other-not-stated' });
    expect(ledger.mean?.sum.missing).toContain('offset');
  });
});

describe('the ledgers of an outing', () => {
  it('hold each other rig against the reference, and no capped dark', () => {
    const rigs = PRACTICE_GEAR.rigs.map(({ id }) => id);
    const [set] = PRACTICE_PLAN.sets;
    if (!set) throw new Error('a set');
    const plan: Plan = {
      ...PRACTICE_PLAN,
      rigs,
      sets: [set, { ...set, id: 'dark' as SetId, kind: 'capped-dark' }],
    };
    const frames = preparePlan(plan, PRACTICE_GEAR).frames.map((frame) => ({
      ...frame,
      openedMs: DUSK,
    }));
    const found = ledgersOf(plan, PRACTICE_GEAR, frames, null);
    expect(found.map(({ set: id, reference, other }) => [id, reference, other])).toEqual([
      [set.id, rigs[0], rigs[1]],
      [set.id, rigs[0], rigs[2]],
    ]);
  });

  it('do without a pair whose rig is gone', () => {
    const gear = { ...PRACTICE_GEAR, rigs: PRACTICE_GEAR.rigs.filter(({ id }) => id !== birch) };
    expect(ledgersOf(PRACTICE_PLAN, gear, made(), null)).toEqual([]);
  });

  it('do not depend on the order in which the frames come', () => {
    const frames = made();
    fc.assert(
      fc.property(fc.shuffledSubarray(frames, { minLength: frames.length }), (shuffled) => {
        expect(ledgers(shuffled)).toEqual(ledgers(frames));
      }),
    );
  });
});
