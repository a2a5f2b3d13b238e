import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, Bulb } from '../gear/body.ts';
import type { BodyId, LensId, RigId } from '../gear/ids.ts';
import type { Lens } from '../gear/lens.ts';
import { exactSettings, positionsOf } from '../gear/positions.ts';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Exact, Settings } from '../gear/settings.ts';
import { isRefusal, must } from '../science/refusal.ts';
import { millimetres, seconds, stops } from '../science/units.ts';
import type { Side } from './causes.ts';
import { type Match, matchSettings } from './matching.ts';
import type { Hold } from './plan.ts';

const practice = (letter: string): Assembled => {
  const rig = PRACTICE_GEAR.rigs.find((candidate) => candidate.letter === letter);
  const assembled = rig && assemble(PRACTICE_GEAR, rig.id);
  if (!assembled) throw new Error(`no practice rig ${letter}`);
  return assembled;
};

const [alder, birch, cedar] = [practice('A'), practice('B'), practice('C')];

const dial = (fMark: string, mark: string, isoMark: string): Settings => ({
  fMark,
  time: { kind: 'dial', mark },
  isoMark,
});

const bulb = (fMark: string, held: number, isoMark: string): Settings => ({
  fMark,
  time: { kind: 'bulb', seconds: seconds(held) },
  isoMark,
});

const side = (assembled: Assembled, settings: Settings): Side => ({
  assembled,
  settings,
  exact: must(exactSettings(assembled, settings)),
});

const sameFNumber = (plus = 0): Hold => ({
  kind: 'same-iso-and-time',
  aperture: { rule: 'same-f-number', plus: stops(plus) },
});
const sameDepth = (plus = 0): Hold => ({
  kind: 'same-iso-and-time',
  aperture: { rule: 'same-depth-of-field', plus: stops(plus) },
});

/** The sums that brute force needs, in its own words: what each hold asks of the other rig. */
function wantedByHand(hold: Hold, reference: Side, other: Assembled): Exact {
  const { n, t, s } = reference.exact;
  const scale = other.lens.focalMm / reference.assembled.lens.focalMm;
  if (hold.kind === 'same-picture') return { n: n * scale, t, s: s * scale ** 2 } as Exact;
  if (hold.kind !== 'same-iso-and-time') return reference.exact;
  const from = hold.aperture.rule === 'same-depth-of-field' ? n * scale : n;
  return { n: from / Math.sqrt(2 ** hold.aperture.plus), t, s } as Exact;
}

interface Combination {
  readonly settings: Settings;
  readonly exact: Exact;
  /** Time, ISO, aperture. */
  readonly deviations: readonly [number, number, number];
}

/** Every combination of the other rig's positions, by the words of the rule and nothing cleverer. */
function bestOfAll(hold: Hold, reference: Side, other: Assembled): Combination {
  const wanted = wantedByHand(hold, reference, other);
  const { times, isos, fNumbers } = must(positionsOf(other.body, other.lens));
  const longest = Math.max(...times.map(({ exact }) => exact));
  const timeChoices: { time: Settings['time']; exact: number }[] = times.map(({ mark, exact }) => ({
    time: { kind: 'dial', mark },
    exact,
  }));
  if (other.body.bulb.kind !== 'none' && wanted.t > longest) {
    const held = Math.min(wanted.t, other.body.bulb.longestS);
    if (held > longest) {
      timeChoices.push({ time: { kind: 'bulb', seconds: seconds(held) }, exact: held });
    }
  }
  let best: Combination | null = null;
  for (const time of timeChoices) {
    for (const speed of isos.filter(({ extended }) => !extended)) {
      for (const aperture of fNumbers) {
        const combination: Combination = {
          settings: { fMark: aperture.mark, time: time.time, isoMark: speed.mark },
          exact: { n: aperture.exact, t: time.exact, s: speed.exact } as Exact,
          deviations: [
            Math.log2(time.exact / wanted.t),
            Math.log2(speed.exact / wanted.s),
            Math.log2((wanted.n / aperture.exact) ** 2),
          ],
        };
        if (!best || compare(hold, combination, best) < 0) best = combination;
      }
    }
  }
  if (!best) throw new Error('no combination');
  return best;
}

