import { describe, expect, it } from 'vitest';
import type { RigId } from '../gear/ids.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import type { Gear } from '../gear/rig.ts';
import type { Settings } from '../gear/settings.ts';
import { millimetres, seconds, stops } from '../science/units.ts';
import type { Besides } from './besides.ts';
import type { SetId } from './ids.ts';
import { swapCount } from './order.ts';
import type { Hold, Plan, PlanSet } from './plan.ts';
import { practicePlan } from './practicePlan.ts';
import { dialledIn, type OtherRow, preparePlan, type SetTable } from './prepare.ts';
import { type Problem, stopsStart } from './problems.ts';
import { besidesOfRow } from './rowBesides.ts';

const PRACTICE_PLAN = practicePlan();

const [A, B, C] = PRACTICE_GEAR.rigs.map(({ id }) => id) as [RigId, RigId, RigId];

const dial = (fMark: string, mark: string, isoMark: string): Settings => ({
  fMark,
  time: { kind: 'dial', mark },
  isoMark,
});

const first = PRACTICE_PLAN.sets[0] as PlanSet;
const set = (id: string, change: Partial<PlanSet> = {}): PlanSet => ({
  ...first,
  id: id as SetId,
  hold: { kind: 'same-exposure' },
  settings: dial('8', '8', '200'),
  ...change,
});
const plan = (change: Partial<Plan>): Plan => ({
  ...PRACTICE_PLAN,
  rigs: [A, B],
  sets: [set('s')],
  ...change,
});

const problemsOf = (change: Partial<Plan>, gear: Gear = PRACTICE_GEAR): readonly Problem[] =>
  preparePlan(plan(change), gear).problems;

const compared = (table: SetTable | undefined) => {
  if (table?.kind !== 'compared') throw new Error('not compared');
  return table;
};
const otherRow = (change: Partial<Plan>, gear: Gear = PRACTICE_GEAR): OtherRow => {
  const [row] = compared(preparePlan(plan(change), gear).table[0]).others;
  if (!row) throw new Error('no other rig');
  return row;
};
/** Of the first set's other rig. */
const besidesIn = (change: Partial<Plan>): Besides => {
  const changed = plan(change);
  const prepared = preparePlan(changed, PRACTICE_GEAR);
  const [row] = compared(prepared.table[0]).others;
  const first = changed.sets[0]?.id;
  const besides = row && first && besidesOfRow(changed, PRACTICE_GEAR, prepared, first, row.rig);
  if (!besides) throw new Error('nothing beside');
  return besides;
};

describe('the practice evening', () => {
  const prepared = preparePlan(PRACTICE_PLAN, PRACTICE_GEAR);

  it('sets Alder at f/6.3 64 s against Birch at f/8 60 s, ISO 100', () => {
    const table = compared(prepared.table[0]);
    expect(table.reference).toMatchObject({
      rig: A,
      dialled: { settings: dial('6.3', '64', '100') },
    });
    expect(table.others.map(({ rig, dialled }) => [rig, dialled.settings])).toEqual([
      [B, dial('8', '60', '100')],
    ]);
  });

  it('says that Birch gets 0.76 stop less light per area and 1.50 less in all', () => {
    const [row] = compared(prepared.table[0]).others;
    expect(row?.differences.light.perArea.stops).toBeCloseTo(-0.76, 2);
    expect(row?.differences.light.wholeSensor.stops).toBeCloseTo(-1.5, 2);
  });

  it('walks sixteen frames in a mirror with eight swaps', () => {
    expect(prepared.frames).toHaveLength(16);
    expect(swapCount(prepared.frames)).toBe(8);
  });

  it('has one thing to say, which does not keep the outing from starting', () => {
    expect(prepared.problems.map(({ code }) => code)).toEqual(['out-of-reach']);
    expect(prepared.problems.some(stopsStart)).toBe(false);
  });
});

