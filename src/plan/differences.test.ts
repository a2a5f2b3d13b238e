import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PRACTICE_GEAR } from '../gear/practice.ts';
import { type Assembled, assemble } from '../gear/rig.ts';
import type { Exact } from '../gear/settings.ts';
import { area } from '../science/formats.ts';
import {
  exposureDifference,
  renderedDifference,
  totalLightDifference,
} from '../science/lightBudget.ts';
import { must } from '../science/refusal.ts';
import { fNumber, iso, millimetres, type Stops, seconds, stops } from '../science/units.ts';
import { commonCrop } from '../science/view.ts';
import { CAUSES, type Cause, type KnownOrUnknown, type Side } from './causes.ts';
import { type Differences, differencesBetween, evenUp } from './differences.ts';
import { formatOf, viewOf } from './framing.ts';
import { matchSettings } from './matching.ts';
import type { Hold } from './plan.ts';

const practice = (letter: string): Assembled => {
  const rig = PRACTICE_GEAR.rigs.find((candidate) => candidate.letter === letter);
  const assembled = rig && assemble(PRACTICE_GEAR, rig.id);
  if (!assembled) throw new Error(`no practice rig ${letter}`);
  return assembled;
};

const [alder, birch, cedar] = [practice('A'), practice('B'), practice('C')];

const FREE: Hold = { kind: 'free', settings: {} };

/** What was really set; the marks matter to nothing but an offset found at one ISO. */
const side = (assembled: Assembled, exact: Exact, isoMark = '100'): Side => ({
  assembled,
  exact,
  settings: { fMark: '8', time: { kind: 'dial', mark: '1' }, isoMark },
});

/** Glass loss and offset as stated, or not. */
const stating = (
  assembled: Assembled,
  offset: Stops | null,
  transmission: Stops | null,
): Assembled => ({
  ...assembled,
  lens: { ...assembled.lens, transmissionStops: transmission },
  rig: {
    ...assembled.rig,
    offsets:
      offset === null ? [] : [{ isoMark: null, stops: offset, date: '2027-01-10', how: 'wall' }],
  },
});

const line = (differences: Differences, cause: Cause) => {
  const found = differences.lines.find((candidate) => candidate.cause === cause);
  if (!found) throw new Error(cause);
  return found;
};

const stopsOf = (value: KnownOrUnknown | null): number => {
  if (!value?.known) throw new Error('unknown');
  return value.stops;
};

const anyExact: fc.Arbitrary<Exact> = fc
  .record({
    n: fc.double({ min: 1, max: 32, noNaN: true }),
    t: fc.double({ min: 1e-3, max: 2000, noNaN: true }),
    s: fc.double({ min: 50, max: 51_200, noNaN: true }),
  })
  .map(({ n, t, s }) => ({ n: fNumber(n), t: seconds(t), s: iso(s) }));

const anyStops = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map(stops);
const anyRig = fc
  .record({
    base: fc.constantFrom(alder, birch, cedar),
    focal: fc.double({ min: 8, max: 300, noNaN: true }),
    offset: fc.option(anyStops(-2, 2)),
    transmission: fc.option(anyStops(-2, 0)),
  })
  .map(({ base, focal, offset, transmission }) => {
    const stated = stating(base, offset, transmission);
    return { ...stated, lens: { ...stated.lens, focalMm: millimetres(focal) } };
  });
const anySide = fc.tuple(anyRig, anyExact).map(([rig, exact]) => side(rig, exact));

describe('the practice pair', () => {
  // Invented pair; figures of the reference, derived from exact marks and published formats.
  const differences = differencesBetween(
    side(birch, { n: fNumber(8), t: seconds(60), s: iso(100) }),
    side(alder, { n: fNumber(2 ** (16 / 6)), t: seconds(64), s: iso(100) }),
    FREE,
  );

  it('gives Alder 0.67 + 0.09 = 0.76 stop more light per area', () => {
    expect(stopsOf(line(differences, 'aperture').difference)).toBeCloseTo(0.67, 2);
    expect(stopsOf(line(differences, 'time').difference)).toBeCloseTo(0.09, 2);
    expect(differences.light.perArea.stops).toBeCloseTo(0.76, 2);
    expect(differences.sum.stops).toBeCloseTo(0.76, 2);
  });

  it('gives it 0.74 stop by area, 1.50 in all', () => {
    const { perArea, wholeSensor } = differences.light;
    expect(wholeSensor.stops - perArea.stops).toBeCloseTo(0.74, 2);
    expect(wholeSensor.stops).toBeCloseTo(1.5, 2);
  });

  it('darkens Alder by as much to even the pair up', () => {
    expect(evenUp(differences).stops).toBeCloseTo(-0.76, 2);
    expect(evenUp(differences).missing).toEqual(['offset', 'transmission', 'fade']);
  });

  it('has neither target nor residual where settings are free', () => {
    expect(differences.lines.map(({ target, residual }) => target ?? residual)).toEqual(
      CAUSES.map(() => null),
    );
    expect(differences.residual).toBeNull();
  });
});