function criteria(hold: Hold, { exact, deviations }: Combination): readonly number[] {
  const sizes = deviations.map(Math.abs);
  const sum = deviations[0] + deviations[1] + deviations[2];
  const first =
    hold.kind === 'same-picture'
      ? [Math.max(...sizes), sizes.reduce((total, size) => total + size, 0)]
      : sizes;
  return [...first, Math.abs(sum), exact.t, exact.s, -exact.n];
}

function compare(hold: Hold, a: Combination, b: Combination): number {
  const [left, right] = [criteria(hold, a), criteria(hold, b)];
  for (const [index, value] of left.entries()) {
    const difference = value - (right[index] ?? 0);
    // Two roundings of one figure are no difference.
    if (Math.abs(difference) > 1e-8) return difference;
  }
  return 0;
}

const pickSome = (marks: readonly string[]) =>
  fc.subarray([...marks], { minLength: 0, maxLength: Math.max(0, marks.length - 3) });

const anyBulb: fc.Arbitrary<Bulb> = fc.oneof(
  fc.constant<Bulb>({ kind: 'none' }),
  fc.integer({ min: 20, max: 2000 }).map(
    (longest): Bulb => ({
      kind: 'hold',
      longestS: seconds(longest),
    }),
  ),
);

const anyStep = fc.constantFrom('third', 'half', 'whole');

/** A rig with dials of every habit, some positions missing, and formats and lenses of every size. */
const anyRig: fc.Arbitrary<Assembled> = fc
  .record({
    base: fc.constantFrom(alder, birch, cedar),
    focal: fc.integer({ min: 8, max: 200 }),
    fStep: anyStep,
    widest: fc.constantFrom('1.4', '2', '2.8', '4', '0.95', '1.9', '3.4'),
    narrowest: fc.constantFrom('11', '16', '22', '32'),
    isoStep: anyStep,
    lowest: fc.constantFrom('50', '100', '200'),
    highest: fc.constantFrom('3200', '12800', '51200'),
    extends: fc.boolean(),
    tStep: anyStep,
    fromOne: anyStep,
    shortest: fc.constantFrom('1/8', '1/4', '1/125'),
    longest: fc.constantFrom('15', '30', '60', '64', '128', '240', '900'),
    beyond30s: fc.constantFrom('doubling', 'minutes'),
    longMarks: fc.constantFrom('exact', 'as-marked', 'unknown'),
    bulb: anyBulb,
  })
  .map((pick): Assembled => {
    const body: Body = {
      ...pick.base.body,
      id: 'any-body' as BodyId,
      bulb: pick.bulb,
      iso: {
        lowest: pick.lowest,
        highest: pick.highest,
        step: pick.isoStep,
        extendedLowest: pick.extends ? '25' : null,
        extendedHighest: pick.extends ? '102400' : null,
        missing: [],
      },
      time: {
        shortest: pick.shortest,
        longest: pick.longest,
        step: pick.tStep,
        stepFrom1s: pick.fromOne,
        beyond30s: pick.beyond30s,
        longMarks: pick.longMarks,
        missing: [],
      },
    };
    const lens: Lens = {
      ...pick.base.lens,
      id: 'any-lens' as LensId,
      focalMm: millimetres(pick.focal),
      fNumber: {
        widest: pick.widest,
        narrowest: pick.narrowest,
        step: pick.fStep,
        missing: [],
      },
    };
    const rig = { ...pick.base.rig, id: 'any' as RigId, bodyId: body.id, lensId: lens.id };
    return { rig, body, lens };
  })
  .filter(({ body, lens }) => !isRefusal(positionsOf(body, lens)))
  .chain((whole) => {
    const { times, isos, fNumbers } = must(positionsOf(whole.body, whole.lens));
    return fc
      .record({
        times: pickSome(times.map(({ mark }) => mark)),
        isos: pickSome(isos.filter(({ extended }) => !extended).map(({ mark }) => mark)),
        fNumbers: pickSome(fNumbers.map(({ mark }) => mark)),
      })
      .map(
        (missing): Assembled => ({
          ...whole,
          body: {
            ...whole.body,
            time: { ...whole.body.time, missing: missing.times },
            iso: { ...whole.body.iso, missing: missing.isos },
          },
          lens: { ...whole.lens, fNumber: { ...whole.lens.fNumber, missing: missing.fNumbers } },
        }),
      );
  });