describe('what is wrong with a plan', () => {
  it('names what is missing altogether', () => {
    expect(problemsOf({ rigs: [], sets: [] }).map(({ code }) => code)).toEqual([
      'no-rigs',
      'no-sets',
    ]);
    expect(problemsOf({ rigs: [A] })).toEqual([{ code: 'one-rig' }]);
  });

  it('names a rig that is gone and plans without it', () => {
    const gone = 'gone' as RigId;
    const prepared = preparePlan(plan({ rigs: [A, gone, B] }), PRACTICE_GEAR);
    expect(prepared.problems).toEqual([{ code: 'rig-gone', rig: gone }]);
    expect(prepared.problems.every(stopsStart)).toBe(true);
    expect(prepared.frames.map(({ rig }) => rig)).toEqual([A, B, B, A]);
  });

  it('counts a rig whose lens was deleted as gone', () => {
    const gear = { ...PRACTICE_GEAR, lenses: PRACTICE_GEAR.lenses.slice(0, 1) };
    expect(problemsOf({}, gear)).toEqual([{ code: 'rig-gone', rig: B }]);
  });

  it('names a reference that was taken out, or is gone, and leaves the set unresolved', () => {
    const prepared = preparePlan(plan({ rigs: [B, C] }), PRACTICE_GEAR);
    expect(prepared.problems).toEqual([{ code: 'reference-not-in-plan', set: 's', rig: A }]);
    expect(prepared.table).toEqual([{ kind: 'unresolved', set: 's' }]);
    expect(prepared.frames).toEqual([]);
  });

  it('names two rigs with one letter', () => {
    const gear = {
      ...PRACTICE_GEAR,
      rigs: PRACTICE_GEAR.rigs.map((rig) => ({ ...rig, letter: 'A' as const })),
    };
    expect(problemsOf({}, gear)).toEqual([{ code: 'letter-twice', letter: 'A' }]);
  });

  it('names a capped dark with nothing before it', () => {
    const sets = [set('d', { kind: 'capped-dark' }), set('s')];
    const prepared = preparePlan(plan({ sets }), PRACTICE_GEAR);
    expect(prepared.problems).toEqual([{ code: 'dark-without-light', set: 'd' }]);
    expect(prepared.table.map(({ kind }) => kind)).toEqual(['unresolved', 'compared']);
  });

  it('names the dial that lacks a mark', () => {
    const at = (settings: Settings) => problemsOf({ sets: [set('s', { settings })] });
    const problem = (rule: string) => [{ code: 'settings-not-on-dials', rule, set: 's', rig: A }];
    expect(at(dial('3.2', '8', '200'))).toEqual(problem('f-mark-not-on-lens'));
    expect(at(dial('8', '30', '200'))).toEqual(problem('time-mark-not-on-body'));
    expect(at(dial('8', '8', '50'))).toEqual(problem('iso-mark-not-on-body'));
  });

  it('names a bulb time that the body cannot hold', () => {
    const bulb = (held: number): Settings => ({
      fMark: '8',
      time: { kind: 'bulb', seconds: seconds(held) },
      isoMark: '200',
    });
    const at = (reference: RigId, held: number) =>
      problemsOf({
        rigs: [reference],
        sets: [set('s', { reference, settings: bulb(held) })],
      }).slice(1);
    expect(at(A, 3600)).toEqual([]);
    expect(at(A, 3601)).toEqual([{ code: 'bulb-too-long', longestS: 3600, set: 's', rig: A }]);
    expect(at(B, 90)).toEqual([{ code: 'bulb-not-on-body', set: 's', rig: B }]);
  });

  it('says once for each rig and set what its dials cannot reach', () => {
    const problems = problemsOf({
      rigs: [A, B, C],
      sets: [set('s', { settings: dial('32', '64', '64') })],
    });
    expect(
      problems.map((problem) =>
        problem.code === 'out-of-reach' ? [problem.rig, problem.unreached.code] : problem,
      ),
    ).toEqual([
      [B, 'time-beyond-dial'],
      [B, 'iso-below-dial'],
      [B, 'aperture-narrower-than-lens'],
      [C, 'iso-below-dial'],
      [C, 'aperture-narrower-than-lens'],
    ]);
    expect(problems.some(stopsStart)).toBe(false);
  });

  it('flags an extended ISO and a time that nobody measured', () => {
    const gear: Gear = {
      ...PRACTICE_GEAR,
      bodies: PRACTICE_GEAR.bodies.map((body) =>
        body.sign === 'C' ? { ...body, iso: { ...body.iso, extendedLowest: '100' } } : body,
      ),
    };
    const problems = problemsOf(
      { rigs: [C, B], sets: [set('s', { reference: C, settings: dial('8', '15', '100') })] },
      gear,
    );
    expect(problems).toEqual([
      { code: 'extended-iso', isoMark: '100', set: 's', rig: C },
      { code: 'time-uncertain', set: 's', rig: C },
    ]);
    expect(problems.some(stopsStart)).toBe(false);
  });
});

describe('settings by hand', () => {
  const free = (settings: Record<string, Settings>): Hold => ({
    kind: 'free',
    settings: settings as Record<RigId, Settings>,
  });

  it('are taken as they are and only reported', () => {
    const row = otherRow({ sets: [set('s', { hold: free({ [B]: dial('5.6', '4', '400') }) })] });
    expect(row.match).toBeNull();
    expect(row.dialled.settings).toEqual(dial('5.6', '4', '400'));
    expect(row.differences.residual).toBeNull();
    // Half the time, a stop wider, a stop more ISO.
    expect(row.differences.sum.stops).toBeCloseTo(1, 9);
  });

  it('are asked for where a rig has none', () => {
    const prepared = preparePlan(plan({ sets: [set('s', { hold: free({}) })] }), PRACTICE_GEAR);
    expect(prepared.problems).toEqual([{ code: 'free-settings-missing', set: 's', rig: B }]);
    expect(prepared.problems.some(stopsStart)).toBe(true);
    expect(prepared.frames.every(({ rig }) => rig === A)).toBe(true);
  });

  it('have to stand on the rig’s own dials', () => {
    const hold = free({ [B]: dial('8', '64', '200') });
    expect(problemsOf({ sets: [set('s', { hold })] })).toEqual([
      { code: 'settings-not-on-dials', rule: 'time-mark-not-on-body', set: 's', rig: B },
    ]);
  });
});

