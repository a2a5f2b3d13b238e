import { fNumberPositions, isoPositions, timePositions } from '../science/dials.ts';
import { isRefusal, type Refusal } from '../science/refusal.ts';
import { parseDoublingTemperature, parseKelvinDifference } from '../science/sensorUnits.ts';
import type { Stated, ThermalRange } from '../science/thermalRange.ts';
import {
  parseFNumber,
  parseIso,
  parseMillimetres,
  parsePixels,
  parseSeconds,
  parseStops,
} from '../science/units.ts';
import type {
  Bits,
  Body,
  Bulb,
  DarkFrame,
  FileNames,
  IsoDial,
  MeasuredHeat,
  SelfTimer,
  TimeDial,
} from './body.ts';
import { parseMark } from './decimal.ts';
import type { BodyId, LensId, RigId } from './ids.ts';
import type { FNumberDial, Lens } from './lens.ts';
import { LETTERS } from './letter.ts';
import {
  also,
  type Fault,
  type Fields,
  fault,
  id,
  line,
  list,
  name,
  nullable,
  number,
  object,
  oneOf,
  type Reader,
  tagged,
  text,
  truth,
  whole,
  within,
} from './read.ts';
import type { Gear, Offset, Rig } from './rig.ts';
import type { Exact, Settings, TimeChoice } from './settings.ts';

/*
 * What may be stored as gear. The bounds are our own: wide enough for anything
 * that is built, close enough to stop a slip of the finger or a wrong unit.
 */

const MOST_NAME = 60;
const MOST_REMARK = 500;
const MOST_MARKS = 200;
const MOST_THINGS = 500;
const DAY_S = 86_400;

/** A position of a dial: a positive decimal or `1/8000`, in the one spelling that is stored. */
export const readMark: Reader<string> = (value) =>
  typeof value === 'string' && parseMark(value) === value ? value : fault('not-a-mark');

const readMarks = list(readMark, MOST_MARKS);

const readStep = oneOf(['third', 'half', 'whole']);

/** The rule that a dial has positions at all, as the dial's own science sees it. */
const yields =
  <D>(positions: (dial: D) => unknown | Refusal) =>
  (dial: D): Fault | null => {
    const found = positions(dial);
    return isRefusal(found) ? fault(found.rule) : null;
  };

const readIsoDial: Reader<IsoDial> = also(
  object<IsoDial>({
    lowest: readMark,
    highest: readMark,
    step: readStep,
    extendedLowest: nullable(readMark),
    extendedHighest: nullable(readMark),
    missing: readMarks,
  }),
  yields(isoPositions),
);

const readTimeDial: Reader<TimeDial> = also(
  object<TimeDial>({
    shortest: readMark,
    longest: readMark,
    step: readStep,
    stepFrom1s: readStep,
    beyond30s: oneOf(['doubling', 'minutes']),
    longMarks: oneOf(['exact', 'as-marked', 'unknown']),
    missing: readMarks,
  }),
  yields(timePositions),
);

const readBulbTime = object<Extract<Bulb, { longestS: unknown }>>({
  kind: oneOf(['press-press', 'hold']),
  longestS: number(parseSeconds, 1, DAY_S, 's'),
});

const readBulb: Reader<Bulb> = tagged<Bulb, 'kind'>('kind', {
  none: object<Extract<Bulb, { kind: 'none' }>>({ kind: oneOf(['none']) }),
  'press-press': readBulbTime,
  hold: readBulbTime,
});

const readDarkFrame: Reader<DarkFrame> = tagged<DarkFrame, 'kind'>('kind', {
  never: object<Extract<DarkFrame, { kind: 'never' }>>({ kind: oneOf(['never']) }),
  always: object<Extract<DarkFrame, { kind: 'always' }>>({ kind: oneOf(['always']) }),
  from: object<Extract<DarkFrame, { kind: 'from' }>>({
    kind: oneOf(['from']),
    fromS: number(parseSeconds, 0.01, DAY_S, 's'),
  }),
});

const readTimerS = number(parseSeconds, 0.1, 120, 's');