const anyHold: fc.Arbitrary<Hold> = fc.oneof(
  fc.constant<Hold>({ kind: 'same-exposure' }),
  fc.constant<Hold>({ kind: 'same-picture' }),
  // Sixths put a target halfway between two third stops, where the rule for ties decides.
  fc.integer({ min: -18, max: 18 }).map((sixths) => sameFNumber(sixths / 6)),
  fc.integer({ min: -18, max: 18 }).map((sixths) => sameDepth(sixths / 6)),
);

const anySide: fc.Arbitrary<Side> = anyRig.chain((assembled) => {
  const { times, isos, fNumbers } = must(positionsOf(assembled.body, assembled.lens));
  return fc
    .record({
      f: fc.constantFrom(...fNumbers),
      speed: fc.constantFrom(...isos),
      time: fc.oneof(
        fc.constantFrom(...times).map(({ mark, exact }) => ({
          time: { kind: 'dial', mark } as const,
          exact,
        })),
        fc.integer({ min: 1, max: 3000 }).map((held) => ({
          time: { kind: 'bulb', seconds: seconds(held) } as const,
          exact: seconds(held),
        })),
      ),
    })
    .map(({ f, speed, time }) => ({
      assembled,
      settings: { fMark: f.mark, time: time.time, isoMark: speed.mark },
      exact: { n: f.exact, t: time.exact, s: speed.exact },
    }));
});

describe('matching against every combination of positions', () => {
  it('takes the one that the rule takes, on dials with missing positions', () => {
    fc.assert(
      fc.property(anySide, anyRig, anyHold, (reference, other, hold) => {
        const match = must(matchSettings({ reference, other, hold }));
        const best = bestOfAll(hold, reference, other);
        expect(match.settings).toEqual(best.settings);
        expect(match.exact).toEqual(best.exact);
        expect(match.deviation.time).toBeCloseTo(best.deviations[0], 9);
        expect(match.deviation.iso).toBeCloseTo(best.deviations[1], 9);
        expect(match.deviation.aperture).toBeCloseTo(best.deviations[2], 9);
      }),
      { numRuns: 400 },
    );
  });

  it('finds a rig that equals the reference at the reference’s own settings', () => {
    fc.assert(
      fc.property(anySide, anyHold, (reference, hold) => {
        const { isos } = must(positionsOf(reference.assembled.body, reference.assembled.lens));
        const { settings } = reference;
        fc.pre(settings.time.kind === 'dial');
        fc.pre(!isos.some(({ mark, extended }) => extended && mark === settings.isoMark));
        fc.pre(hold.kind !== 'same-iso-and-time' || hold.aperture.plus === 0);
        const match = must(matchSettings({ reference, other: reference.assembled, hold }));
        expect(match.settings).toEqual(settings);
        expect(match.unreached).toEqual([]);
      }),
    );
  });

  it('never chooses an extended ISO', () => {
    const other: Assembled = {
      ...birch,
      body: { ...birch.body, iso: { ...birch.body.iso, extendedLowest: '50' } },
    };
    const match = must(
      matchSettings({
        reference: side(alder, dial('6.3', '64', '64')),
        other,
        hold: { kind: 'same-exposure' },
      }),
    );
    expect(match.settings.isoMark).toBe('100');
    expect(match.unreached).toContainEqual(
      expect.objectContaining({ code: 'iso-below-dial', wanted: match.wanted.s, nearest: 100 }),
    );
  });
});