describe('differences of any pair', () => {
  it('turn their sign when the sides change places', () => {
    fc.assert(
      fc.property(anySide, anySide, (a, b) => {
        const there = differencesBetween(a, b, FREE);
        const back = differencesBetween(b, a, FREE);
        expect(there.sum.stops).toBeCloseTo(-back.sum.stops, 9);
        for (const figure of ['perArea', 'wholeSensor', 'commonCrop'] as const) {
          expect(there.light[figure].stops).toBeCloseTo(-back.light[figure].stops, 9);
          expect(there.light[figure].missing).toEqual(back.light[figure].missing);
        }
        for (const cause of CAUSES) {
          const [one, other] = [line(there, cause).difference, line(back, cause).difference];
          expect(one.known).toBe(other.known);
          if (one.known) expect(one.stops).toBeCloseTo(-stopsOf(other), 9);
        }
      }),
    );
  });

  it('never take the unknown for zero', () => {
    fc.assert(
      fc.property(anySide, anySide, (reference, other) => {
        const differences = differencesBetween(reference, other, FREE);
        const stated = (cause: 'offset' | 'transmission', { assembled }: Side) =>
          cause === 'offset'
            ? assembled.rig.offsets.length > 0
            : assembled.lens.transmissionStops !== null;
        for (const cause of ['offset', 'transmission'] as const) {
          const [here, there] = [stated(cause, reference), stated(cause, other)];
          const { difference } = line(differences, cause);
          if (here && there) expect(difference.known).toBe(true);
          else {
            const why = here
              ? 'other-not-stated'
              : there
                ? 'reference-not-stated'
                : 'neither-stated';
            expect(difference).toEqual({ known: false, why });
          }
        }
        expect(line(differences, 'fade').difference).toEqual({
          known: false,
          why: 'no-sky',
        });
        const counted = differences.lines.filter((one) => one.counted);
        expect(differences.sum.missing).toEqual(
          counted.filter(({ difference }) => !difference.known).map(({ cause }) => cause),
        );
        expect(differences.sum.stops).toBeCloseTo(
          counted.reduce(
            (sum, { difference }) => sum + (difference.known ? difference.stops : 0),
            0,
          ),
          9,
        );
      }),
    );
  });

  it('agree with the light budget where everything is stated', () => {
    const stated = fc.tuple(anyStops(-2, 0), anyStops(-2, 0));
    fc.assert(
      fc.property(anySide, anySide, stated, (one, two, [glassOne, glassTwo]) => {
        const a = side(stating(one.assembled, null, glassOne), one.exact);
        const b = side(stating(two.assembled, null, glassTwo), two.exact);
        const path = ({ exact, assembled }: Side, glass: number) => ({
          ...exact,
          glassLoss: stops(-glass),
          filterLoss: stops(0),
          extensionLoss: stops(0),
          isoOffset: stops(0),
          format: formatOf(assembled.body),
        });
        const { sum, light } = differencesBetween(a, b, FREE);
        const [first, second] = [path(a, glassOne), path(b, glassTwo)];
        expect(sum.stops).toBeCloseTo(renderedDifference(first, second, stops(0)), 9);
        expect(light.perArea.stops).toBeCloseTo(exposureDifference(first, second, stops(0)), 9);
        expect(light.wholeSensor.stops).toBeCloseTo(
          totalLightDifference(first, second, stops(0)),
          9,
        );
      }),
    );
  });

  it('count over the common crop what falls on its area of each sensor', () => {
    fc.assert(
      fc.property(anySide, anySide, (reference, other) => {
        const { ofFirst, ofSecond } = commonCrop(
          viewOf(reference.assembled),
          viewOf(other.assembled),
        );
        const ratio =
          (ofSecond * area(formatOf(other.assembled.body))) /
          (ofFirst * area(formatOf(reference.assembled.body)));
        const { perArea, commonCrop: crop } = differencesBetween(reference, other, FREE).light;
        expect(crop.stops - perArea.stops).toBeCloseTo(Math.log2(ratio), 9);
      }),
    );
  });
});