const readSelfTimer: Reader<SelfTimer> = also(
  object<SelfTimer>({
    choicesS: list(readTimerS, 20),
    usedS: nullable(readTimerS),
    survivesPowerOff: truth,
  }),
  ({ choicesS, usedS }) =>
    usedS === null || choicesS.includes(usedS)
      ? null
      : within('usedS', fault('timer-not-among-choices')),
);

const readBits: Reader<Bits> = object<Bits>({ depth: whole(8, 32), loweredBy: line(MOST_REMARK) });

/** Characters that no common file system takes in a name. */
const NOT_IN_FILE_NAMES = /[/\\:*?"<>|]/;

const readPrefix: Reader<string> = also(line(20), (prefix) =>
  NOT_IN_FILE_NAMES.test(prefix) ? fault('not-in-file-names') : null,
);

const readFileNames: Reader<FileNames> = also(
  object<FileNames>({
    prefix: readPrefix,
    digits: whole(1, 9),
    rollsOverAfter: whole(9, 999_999_999),
    rawAndJpegShareNumber: truth,
  }),
  ({ digits, rollsOverAfter }) =>
    rollsOverAfter < 10 ** digits
      ? null
      : within('rollsOverAfter', fault('counter-past-its-digits', { digits })),
);

/** A measured value with its range and where it comes from. */
const stated = <T extends number>(value: Reader<T>): Reader<Stated<T> | null> =>
  nullable(
    also(
      object<Stated<T>>({ usual: value, least: value, most: value, from: name(MOST_REMARK) }),
      ({ usual, least, most }) =>
        least <= usual && usual <= most ? null : fault('value-outside-its-range'),
    ),
  );

const readOverAir = number(parseKelvinDifference, 0, 60, 'K');

/** A reader for each figure of how a body warms, for a form that checks a field as it is left. */
export const heatFigures: Fields<{
  readonly [K in keyof ThermalRange]: ThermalRange[K]['usual'];
}> = {
  tau: number(parseSeconds, 10, 7200, 's'),
  doubling: number(parseDoublingTemperature, 1, 30, 'K'),
  exposing: readOverAir,
  liveView: readOverAir,
  idle: readOverAir,
};

/** The same with its range and its source. */
export const heatFields: Fields<MeasuredHeat> = {
  tau: stated(heatFigures.tau),
  doubling: stated(heatFigures.doubling),
  exposing: stated(heatFigures.exposing),
  liveView: stated(heatFigures.liveView),
  idle: stated(heatFigures.idle),
};

const readSideMm = number(parseMillimetres, 1, 400, 'mm');
const readPixels = number(
  (value) => (Number.isInteger(value) ? parsePixels(value) : fault('not-whole')),
  100,
  100_000,
);

/** A reader for each field of a body, for a form that checks a field as it is left. */
export const bodyFields: Fields<Body> = {
  id: id<BodyId>(),
  name: name(MOST_NAME),
  sign: oneOf(LETTERS),
  widthMm: readSideMm,
  heightMm: readSideMm,
  pixelsWide: readPixels,
  pixelsHigh: readPixels,
  iso: readIsoDial,
  time: readTimeDial,
  bulb: readBulb,
  selfTimer: readSelfTimer,
  darkFrame: readDarkFrame,
  bits: readBits,
  files: readFileNames,
  heat: object<MeasuredHeat>(heatFields),
  invented: truth,
};

/** Above this ratio of the two pixel pitches a side was mistyped or the format is another one. */
const PITCH_RATIO = 1.1;

/** A body whose sides and pixels belong together: wide side first, pixels nearly square. */
export const readBody: Reader<Body> = also(object<Body>(bodyFields), (body) => {
  if (body.heightMm > body.widthMm) return within('heightMm', fault('sensor-upright'));
  const ratio = body.widthMm / body.pixelsWide / (body.heightMm / body.pixelsHigh);
  return Math.max(ratio, 1 / ratio) > PITCH_RATIO
    ? within('pixelsHigh', fault('pixels-not-of-this-sensor'))
    : null;
});

const readFNumberDial: Reader<FNumberDial> = also(
  object<FNumberDial>({
    widest: readMark,
    narrowest: readMark,
    step: readStep,
    missing: readMarks,
  }),
  yields(fNumberPositions),
);

/** A reader for each field of a lens, for a form that checks a field as it is left. */
export const lensFields: Fields<Lens> = {
  id: id<LensId>(),
  name: name(MOST_NAME),
  focalMm: number(parseMillimetres, 1, 5000, 'mm'),
  fNumber: readFNumberDial,
  transmissionStops: nullable(number(parseStops, -5, 0, 'stop')),
  closestFocusMm: nullable(number(parseMillimetres, 1, 100_000, 'mm')),
  focusSurvivesPowerOff: truth,
  invented: truth,
};

export const readLens: Reader<Lens> = object<Lens>(lensFields);

/** A day of the calendar, YYYY-MM-DD. */
export const readDate: Reader<string> = (value) => {
  const parts = typeof value === 'string' ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(value) : null;
  if (parts === null) return fault('not-a-date');
  const day = new Date(Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])));
  return day.toISOString().startsWith(parts[0]) ? parts[0] : fault('not-a-date');
};