describe('capped darks', () => {
  it('take the settings of the set before them on every rig', () => {
    const sets = [
      set('s', { settings: dial('6.3', '64', '100') }),
      set('d', { kind: 'capped-dark', settings: dial('32', '1', '800') }),
    ];
    const { table, frames } = preparePlan(plan({ sets }), PRACTICE_GEAR);
    expect(table[1]).toEqual({ kind: 'follows', set: 'd', after: 's' });
    for (const frame of frames) {
      expect(frame.settings).toEqual(dialledIn(table[0], frame.rig)?.settings);
    }
    expect(frames.filter((frame) => frame.set === 'd')).toHaveLength(4);
  });
});

describe('what stands beside the brightness of a pair', () => {
  const sets = [set('s', { settings: dial('6.3', '64', '100') })];

  it('gives angles, common crop and pupils by the real lenses', () => {
    const besides = besidesIn({ sets });
    // 2 atan(36/70) - 2 atan(43.8/90) and 2 atan(24/70) - 2 atan(32.9/90), degrees.
    expect(besides.angleOfView.horizontal).toBeCloseTo(2.531, 3);
    expect(besides.angleOfView.vertical).toBeCloseTo(-2.311, 3);
    // Height of Birch, width of Alder: (24/35)/(32.9/45) and (43.8/45)/(36/35).
    expect(besides.commonCrop.reference).toBeCloseTo(0.9379, 4);
    expect(besides.commonCrop.other).toBeCloseTo(0.9463, 4);
    // (35 / 6.3496) / (45 / 6.3496).
    expect(besides.pupilRatio).toBeCloseTo(35 / 45, 9);
    expect(besides.timeRatio).toBeCloseTo(60 / 64, 9);
    // The gap between diagonal and area across 4:3 and 3:2.
    expect(besides.diagonalOverstates).toBeCloseTo(0.0572, 4);
  });

  it('measures framing by the rule of the set', () => {
    const ratio = (framing: PlanSet['framing']) =>
      besidesIn({ sets: [set('s', { framing })] }).framingRatio;
    expect(ratio('width')).toBeCloseTo(36 / 35 / (43.8 / 45), 9);
    expect(ratio('height')).toBeCloseTo(24 / 35 / (32.9 / 45), 9);
    expect(ratio('diagonal')).toBeCloseTo(
      Math.hypot(36, 24) / 35 / (Math.hypot(43.8, 32.9) / 45),
      9,
    );
    expect(ratio('pixels-per-degree')).toBeCloseTo((35 * 8368) / 36 / ((45 * 8272) / 43.8), 9);
  });

  it('gives equal depth of field at equal pupils only when the lenses are equivalent', () => {
    const hold: Hold = {
      kind: 'same-iso-and-time',
      aperture: { rule: 'same-depth-of-field', plus: stops(0) },
    };
    const besides = besidesIn({ sets: [set('s', { hold, settings: dial('8', '8', '200') })] });
    // f/8 x 35/45 = 6.22 falls on f/6.3: two hundredths of the pupil short.
    expect(besides.pupilRatio).toBeCloseTo(35 / 6.3496 / (45 / 8), 4);
    // Whole frames at equal size, H = f²/(N d) + f: Birch's frame is wider and so a little deeper.
    const hyperfocal = (f: number, n: number, d: number) => (f * f * 1500) / (n * d) + f;
    expect(besides.depthOfFieldRatio).toBeCloseTo(
      hyperfocal(45, 8, Math.hypot(43.8, 32.9)) / hyperfocal(35, 6.3496, Math.hypot(36, 24)),
      4,
    );
  });

  it('warns of parallax above two pixels of the other rig, and says nothing unless both are stated', () => {
    const parallax = (nearest: number | null, apart: number | null) =>
      besidesIn({
        nearestSubjectMm: nearest === null ? null : millimetres(nearest),
        axesApartMm: apart === null ? null : millimetres(apart),
      }).parallax;
    expect(parallax(null, 200)).toBeNull();
    expect(parallax(50_000, null)).toBeNull();
    // 200 mm x 35 mm / 50 m = 0.14 mm = 32.5 pixels of 4.302 um.
    expect(parallax(50_000, 200)?.px).toBeCloseTo(32.54, 2);
    expect(parallax(50_000, 200)?.warns).toBe(true);
    expect(parallax(1_000_000, 200)).toMatchObject({ px: expect.closeTo(1.627, 3), warns: false });
  });

  it('tells whose body takes a dark frame of its own, and each bit depth', () => {
    const besides = besidesIn({ rigs: [C, B], sets: [set('s', { reference: C })] });
    expect(besides.takesDarkFrame).toEqual({ reference: true, other: false });
    expect(besides.bitDepth).toEqual({ reference: 12, other: 14 });
  });
});