describe('offset and transmission', () => {
  const exact: Exact = { n: fNumber(8), t: seconds(1), s: iso(100) };

  it('do not count the glass twice: an offset is found through the lens', () => {
    const differences = differencesBetween(
      side(stating(alder, stops(0.1), stops(-0.3)), exact),
      side(stating(birch, stops(-0.15), stops(-0.2)), exact),
      FREE,
    );
    expect(stopsOf(line(differences, 'transmission').difference)).toBeCloseTo(0.1, 9);
    expect(line(differences, 'transmission').counted).toBe(false);
    expect(differences.sum.stops).toBeCloseTo(-0.25, 9);
    expect(differences.sum.missing).toEqual(['fade']);
    // The light itself passed the glass, whatever the offset says.
    expect(differences.light.perArea.stops).toBeCloseTo(0.1, 9);
  });

  it('count the glass as long as an offset is missing', () => {
    const differences = differencesBetween(
      side(stating(alder, stops(0.1), stops(-0.3)), exact),
      side(stating(birch, null, stops(-0.2)), exact),
      FREE,
    );
    expect(differences.sum.stops).toBeCloseTo(0.1, 9);
    expect(differences.sum.missing).toEqual(['offset', 'fade']);
  });

  it('take the offset that was found at the ISO set', () => {
    const found = (isoMark: string | null, value: number) => ({
      isoMark,
      stops: stops(value),
      date: '2027-01-10',
      how: 'wall',
    });
    const rig = {
      ...birch,
      rig: { ...birch.rig, offsets: [found(null, 0.2), found('12800', -0.4)] },
    };
    const at = (isoMark: string) =>
      stopsOf(
        line(
          differencesBetween(
            side(stating(alder, stops(0), null), exact, isoMark),
            side(rig, exact, isoMark),
            FREE,
          ),
          'offset',
        ).difference,
      );
    expect(at('100')).toBeCloseTo(0.2, 9);
    expect(at('12800')).toBeCloseTo(-0.4, 9);
  });
});

describe('residuals', () => {
  const anyHold: fc.Arbitrary<Hold> = fc.oneof(
    fc.constant<Hold>({ kind: 'same-picture' }),
    fc.constant<Hold>({ kind: 'same-exposure' }),
    fc
      .tuple(fc.constantFrom('same-f-number', 'same-depth-of-field'), anyStops(-3, 3))
      .map(([rule, plus]): Hold => ({ kind: 'same-iso-and-time', aperture: { rule, plus } })),
  );

  it('are what the dials added to what the hold wants', () => {
    fc.assert(
      fc.property(
        anySide,
        fc.constantFrom(alder, birch, cedar),
        anyHold,
        (reference, other, hold) => {
          const match = must(matchSettings({ reference, other, hold }));
          const differences = differencesBetween(reference, { assembled: other, ...match }, hold);
          for (const cause of ['time', 'aperture', 'iso'] as const) {
            const { difference, target, residual } = line(differences, cause);
            expect(stopsOf(residual)).toBeCloseTo(match.deviation[cause], 9);
            expect(stopsOf(difference)).toBeCloseTo((target ?? Number.NaN) + stopsOf(residual), 9);
          }
        },
      ),
    );
  });

  it('leave a full equivalence as bright as the reference, but for the dials', () => {
    const reference = side(alder, { n: fNumber(8), t: seconds(1), s: iso(800) });
    const { lines } = differencesBetween(reference, side(birch, reference.exact), {
      kind: 'same-picture',
    });
    const targets = Object.fromEntries(lines.map(({ cause, target }) => [cause, target]));
    // 2 log2(45/35): the shorter lens opens for an equal pupil and its ISO falls by as much.
    expect(targets['aperture']).toBeCloseTo(0.7251, 4);
    expect(targets['iso']).toBeCloseTo(-0.7251, 4);
    expect(targets['time']).toBe(0);
  });
});
