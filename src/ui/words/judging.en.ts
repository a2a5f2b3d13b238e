import type { KnownBy } from '../../log/pair/knownBy.ts';
import type { Measure } from '../../log/pair/measures.ts';
import type { LimitFrom, Use } from '../../log/pair/uses.ts';

/** What a pair may be used for, what it needed, and how its causes are known. */
export const judging = {
  knownTitle: 'How each cause is known',
  knownBy: {
    measured: 'measured',
    logged: 'logged',
    predicted: 'predicted',
    unknown: 'unknown',
  } satisfies Record<KnownBy, string>,
  knownHint:
    'Measured: a matched file, a wall or meter readings say it. Logged: from the log or the gear alone. A ± holds nine times in ten. What a dial marks counts as exact; how far a body strays from its marks is its offset.',
  width: (half: string) => `±${half}`,
  widthUnknown: 'width unknown',

  needed: 'Measured beside predicted',
  neededField: 'Brightening really needed',
  neededHint:
    'What you gave this rig’s frames in development until they matched the reference. Minus where they had to be darkened. Empty takes it back.',
  neededUnit: 'stop',
  neededTooFar: 'An even-up is less than 20 stops either way. Nothing was changed.',
  notLogged: 'That could not be logged. Nothing was changed.',
  predictedUp: 'Even-up, predicted',
  neededUp: 'Even-up, needed',
  leftOver: 'Left over',
  figureWidth: (figure: string, half: string) => `${figure} ±${half}`,
  leftOverIs: (darker: boolean, within: boolean) =>
    within
      ? 'What is left over lies within its ±: nothing more is to be explained.'
      : `The frames came out ${darker ? 'darker' : 'brighter'} than the ledger explains.`,
  byEye: 'No ± was stated: 0.16 is taken for an even-up by eye, 0.08 for a region (our choice).',
  agree: {
    'too-few': 'An offset is proposed once leftovers of two sets or more agree.',
    differ: 'The leftovers of the sets differ by more than their ± allow: no offset explains them.',
    nothing: 'The leftovers of the sets agree on nothing: no offset is needed.',
  },
  offer: (rig: string, change: string, half: string, sets: number) =>
    `Leftovers of ${sets} sets agree: ${rig} gives ${change} ±${half} stop against its marks that nobody had entered.`,
  offerReference: (rig: string) => `${rig}, the reference, counts as 0 then.`,
  rule: 'The rule: two sets or more, scattering no more than their widths allow (chi-square, 95 in 100), and a mean that differs from zero (95 in 100).',
  takeOffset: 'Take it for this outing',
  keepOffset: 'Take it for the kept gear too',
  offsetHow: 'from leftovers of an outing',
  offsetTaken: 'Taken for this outing.',
  offsetKept: 'Taken for the kept gear.',

  uses: 'What this pair may be used for',
  use: {
    noise: 'to compare noise',
    sharpness: 'to compare sharpness',
    brightness: 'to compare brightness as rendered',
    'dynamic-range': 'to compare dynamic range',
  } satisfies Record<Use, string>,
  fit: (use: string, why: string) => `Fit ${use}: ${why}.`,
  notFit: (use: string, why: string) => `Not fit ${use}: ${why}.`,
  untold: (use: string, why: string) => `Cannot be told whether fit ${use}: ${why}.`,
  nothingLookedAt: 'no limit is looked at',
  measure: {
    'light-per-area': 'light per area',
    rendered: 'brightness',
    iso: 'ISO',
    time: 'exposure time',
    heat: 'heat',
    'depth-of-field': 'depth of field',
    diffraction: 'diffraction',
    framing: 'framing',
    parallax: 'parallax',
    'bit-depth': 'bit depth',
    'dark-frame': 'dark frame in the camera',
  } satisfies Record<Measure, string>,
  unit: {
    'light-per-area': 'stop',
    rendered: 'stop',
    iso: 'stop',
    time: 'stop',
    heat: 'stop of dark current',
    'depth-of-field': 'stop',
    diffraction: 'stop',
    framing: '%',
    parallax: 'px',
    'bit-depth': 'bit',
    'dark-frame': '',
  } satisfies Record<Measure, string>,
  differsBy: (what: string, figure: string, unit: string) => `${what} differs by ${figure} ${unit}`,
  alike: (what: string) => `${what} is alike`,
  unlike: (what: string) => `${what} is not alike`,
  across: (what: string, least: string, most: string, unit: string, limit: string) =>
    `${what} lies between ${least} and ${most} ${unit}, across the limit of ${limit}`,
  unknownOf: (what: string, why: string) => `${what} is unknown (${why})`,
  whyUntold: {
    causes: (causes: string) => `${causes.toLowerCase()} not known`,
    width: (causes: string) => `nobody knows how sure ${causes.toLowerCase()} is`,
    heat: 'a battery, a clock or an open frame hides it',
    parallax: 'the plan does not say how near and how far apart',
    pass: 'no complete pass',
  },
  noScore: 'By the limits below, which you can change. No score, no ranking.',
  limits: 'Limits',
  limitsHint: 'How far apart a pair may lie for a use. Empty = not looked at. Kept on this device.',
  limitFrom: {
    'half-in-noise': 'Our choice: 0.1 stop of noise, half of it, where photons rule.',
    'dark-ratio':
      'Dark currents as 1.25 to 1, the default where the light is unknown (our choice).',
    'half-a-click': 'Our choice: half a third stop.',
    'one-click': 'Our choice: a third stop, one click of most dials.',
    'our-choice': 'Our choice.',
    'must-be-alike': 'Our choice: alike or not.',
  } satisfies Record<LimitFrom, string>,
  limitFor: (uses: string) => `Needed ${uses}.`,
  limitBad: 'A limit is zero or more. Nothing was changed.',
  restoreLimits: 'Back to the stated limits',
  done: 'Done',
};
