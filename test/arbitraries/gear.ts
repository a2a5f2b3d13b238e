import fc, { type Arbitrary } from 'fast-check';
import type {
  Body,
  Bulb,
  DarkFrame,
  IsoDial,
  MeasuredHeat,
  TimeDial,
} from '../../src/gear/body.ts';
import type { BodyId, LensId, RigId } from '../../src/gear/ids.ts';
import type { Lens } from '../../src/gear/lens.ts';
import { LETTERS } from '../../src/gear/letter.ts';
import type { Gear, Offset, Rig } from '../../src/gear/rig.ts';
import type { Settings, TimeChoice } from '../../src/gear/settings.ts';
import { F_NUMBER_MARKS, ISO_MARKS, type Step, TIME_MARKS } from '../../src/science/dialMarks.ts';
import { millimetres, pixels, seconds, stops } from '../../src/science/units.ts';

/*
 * Random gear that is valid by construction, not by asking the readers: so a test
 * that reads it back can fail.
 */

export const anyId = <T extends string>(): Arbitrary<T> =>
  fc.uuid() as Arbitrary<string> as Arbitrary<T>;

const step: Arbitrary<Step> = fc.constantFrom('third', 'half', 'whole');

/** Letters of several scripts, quotes, separators and all that breaks careless writers. */
export const anyLine = (most: number): Arbitrary<string> =>
  fc
    .string({ unit: fc.constantFrom(...'aZ09 _-=+@,;"\'\\/<>&{}[]é–日🌒\u2028'), maxLength: most })
    .filter((line) => line.length <= most);

export const anyText = (most: number): Arbitrary<string> =>
  fc
    .array(anyLine(most), { maxLength: 4 })
    .chain((lines) => fc.constantFrom('\n', '\r\n', '\t').map((joint) => lines.join(joint)))
    .filter((text) => text.length <= most);

const anyName = anyLine(60).map((line) => (line.trim() === '' ? 'x' : line));

/** Two marks of a ladder in order, and a few between them that are missing, never all. */
const ends = (ladder: readonly string[]) =>
  fc
    .tuple(fc.nat(ladder.length - 1), fc.nat(ladder.length - 1))
    .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const)
    .chain(([from, to]) =>
      fc.subarray(ladder.slice(from + 1, to)).map((missing) => ({
        first: ladder[from] ?? '',
        last: ladder[to] ?? '',
        missing,
        from,
        to,
      })),
    );

const isoDial: Arbitrary<IsoDial> = step.chain((s) =>
  ends(ISO_MARKS[s]).chain(({ first, last, missing, from, to }) =>
    fc.record({
      lowest: fc.constant(first),
      highest: fc.constant(last),
      step: fc.constant(s),
      extendedLowest: fc.option(fc.constantFrom(...ISO_MARKS[s].slice(0, from + 1))),
      extendedHighest: fc.option(fc.constantFrom(...ISO_MARKS[s].slice(to))),
      missing: fc.constant(missing),
    }),
  ),
);

const timeDial: Arbitrary<TimeDial> = fc.tuple(step, step).chain(([s, from1s]) =>
  ends(TIME_MARKS[s].filter((mark) => mark.startsWith('1/'))).chain(({ first, missing }) =>
    fc.record({
      shortest: fc.constant(first),
      longest: fc.constantFrom('2', '30', '60', '64', '100'),
      step: fc.constant(s),
      stepFrom1s: fc.constant(from1s),
      beyond30s: fc.constantFrom('doubling', 'minutes'),
      longMarks: fc.constantFrom('exact', 'as-marked', 'unknown'),
      missing: fc.constant(missing),
    }),
  ),
);

const bulb: Arbitrary<Bulb> = fc.oneof(
  fc.constant({ kind: 'none' } as const),
  fc.record({
    kind: fc.constantFrom('press-press', 'hold'),
    longestS: fc.integer({ min: 1, max: 86_400 }).map(seconds),
  }),
);

const darkFrame: Arbitrary<DarkFrame> = fc.oneof(
  fc.constantFrom<DarkFrame>({ kind: 'never' }, { kind: 'always' }),
  fc.record({
    kind: fc.constant('from' as const),
    fromS: fc.integer({ min: 1, max: 60 }).map(seconds),
  }),
);

/** Three values in order with their source, or nothing measured. */
const stated = (min: number, max: number) =>
  fc.option(
    fc
      .tuple(
        fc.array(fc.double({ min, max, noNaN: true }), { minLength: 3, maxLength: 3 }),
        anyName,
      )
      .map(([values, from]) => {
        const [least, usual, most] = values.toSorted((a, b) => a - b);
        return { usual, least, most, from };
      }),
  );

