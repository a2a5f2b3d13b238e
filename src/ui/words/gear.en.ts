import type { Bulb, DarkFrame, TimeDial } from '../../gear/body.ts';
import type { Step } from '../../science/dials.ts';
import { gearHeat } from './gearHeat.en.ts';

/** What came out of a file. */
interface Taken {
  readonly bodies: number;
  readonly lenses: number;
  readonly rigs: number;
  readonly copies: number;
  readonly deletedHere: number;
}

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Words of the Gear place. */
export const gear = {
  heat: gearHeat,
  title: 'Gear',
  chooseHint: 'Choose a body, a lens or a rig to see it here.',
  gone: 'This is not in your gear any more.',
  toGear: 'Back to all gear',

  bodies: 'Bodies',
  lenses: 'Lenses',
  rigs: 'Rigs',
  noBody:
    'No body yet. Add the first one: its name, its sensor and its pixels are enough to begin.',
  noLens: 'No lens yet. Add one with its focal length and its f-numbers.',
  noRig: 'No rig yet. A rig is a body with the lens on it, as it stands on the tripod.',
  rigNeedsBoth: 'A rig takes a body and a lens. Add both first.',
  addBody: 'Add a body',
  addLens: 'Add a lens',
  addRig: 'Put a rig together',
  allInvented:
    'All of this is invented, for practice. Add a body of your own to plan a test with it.',

  change: 'Change',
  called: 'What it is called',
  file: 'Gear file',
  fileIs: 'Hands your own gear to another phone. Invented gear stays here.',
  toFile: 'Gear to a file',
  fromFile: 'Gear from a file',
  taken: ({ bodies, lenses, rigs, copies, deletedHere }: Taken) => {
    const came =
      bodies + lenses + rigs === 0
        ? 'Nothing new in this file.'
        : `Taken: ${count(bodies, 'body', 'bodies')}, ${count(lenses, 'lens', 'lenses')}, ${count(rigs, 'rig', 'rigs')}.`;
    const asCopies =
      copies === 0 ? '' : ` As a copy beside yours: ${count(copies, 'thing', 'things')}.`;
    const away =
      deletedHere === 0 ? '' : ` ${deletedHere} stayed away, because you had deleted them here.`;
    return came + asCopies + away;
  },
  copy: 'Copy',
  delete: 'Delete',
  copyOf: (name: string) => `${name}, copy`,
  save: 'Save',

  /* Body. */
  newBody: 'New body',
  saveBody: 'Save the body',
  defaultsFollow:
    'Dials, bulb, self-timer and the rest start from what most bodies do. Each is stated on the next screen and can be changed there.',
  name: 'Name',
  bodyNameHint: 'As you will call it in the field.',
  letter: 'Letter of its rig',
  sensor: 'Sensor',
  changeSensor: 'Change sensor and pixels',
  sensorSize: 'Sensor, width × height',
  size: (width: string, height: string) => `${width} × ${height} mm`,
  pixels: (wide: string, high: string) => `${wide} × ${high} pixels`,
  ownSize: 'Another size',
  width: 'Width',
  height: 'Height',
  pixelsWide: 'Pixels wide',
  pixelsHigh: 'Pixels high',
  mm: 'mm',
  nameFirst: 'Not saved: the name is missing. Nothing is lost. Write a name, then save.',
  sizeFirst: 'Not saved: the sensor is missing. Nothing is lost. Choose its size, then save.',
  pixelsFirst: 'Not saved: the pixels are missing. Nothing is lost. Enter both, then save.',

  facts: 'What follows from it',
  diagonal: 'Diagonal',
  pitch: 'Pixel pitch',
  crop: 'Crop ratio',
  cropTo: (name: string) => `by diagonal, to ${name}`,
  areaLight: 'Light by area',
  areaTo: (name: string) => `stops, whole sensor, to ${name}`,
  micrometres: (figure: string) => `${figure} µm`,
  millimetres: (figure: string) => `${figure} mm`,

  stated: 'Stated for this body',
  iso: 'ISO dial',
  times: 'Time dial',
  from: (lowest: string, highest: string, step: Step) =>
    `${lowest} to ${highest}, ${STEPS[step].toLowerCase()}`,
  missingCount: (count: number) => (count === 0 ? '' : `, ${count} missing`),
  lowest: 'Lowest',
  highest: 'Highest',
  extendedLowest: 'Extended below, down to',
  extendedHighest: 'Extended above, up to',
  extendedHint: 'Extended positions are shown, never chosen by matching.',
  none: 'none',
  step: 'Step',
  steps: [
    { value: 'third', label: 'Thirds' },
    { value: 'half', label: 'Halves' },
    { value: 'whole', label: 'Whole stops' },
  ] satisfies readonly { readonly value: Step; readonly label: string }[],
  stepBelow1s: 'Step below 1 s',
  stepFrom1s: 'Step from 1 s',
  shortest: 'Shortest',
  longest: 'Longest timed',
  longestHint: 'As the dial shows it, in seconds.',
  seconds: 's',
  beyond30s: 'Beyond 30 s the dial reads',
  beyond: [
    { value: 'minutes', label: '60, 120, 240 s' },
    { value: 'doubling', label: '64, 128, 256 s' },
  ] satisfies readonly { readonly value: TimeDial['beyond30s']; readonly label: string }[],
  longMarks: 'At 15 s and 30 s the shutter runs',
  longMarksHint:
    'Film the rear screen against a clock to find out. Until then both are shown: 0.09 stop apart.',
  longMark: [
    { value: 'exact', label: '16 s and 32 s' },
    { value: 'as-marked', label: '15 s and 30 s' },
    { value: 'unknown', label: 'Not known' },
  ] satisfies readonly { readonly value: TimeDial['longMarks']; readonly label: string }[],
  missing: 'Positions that are missing',
  missingHint: 'Take the tick away from a position that the dial does not have.',
  positions: (have: number, lack: number) =>
    lack === 0 ? `${have} positions, none missing` : `${have} positions, ${lack} missing`,

  bulb: 'Bulb',
  bulbKinds: [
    { value: 'none', label: 'No bulb' },
    { value: 'press-press', label: 'Time mode: press to open, press to close' },
    { value: 'hold', label: 'Open while held' },
  ] satisfies readonly { readonly value: Bulb['kind']; readonly label: string }[],
  longestBulb: 'Longest',
  bulbUpTo: (kind: Bulb['kind'], longest: string) => {
    if (kind === 'none') return 'No bulb';
    return `${kind === 'hold' ? 'Open while held' : 'Time mode'}, up to ${longest}`;
  },
  minutes: 'min',

  selfTimer: 'Self-timer',
  selfTimerUsed: 'Used for this work',
  byCable: 'None: cable or remote',
  selfTimerChoices: 'Times the body offers',
  addTime: 'Add a time',
  removeTime: (time: string) => `Remove ${time}`,
  survives: 'Survives power-off',
  selfTimerStated: (used: string | null, survives: boolean) =>
    `${used ?? 'Cable or remote'}${survives ? ', survives power-off' : ', lost at power-off'}`,

  darkFrame: 'Dark frame in the camera',
  darkFrameHint: 'A second, closed frame as long as the first, which the body takes by itself.',
  darkFrameKinds: [
    { value: 'never', label: 'Never' },
    { value: 'from', label: 'From a time on' },
    { value: 'always', label: 'Always' },
  ] satisfies readonly { readonly value: DarkFrame['kind']; readonly label: string }[],
  darkFrameFrom: 'From',
  darkFrameStated: (kind: DarkFrame['kind'], from: string) =>
    ({ never: 'Never', always: 'After every frame', from: `From ${from} on` })[kind],

  bits: 'Bit depth',
  bitsStated: (depth: number, loweredBy: string) =>
    loweredBy === '' ? `${depth} bit` : `${depth} bit, less with ${loweredBy}`,
  depth: 'Raw file',
  bit: 'bit',
  loweredBy: 'What lowers it',
  loweredByHint: 'For example continuous release or silent shutter.',

  files: 'File names',
  filesStated: (first: string, last: string) => `${first} to ${last}`,
  prefix: 'Before the number',
  digits: 'Digits',
  rollsOver: 'Last number before it starts again at 1',
  sharedNumber: 'Raw and JPEG share a number',

  /* Lens. */
  newLens: 'New lens',
  saveLens: 'Save the lens',
  focal: 'Focal length',
  fNumbers: 'F-numbers',
  widest: 'Widest',
  narrowest: 'Narrowest',
  widestHint: 'As engraved, without f/.',
  focalFirst: 'Not saved: the focal length is missing. Nothing is lost. Enter it, then save.',
  fNumbersFirst:
    'Not saved: an end of the f-numbers is missing. Nothing is lost. Enter both, then save.',
  glass: 'Glass and focus',
  transmission: 'Light the glass takes',
  transmissionHint: 'In stops, zero or below, if you know it: -0.15 for a loss of 0.15.',
  closest: 'Closest focus',
  closestHint: 'From the sensor plane, if you know it.',
  focusSurvives: 'Focus survives power-off',
  focusSurvivesHint: 'Otherwise the outing asks for focus again after power-off.',
  stop: 'stop',

  lensLine: (focal: string, widest: string, narrowest: string) =>
    `${focal} mm, ${widest} to ${narrowest}`,

  /* Rig. */
  newRig: 'New rig',
  saveRig: 'Save the rig',
  body: 'Body',
  lens: 'Lens',
  rigTitle: (letter: string) => `Rig ${letter}`,
  withLens: (lens: string) => `with ${lens}`,
  rigBroken: 'A part of this rig is gone',
  pairFirst: 'Not saved: choose a body and a lens. Nothing is lost.',
  letterTaken: (letter: string) => `Another rig is ${letter} too. One shot list cannot take both.`,
  angleAcross: 'Angle of view, width',
  angleUp: 'Angle of view, height',
  angle: (figure: string) => `${figure}°`,
  pupil: 'Widest entrance pupil',
  corresponds: (body: string) => `Corresponds on ${body} to`,
  byDiagonal: 'by diagonal',

  offsets: 'Offsets',
  offsetsAre:
    'What the rig really gives against its marks, from one run on an evenly lit wall. Plus renders brighter.',
  noOffset: 'Offset unknown. It stays unknown in the ledger until you find it.',
  addOffset: 'Add an offset',
  saveOffset: 'Save the offset',
  offsetAt: 'At',
  everyIso: 'every ISO',
  offsetStops: 'Stops',
  offsetStopsHint: 'Plus if the rig renders brighter than its marks say.',
  date: 'Date',
  dateHint: 'Year, month, day: 2027-02-12.',
  how: 'How it was found',
  stopsFirst: 'Not saved: the stops are missing. Nothing is lost. Enter them, then save.',
  deleteOffset: (at: string) => `Delete the offset at ${at}`,
  offsetLine: (stops: string) => `${stops} stop`,
};

const STEPS: Readonly<Record<Step, string>> = {
  third: 'Thirds',
  half: 'Halves',
  whole: 'Whole stops',
};