describe('what a dial cannot reach', () => {
  const held = (other: Assembled, settings: Settings): Match =>
    must(matchSettings({ reference: side(alder, settings), other, hold: sameFNumber() }));

  it('says that 64 s ends at 60 s without bulb, and what that costs', () => {
    const match = held(birch, dial('8', '64', '100'));
    expect(match.settings).toEqual(dial('8', '60', '100'));
    expect(match.unreached).toEqual([
      { code: 'time-beyond-dial', wanted: 64, nearest: 60, cost: expect.closeTo(-0.0931, 4) },
    ]);
  });

  it('holds bulb for the seconds wanted where the body has it', () => {
    const match = held(cedar, dial('8', '64', '200'));
    expect(match.settings).toEqual(bulb('8', 64, '200'));
    expect(match.deviation.time).toBe(0);
    expect(match.unreached).toEqual([]);
  });

  it('does not use bulb for a time that the dial has', () => {
    expect(held(cedar, bulb('8', 50, '200')).settings.time).toEqual({ kind: 'dial', mark: '60' });
  });

  it('holds bulb no longer than the body can, and says so', () => {
    const match = held(cedar, bulb('8', 3600, '200'));
    expect(match.settings.time).toEqual({ kind: 'bulb', seconds: 1800 });
    expect(match.unreached).toEqual([
      { code: 'time-beyond-dial', wanted: 3600, nearest: 1800, cost: expect.closeTo(-1, 9) },
    ]);
  });

  it('says that a lens is not as wide or as narrow as wanted', () => {
    const wide = must(
      matchSettings({
        reference: side(birch, dial('2', '1', '200')),
        other: alder,
        hold: { kind: 'same-exposure' },
      }),
    );
    expect(wide.unreached).toEqual([
      { code: 'aperture-wider-than-lens', wanted: 2, nearest: 4, cost: expect.closeTo(-2, 9) },
    ]);
    expect(held(birch, dial('32', '1', '200')).unreached).toEqual([
      {
        code: 'aperture-narrower-than-lens',
        wanted: 32,
        nearest: expect.closeTo(22.6274, 4),
        cost: expect.closeTo(1, 9),
      },
    ]);
  });

  it('flags a time that nobody has measured', () => {
    expect(held(cedar, dial('8', '16', '200')).timeUncertain).toBe(true);
    expect(held(cedar, dial('8', '8', '200')).timeUncertain).toBe(false);
  });
});

describe('the figures of the practice', () => {
  // Common practice, no source.
  it('takes f/10 and ISO 640 at 45 mm on 43.8 x 32.9 to f/8 and ISO 400 at 35 mm on 36 x 24', () => {
    const match = must(
      matchSettings({
        reference: side(alder, dial('10', '1/10', '640')),
        other: birch,
        hold: { kind: 'same-picture' },
      }),
    );
    expect(match.settings).toEqual(dial('8', '1/10', '400'));
  });

  it('wants the equal pupil of the real focal lengths for equal depth of field', () => {
    const match = must(
      matchSettings({
        reference: side(alder, dial('10', '1/10', '400')),
        other: birch,
        hold: sameDepth(),
      }),
    );
    // 10.0794 x 35/45; f-number x crop ratio would say 7.961.
    expect(match.wanted.n).toBeCloseTo(7.8395, 4);
    expect(match.settings.fMark).toBe('8');
    expect(birch.lens.focalMm / match.wanted.n).toBeCloseTo(alder.lens.focalMm / 10.0794, 4);
  });

  it('opens by the stops asked for', () => {
    const reference = side(alder, dial('6.3', '64', '100'));
    const match = must(matchSettings({ reference, other: birch, hold: sameFNumber(-2 / 3) }));
    expect(match.settings.fMark).toBe('8');
  });

  it('has nothing to match where settings are free', () => {
    const reference = side(alder, dial('6.3', '64', '100'));
    const free: Hold = { kind: 'free', settings: {} };
    expect(matchSettings({ reference, other: birch, hold: free })).toEqual({
      refused: true,
      rule: 'hold-is-free',
    });
  });
});