export const anyBody: Arbitrary<Body> = fc
  .tuple(fc.double({ min: 5, max: 60, noNaN: true }), fc.double({ min: 1, max: 1.8, noNaN: true }))
  .chain(([width, aspect]) =>
    fc.integer({ min: 1000, max: 12_000 }).chain((wide) =>
      fc
        .uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 4 })
        .chain((timers) =>
          fc.integer({ min: 1, max: 9 }).chain((digits) =>
            fc.record({
              id: anyId<BodyId>(),
              name: anyName,
              sign: fc.constantFrom(...LETTERS),
              widthMm: fc.constant(millimetres(width)),
              heightMm: fc.constant(millimetres(width / aspect)),
              pixelsWide: fc.constant(pixels(wide)),
              pixelsHigh: fc.constant(pixels(Math.round(wide / aspect))),
              iso: isoDial,
              time: timeDial,
              bulb,
              selfTimer: fc.record({
                choicesS: fc.constant(timers.map(seconds)),
                usedS: fc.option(fc.constantFrom(...timers.map(seconds))),
                survivesPowerOff: fc.boolean(),
              }),
              darkFrame,
              heat: fc.record({
                tau: stated(10, 7200),
                doubling: stated(1, 30),
                exposing: stated(0, 60),
                liveView: stated(0, 60),
                idle: stated(0, 60),
              }) as Arbitrary<MeasuredHeat>,
              bits: fc.record({ depth: fc.integer({ min: 8, max: 32 }), loweredBy: anyLine(100) }),
              files: fc.record({
                prefix: fc.constantFrom('', 'ALD_', '_1', 'a b'),
                digits: fc.constant(digits),
                rollsOverAfter: fc.integer({ min: 9, max: 10 ** digits - 1 }),
                rawAndJpegShareNumber: fc.boolean(),
              }),
              invented: fc.boolean(),
            }),
          ),
        ),
    ),
  );

export const anyLens: Arbitrary<Lens> = step.chain((s) =>
  ends(F_NUMBER_MARKS[s]).chain(({ first, last, missing }) =>
    fc.record({
      id: anyId<LensId>(),
      name: anyName,
      focalMm: fc.double({ min: 1, max: 5000, noNaN: true }).map(millimetres),
      fNumber: fc.record({
        // An odd maximum stays as marked.
        widest: fc.constantFrom(first, '0.95'),
        narrowest: fc.constant(last),
        step: fc.constant(s),
        missing: fc.constant(missing),
      }),
      transmissionStops: fc.option(fc.double({ min: -5, max: -0.001, noNaN: true }).map(stops)),
      closestFocusMm: fc.option(fc.integer({ min: 1, max: 100_000 }).map(millimetres)),
      focusSurvivesPowerOff: fc.boolean(),
      invented: fc.boolean(),
    }),
  ),
);

const anyDate = fc
  .date({ min: new Date('2000-01-01'), max: new Date('2099-12-31'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10));

export const anyOffset: Arbitrary<Offset> = fc.record({
  isoMark: fc.option(fc.constantFrom(...ISO_MARKS.third)),
  stops: fc.double({ min: -5, max: 5, noNaN: true }).map((value) => stops(value + 0)),
  date: anyDate,
  how: anyText(200),
});

const rigOf = (body: Body, lens: Lens): Arbitrary<Rig> =>
  fc.record({
    id: anyId<RigId>(),
    letter: fc.constantFrom(...LETTERS),
    bodyId: fc.constant(body.id),
    lensId: fc.constant(lens.id),
    offsets: fc.array(anyOffset, { maxLength: 3 }),
    invented: fc.constant(body.invented || lens.invented),
  });

/** Gear whose rigs all stand on bodies and lenses that are there. */
export const anyGear: Arbitrary<Gear> = fc
  .tuple(
    fc.array(anyBody, { minLength: 1, maxLength: 3 }),
    fc.array(anyLens, { minLength: 1, maxLength: 3 }),
  )
  .chain(([bodies, lenses]) =>
    fc
      .array(
        fc
          .tuple(fc.constantFrom(...bodies), fc.constantFrom(...lenses))
          .chain(([body, lens]) => rigOf(body, lens)),
        { maxLength: 4 },
      )
      .map((rigs) => ({ bodies, lenses, rigs })),
  );

const anyTime: Arbitrary<TimeChoice> = fc.oneof(
  fc.constantFrom(...TIME_MARKS.third).map((mark) => ({ kind: 'dial' as const, mark })),
  fc.integer({ min: 1, max: 3600 }).map((s) => ({ kind: 'bulb' as const, seconds: seconds(s) })),
);

export const anySettings: Arbitrary<Settings> = fc.record({
  fMark: fc.constantFrom(...F_NUMBER_MARKS.third),
  time: anyTime,
  isoMark: fc.constantFrom(...ISO_MARKS.third),
});
