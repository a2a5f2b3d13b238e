import {
  duration,
  type Millimetres,
  millimetres,
  pixels,
  type Seconds,
  seconds,
} from '../science/units.ts';
import type { Body } from './body.ts';
import { NOTHING_MEASURED } from './bodyHeat.ts';
import type { BodyId, LensId, RigId } from './ids.ts';
import type { Lens } from './lens.ts';
import type { Letter } from './letter.ts';
import type { Gear, Rig } from './rig.ts';

/*
 * The gear of the practice outing. Every body, lens and figure here is invented;
 * no maker builds them. They differ on purpose in all that makes a comparison
 * hard: three formats and two aspect ratios, a dial that reaches 64 s against
 * two that stop at 60 s, bulb by two presses, by holding and not at all.
 */

const timer = (usedS: Seconds, ...others: Seconds[]): Body['selfTimer'] => ({
  choicesS: [usedS, ...others],
  usedS,
  survivesPowerOff: false,
});

const alder: Body = {
  id: 'practice-alder-44' as BodyId,
  name: 'Alder 44',
  sign: 'A',
  widthMm: millimetres(43.8),
  heightMm: millimetres(32.9),
  pixelsWide: pixels(8272),
  pixelsHigh: pixels(6200),
  iso: {
    lowest: '64',
    highest: '25600',
    step: 'third',
    extendedLowest: null,
    extendedHighest: null,
    missing: [],
  },
  time: {
    shortest: '1/4000',
    longest: '64',
    step: 'third',
    stepFrom1s: 'whole',
    beyond30s: 'doubling',
    longMarks: 'exact',
    missing: [],
  },
  bulb: { kind: 'press-press', longestS: seconds(3600) },
  selfTimer: timer(duration(2), duration(10)),
  darkFrame: { kind: 'never' },
  bits: { depth: 16, loweredBy: 'continuous release' },
  files: { prefix: 'ALD_', digits: 4, rollsOverAfter: 9999, rawAndJpegShareNumber: true },
  heat: NOTHING_MEASURED,
  invented: true,
};

const birch: Body = {
  id: 'practice-birch-36' as BodyId,
  name: 'Birch 36',
  sign: 'B',
  widthMm: millimetres(36),
  heightMm: millimetres(24),
  pixelsWide: pixels(8368),
  pixelsHigh: pixels(5584),
  iso: {
    lowest: '100',
    highest: '51200',
    step: 'third',
    extendedLowest: null,
    extendedHighest: null,
    missing: [],
  },
  time: {
    shortest: '1/8000',
    longest: '60',
    step: 'third',
    stepFrom1s: 'third',
    beyond30s: 'minutes',
    longMarks: 'exact',
    missing: [],
  },
  bulb: { kind: 'none' },
  selfTimer: timer(duration(2), duration(5), duration(10)),
  darkFrame: { kind: 'never' },
  bits: { depth: 14, loweredBy: 'silent shutter' },
  files: { prefix: 'BIR', digits: 5, rollsOverAfter: 99999, rawAndJpegShareNumber: true },
  heat: NOTHING_MEASURED,
  invented: true,
};

const cedar: Body = {
  id: 'practice-cedar-17' as BodyId,
  name: 'Cedar 17',
  sign: 'C',
  widthMm: millimetres(17.3),
  heightMm: millimetres(13),
  pixelsWide: pixels(5184),
  pixelsHigh: pixels(3888),
  iso: {
    lowest: '200',
    highest: '25600',
    step: 'third',
    extendedLowest: null,
    extendedHighest: null,
    missing: [],
  },
  time: {
    shortest: '1/4000',
    longest: '60',
    step: 'third',
    stepFrom1s: 'third',
    beyond30s: 'minutes',
    longMarks: 'unknown',
    missing: [],
  },
  bulb: { kind: 'hold', longestS: seconds(1800) },
  selfTimer: timer(duration(2), duration(12)),
  darkFrame: { kind: 'from', fromS: seconds(8) },
  bits: { depth: 12, loweredBy: '' },
  files: { prefix: 'CDR_', digits: 4, rollsOverAfter: 9999, rawAndJpegShareNumber: true },
  heat: NOTHING_MEASURED,
  invented: true,
};

const lens = (
  id: string,
  name: string,
  focalMm: Millimetres,
  widest: string,
  narrowest: string,
  closestFocusMm: Millimetres,
): Lens => ({
  id: id as LensId,
  name,
  focalMm,
  fNumber: { widest, narrowest, step: 'third', missing: [] },
  transmissionStops: null,
  closestFocusMm,
  focusSurvivesPowerOff: false,
  invented: true,
});

const alder45 = lens(
  'practice-alder-45',
  'Alder 45 mm',
  millimetres(45),
  '4',
  '32',
  millimetres(450),
);
const birch35 = lens(
  'practice-birch-35',
  'Birch 35 mm',
  millimetres(35),
  '2',
  '22',
  millimetres(300),
);
const cedar17 = lens(
  'practice-cedar-lens-17',
  'Cedar 17 mm',
  millimetres(17),
  '1.8',
  '22',
  millimetres(200),
);

const rig = (letter: Letter, body: Body, lensOn: Lens): Rig => ({
  id: `practice-rig-${letter.toLowerCase()}` as RigId,
  letter,
  bodyId: body.id,
  lensId: lensOn.id,
  offsets: [],
  invented: true,
});

/** The three invented rigs of the practice outing: A is Alder 44, B Birch 36, C Cedar 17. */
export const PRACTICE_GEAR: Gear = {
  bodies: [alder, birch, cedar],
  lenses: [alder45, birch35, cedar17],
  rigs: [rig('A', alder, alder45), rig('B', birch, birch35), rig('C', cedar, cedar17)],
};