/** A reader for each field of an offset, for a form that checks a field as it is left. */
export const offsetFields: Fields<Offset> = {
  isoMark: nullable(readMark),
  stops: number(parseStops, -5, 5, 'stop'),
  date: readDate,
  how: text(MOST_REMARK),
};

const readOffset: Reader<Offset> = object<Offset>(offsetFields);

export const readRig: Reader<Rig> = object<Rig>({
  id: id<RigId>(),
  letter: oneOf(LETTERS),
  bodyId: id<BodyId>(),
  lensId: id<LensId>(),
  offsets: list(readOffset, MOST_THINGS),
  invented: truth,
});

const inList = (listName: string, index: number, field: string, inner: Fault): Fault =>
  within(listName, within(`[${index}]`, within(field, inner)));

/** Gear in which every rig finds its body and lens, and no id stands twice, whatever it names. */
export const readGear: Reader<Gear> = also(
  object<Gear>({
    bodies: list(readBody, MOST_THINGS),
    lenses: list(readLens, MOST_THINGS),
    rigs: list(readRig, MOST_THINGS),
  }),
  (gear) => {
    const seen = new Set<string>();
    for (const key of ['bodies', 'lenses', 'rigs'] as const) {
      for (const [index, thing] of gear[key].entries()) {
        if (seen.has(thing.id))
          return inList(key, index, 'id', fault('id-twice', { id: thing.id }));
        seen.add(thing.id);
      }
    }
    for (const [index, { bodyId, lensId }] of gear.rigs.entries()) {
      if (!gear.bodies.some((body) => body.id === bodyId)) {
        return inList('rigs', index, 'bodyId', fault('body-gone', { id: bodyId }));
      }
      if (!gear.lenses.some((lens) => lens.id === lensId)) {
        return inList('rigs', index, 'lensId', fault('lens-gone', { id: lensId }));
      }
    }
    return null;
  },
);

export const readTimeChoice: Reader<TimeChoice> = tagged<TimeChoice, 'kind'>('kind', {
  dial: object<Extract<TimeChoice, { kind: 'dial' }>>({ kind: oneOf(['dial']), mark: readMark }),
  bulb: object<Extract<TimeChoice, { kind: 'bulb' }>>({
    kind: oneOf(['bulb']),
    seconds: number(parseSeconds, 0.01, DAY_S, 's'),
  }),
});

/** Settings by their marks; whether a rig has such positions is `exactSettings`' question. */
export const readSettings: Reader<Settings> = object<Settings>({
  fMark: readMark,
  time: readTimeChoice,
  isoMark: readMark,
});

/** The values behind settings. */
export const readExact: Reader<Exact> = object<Exact>({
  n: number(parseFNumber, 0.1, 1000),
  t: number(parseSeconds, 1e-6, DAY_S, 's'),
  s: number(parseIso, 0.1, 1e8),
});
