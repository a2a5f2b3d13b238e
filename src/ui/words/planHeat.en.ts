import type { RestWay } from '../../plan/restWays.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

/**
 * Words of a plan's heat, rests and timeline. Figures, durations and clock times come in as they are
 * written. A range stands behind its figure, as in '+0.09 stop of dark current (0.02 to 0.21)'.
 */
export const planHeat = {
  title: 'Rest and heat',
  unit: 'Stops of dark current over the rested body, never added to stops of light.',
  figure: (usual: string, range: string) => `${usual} stop of dark current (${range})`,
  between: (least: string, most: string) => `${least} to ${most}`,
  short: (usual: string, range: string) => `heat ${usual} (${range})`,

  /* The ways. */
  chooseWay: 'What to do about heat',
  ways: {
    limit: 'Rest until inside a limit',
    'warm-up': 'Warm all bodies up and keep the rhythm',
    thumb: 'Rest as long as you exposed',
    none: 'No rest',
  } satisfies Record<RestWay, string>,
  wayNotes: {
    limit: 'Each frame begins cool enough, if the rest wins more than the fade that it costs.',
    'warm-up': 'Frames under the cap first, all rigs at once, then the same rests throughout.',
    thumb: 'Common practice, no source. It does not bring a sensor back to rested.',
    none: 'Only swaps and dials let a sensor cool.',
  } satisfies Record<RestWay, string>,
  inShort: {
    limit: (rests: number, asked: number) => {
      if (rests > 0) return `Until inside the limit: ${count(rests, 'rest', 'rests')}`;
      return `Until inside the limit: ${asked === 0 ? 'no rest needed' : 'no rest that would pay'}`;
    },
    'warm-up': 'Warmed up first, then the same rhythm',
    thumb: (factor: string, from: string) => `Rest ${factor} × the exposure, above ${from}`,
    none: 'No rest',
  },
  pairLeft: (usual: string, range: string) => `Pair apart ${usual} (${range})`,
  driftLeft: (usual: string, range: string) => `Last frame over first ${usual} (${range})`,
  cost: (rests: string, wall: string) => `Rests ${rests}, ${wall} in all`,
  costWarm: (wall: string, more: string) => `${wall} in all, ${more} more than without rests`,
  noFrames: 'Nothing is to be shot yet.',
  hardlyWarms: 'Not needed: exposures as short as these hardly warm a sensor.',

  /* The limit. */
  limit: 'The limit',
  tolerated: 'Noise tolerated in the shadows',
  toleratedHint:
    'By so much may it grow over a rested body’s, four stops under mid-tone. Our choice: 0.02.',
  unknownRatio: 'Dark current allowed where the light is unknown',
  unknownRatioHint:
    'Times that of a rested body’s first such frame: darks and flats. Our choice: 1.25.',
  times: '×',
  longest: 'Longest rest',
  longestHint: 'A rest that would have to be longer ends there. Our choice: 600.',

  /* The rule of thumb. */
  rule: 'The rule of thumb',
  factor: 'As long as the exposure, times',
  offUpTo: 'No rest up to',
  thumbLeaves: (rig: string, time: string, rest: string, heat: string) =>
    `${rig}: after many frames of ${time} with ${rest} of rest, ${heat} over its first.`,
  thumbNone: (rig: string, time: string, heat: string) =>
    `${rig}: the rule asks for no rest at ${time}. After many such frames, ${heat} over its first.`,
  notRested:
    'It makes a rhythm that settles after about three time constants. It does not bring a sensor back to rested.',

  /* The warm-up. */
  warmUp: 'The warm-up',
  warmUpIs: (frames: number, time: string, rest: string) =>
    `${count(frames, 'frame', 'frames')} of ${time} before the list, cap on, all rigs at once, ${rest} of rest after each: about three time constants. Then keep the rhythm: a rest after every exposure, and no long stop.`,
  warmUpStale: 'The list has changed: another warm-up would fit it.',
  warmUpRenew: 'Fit the warm-up to the list',

  /* Pairs. */
  pairs: 'Heat of each pair',
  pair: (other: string, figure: string, reference: string, range: string) =>
    `${other} ${figure} stop of dark current over ${reference} (${range})`,
  withBodies: (range: string) =>
    `Two bodies may differ as well, by what is known of them: ${range} in all. A body that warms more is a result, not an unfairness.`,
  pairTitle: 'Sensor heat',
  noPair: 'No pair yet.',

  /* Rests. */
  rests: 'Rests by the limit',
  restsNone: 'Every frame is inside the limit without a rest.',
  suggestionHint:
    'Suggestion: nobody has measured how this body cools. The range says how sure a rest is.',
  restOf: (isSuggestion: boolean, time: string, range: string) =>
    `${isSuggestion ? 'Suggested rest' : 'Rest'} ${time} (${range})`,
  never: 'no rest enough',
  neverEnough:
    'No rest while switched on is enough: warm its partner up, or refocus after a rest switched off.',
  restsOn: 'stays on, or it loses its focus',
  restWins: (without: string, left: string, worth: string) =>
    `Wins ${without} → ${left} stop of dark current, worth ${worth} stop of light`,
  restCools: (without: string, left: string) => `Cools ${without} → ${left} stop of dark current`,
  restCosts: (stops: string) => `costs ${stops} stop of fade and time`,
  costUnknown: 'what it costs is unknown: state the evening',
  leftOut: 'Left out: it costs more than it wins.',
  endsEarly: 'Ends at the longest rest, and is still outside of the limit.',
  limitIs: (ratio: string) => `limit ${ratio} × rested`,

  /* The timeline. */
  timeline: 'Timeline',
  lanes: 'Timeline by rigs',
  frame: 'Frame on the timeline',
  frameOf: (place: number, of: number) => `Frame ${place} of ${of}`,
  before: 'Frame before',
  after: 'Frame after',
  closer: 'Closer',
  wider: 'Wider',
  shutter: 'Shutter open',
  fromStart: 'from the start',
  byClock: (zone: string) => `by the clock of ${zone}`,
  heatMid: 'Heat, stop of dark current',
  restBefore: 'Rest before',
  noRest: 'none',
  sceneEv: 'Scene EV',
  evWithin: (ev: string, within: string) => `${ev} ±${within}`,
  light: 'Light',
  lightUnknown: 'The light beneath is unknown: state site, date and sky.',
  lightComputing: 'The light beneath is being worked out.',
  legend: {
    exposure: 'exposure',
    capped: 'frame under the cap',
    ownDark: 'dark frame in the camera',
    rest: 'rest',
    swap: 'swap onto the tripod',
    heat: (top: string) => `heat, ${top} stop of dark current at the top of a lane`,
    light: 'scene EV, nine times in ten between the thin lines',
  },
  axisClock: (zone: string) => `Clock of ${zone}`,
  axisMinutes: 'Minutes from the start',
  asTable: 'The timeline as a table',
  asTableStated: (frames: number) => `${count(frames, 'frame', 'frames')} with rests and swaps`,
  columns: { when: 'When', rig: 'Rig', what: 'What', heat: 'Heat' },
  swapRow: 'Swap, onto the tripod',
  restRow: 'Rest',
};
