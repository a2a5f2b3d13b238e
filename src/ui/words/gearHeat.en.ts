import type { ThermalRange } from '../../science/thermalRange.ts';

type Figure = keyof ThermalRange;

/** Words of how a body warms. Figures come in as they are written. */
export const gearHeat = {
  title: 'How it warms',
  nothingMeasured: 'Nobody has measured it',
  someMeasured: (measured: number, of: number) => `${measured} of ${of} known to you`,
  lead: 'A sensor warms as it exposes, and its dark current with it. What nobody has measured on this body is taken from stated ranges, and every prediction carries them.',
  figures: {
    tau: 'Time constant',
    doubling: 'Doubling',
    exposing: 'Plateau, exposing',
    liveView: 'Plateau, live view',
    idle: 'Plateau, idle',
  } satisfies Record<Figure, string>,
  means: {
    tau: 'The time in which the sensor goes 63 % of the way to a new temperature.',
    doubling: 'So many K warmer, and the dark current is twice as much.',
    exposing: 'How far over the air it ends up when long exposures follow one another unbroken.',
    liveView: 'How far over the air it ends up in live view, or with the rear screen lit.',
    idle: 'How far over the air it ends up switched on, with a dark screen.',
  } satisfies Record<Figure, string>,
  /** K of temperature, s of time. */
  units: {
    tau: 's',
    doubling: 'K',
    exposing: 'K',
    liveView: 'K',
    idle: 'K',
  } satisfies Record<Figure, string>,
  inUse: (usual: string, least: string, most: string, unit: string) =>
    `${usual} ${unit}, ${least} to ${most} ${unit}`,
  statedFrom: (source: string) => `Stated range: ${source}.`,
  ownFrom: (source: string) => `Yours, from: ${source}.`,

  /* One figure. */
  usual: 'Value',
  usualHint: 'What predictions are worked out with.',
  least: 'At least',
  most: 'At most',
  source: 'Source',
  sourceHint: 'Who measured it, how and when.',
  save: 'Save the figure',
  figuresFirst:
    'Not saved: value, least and most are needed, all three. Nothing is lost. Enter them, then save.',
  sourceFirst:
    'Not saved: the source is missing. Nothing is lost. Say where the figure comes from.',
  notSaved: (why: string) => `Not saved, and nothing is lost. ${why}`,
  forget: 'Back to the stated range',

  /* First values. */
  fit: 'First values from a capped series',
  fitIs:
    'Three heats at equal steps of unbroken exposing give a first time constant and plateau. A whole fit over all frames comes later.',
  given: 'What you have',
  kinds: [
    { value: 'levels', label: 'Dark levels' },
    { value: 'heats', label: 'Heats in doublings' },
  ] as const,
  levelsAre:
    'A dark level: the two-frame variance of two frames in a row, less that of the two shortest ones. Any unit, the same for all three. Not the mean: most bodies shift it.',
  heatsAre: 'A heat: by how many doublings the dark current lies over that of the rested body.',
  three: ['First', 'Second', 'Third'] as const,
  step: 'Step from one to the next',
  stepHint: 'Half the time constant or more: 480 s is every fourth frame of 120 s.',
  after: 'First one, so long after the start',
  afterHint:
    'From the first long frame to the middle of the level: 120 s for the first two of 120 s.',
  fitNeeds: 'Enter all three and the step.',
  tauFound: 'Time constant',
  plateauFound: 'Plateau, exposing',
  found: (usual: string, unit: string) => `${usual} ${unit}`,
  foundRange: (least: string, most: string, unit: string) => `${least} to ${most} ${unit}`,
  withError: (error: string) =>
    `Ranges for heats that are off by ${error} doublings: two times in three the truth lies inside.`,
  byDoubling: (doublings: string, doubling: string) =>
    `${doublings} doublings, counted in K with this body’s doubling of ${doubling} K.`,
  take: 'Take both over',
  date: 'Date of the series',
  sourceOf: (date: string) => `capped series of ${date}, first values`,
  /** Why three heats give nothing. */
  notFitted: {
    'level-not-positive': 'A dark level is above zero. Correct the three.',
    'not-rising':
      'These do not rise: first values come from the warming. Take three of the long frames.',
    'not-settling':
      'These do not settle: the second rise must be smaller than the first. Take longer steps, or measure again.',
    'step-too-short':
      'The steps are shorter than half the time constant, too short to tell it. Take three further apart.',
    'rise-within-error':
      'The rise is lost in the error of the levels. Take a higher ISO, longer frames or more of them.',
  } as Readonly<Record<string, string>>,
};
