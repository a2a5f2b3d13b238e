import type { Unreached } from '../../plan/matching.ts';
import type { ApertureRule, Hold, SetKind } from '../../plan/plan.ts';
import type { ReadyListName } from '../../plan/readyLists.ts';
import { pair } from './pair.en.ts';
import { planLight } from './planLight.en.ts';

const count = (number: number, one: string, more: string): string =>
  `${number} ${number === 1 ? one : more}`;

const APERTURE: Readonly<Record<ApertureRule['rule'], string>> = {
  'same-f-number': 'the same f-number',
  'same-depth-of-field': 'the same depth of field',
};

/** Words of the Plan place. Figures, marks and durations come in as they are written. */
export const plan = {
  ...pair,
  inLight: planLight,
  title: 'Plans',
  chooseHint: 'Choose a plan to see its shot list here.',
  openHint: 'Choose a set to see how its rigs differ, or the order of frames.',
  none: 'No plan yet. A plan is a shot list for two rigs or more. Make one, or take the practice outing first.',
  noRig:
    'A plan compares rigs, and there is none yet. Put a rig together under Gear, or take the practice outing.',
  toGear: 'Go to Gear',
  practice: 'Take the practice outing',
  make: 'New plan',
  inShort: (rigs: string, sets: number) => `${rigs} · ${count(sets, 'set', 'sets')}`,
  copy: 'Copy',
  delete: 'Delete',
  copyNamed: (name: string) => `Copy ${name}`,
  deleteNamed: (name: string) => `Delete ${name}`,
  copyPlan: 'Copy the plan',
  deletePlan: 'Delete the plan',
  copySet: 'Copy the set',
  deleteSet: 'Delete the set',
  copyOf: (name: string) => `${name}, copy`,

  /* New plan. */
  newPlan: 'New plan',
  name: 'Name',
  nameHint: 'As you will know it on the evening.',
  unnamed: 'Evening plan',
  rigs: 'Rigs',
  pickRigs: (most: number) => `Two to ${most}. One rig alone can be shot, but not compared.`,
  rigOf: (letter: string, body: string) => `${letter} ${body}`,
  rigGone: 'A rig that is no longer in Gear',
  enoughRigs: (most: number) => `A plan takes ${most} rigs at most.`,
  pickFirst: 'Pick a rig to go on.',
  reference: 'Reference',
  referenceHint: 'The others get their settings from it.',
  startFrom: 'Start from',
  lists: {
    'base-iso-latitude': {
      label: 'Base ISO latitude',
      note: 'Well exposed, two and four stops under: what the shadows give back.',
    },
    'high-iso-ladder': {
      label: 'High ISO ladder',
      note: 'ISO 1600 to 12 800, well exposed: noise as the light goes.',
    },
    'long-exposure-heat': {
      label: 'Long-exposure heat',
      note: '15, 60 and 240 s with capped darks: what warmth adds.',
    },
    'mixed-dusk': {
      label: 'Mixed dusk',
      note: 'Base ISO well exposed and under, then ISO 12 800 over and far under.',
    },
  } satisfies Record<ReadyListName, { label: string; note: string }>,
  series: {
    label: 'How one body warms',
    note: 'Cap on, at home, a little over an hour: what its heat is fitted from.',
  },
  nothing: { label: 'Nothing', note: 'An empty shot list, set by set.' },
  seriesPickOne: 'This list is for one rig. Pick one alone.',
  seriesIso: 'Measured at',
  seriesIsoHint: 'The highest that you will use this body at.',
  seriesOwnDark: (body: string) =>
    `By its profile ${body} takes a dark frame of its own. Switch that off on the body, and say so under Gear: it would spoil the series.`,
  seriesTitle: 'For the series',
  seriesCautions: [
    'Before it, leave the body off and capped for an hour, where the temperature stays even.',
    'Cap on, viewfinder covered, away from lamps and sun.',
    'Raw. In-camera dark frame and noise reduction off.',
    'Rear screen off, no live view, no charger, a full battery.',
    'Frame after frame without a break; off where it says so, with a tap that it is off.',
    'Touch it as little as you can: hands and wind warm and cool it too.',
  ],
  makeIt: 'Make the plan',

  cautionTitle: 'Take care',
  cautionShort: 'Edges, water, traffic, cold, the dark, the sun in a finder',
  cautions: [
    'See the ground by daylight: edges, wet stone, tide and ice are hard to see later.',
    'Keep off roads and tracks, and be seen where there is traffic.',
    'Cold and dark wear you down before you notice. Dress for standing still, carry two lights, tell someone where you are and when you will be back.',
    'Never look at the sun through an optical finder, and never leave a long lens pointed at it.',
    'Local rules, closures and the word of those in charge there come before any plan.',
  ],

  /* The plan. */
  shotList: 'Shot list',
  arrange: 'Rearrange',
  arranged: 'Done',
  addSet: 'Add a set',
  noSet: 'No set yet. A set is one line of the shot list: the frames of one intent.',
  setAt: (place: number, intent: string) => `${place}. ${intent}`,
  noIntent: 'no intent yet',
  kinds: {
    light: 'Light',
    'capped-dark': 'Capped dark',
    flat: 'Flat',
    'capped-series': 'Capped series',
  } satisfies Record<SetKind, string>,
  kindNotes: {
    'capped-dark': 'Cap on, straight after the set before it, at its ISO and time.',
    flat: 'An evenly lit wall fills the frame.',
    'capped-series':
      'Cap on, before the list, all rigs at once: to warm up, or to learn how a body warms.',
  } satisfies Record<Exclude<SetKind, 'light'>, string>,
  holdInWords(hold: Hold, stops: string): string {
    if (hold.kind !== 'same-iso-and-time') return HOLDS[hold.kind];
    const { rule, plus } = hold.aperture;
    if (plus === 0) return `Same ISO and time, ${APERTURE[rule]}`;
    return `Same ISO and time, ${stops} stop ${plus > 0 ? 'wider' : 'narrower'} than ${APERTURE[rule]}`;
  },
  follows: (intent: string) => `At the ISO and time of ${intent}, after each of its turns`,
  turns: (passes: number, repeats: number) =>
    `${count(passes, 'pass', 'passes')} of ${count(repeats, 'frame', 'frames')}`,
  referenceRig: 'reference',
  evenUp: 'Even-up',
  rig: 'Rig',
  fNumber: 'f-number',
  time: 'Time',
  iso: 'ISO',
  bulb: (time: string) => `bulb ${time}`,
  knownOnly: (causes: string) =>
    `Differences of known causes only. Unknown: ${causes.toLowerCase()}.`,

  order: 'Order of frames',
  orderInShort: (swaps: number, time: string) =>
    `${swaps === 0 ? 'No swap' : count(swaps, 'swap', 'swaps')}, about ${time}`,
  about: 'About this plan',
  nameAndNote: 'Name and note',
  noneYet: 'none yet',
  noRigs: 'No rigs',
  note: 'Note',
  noNote: 'no note',
  stand: 'Nearest subject and lens axes',
  standInShort: (subject: string, axes: string) => `${subject} away, axes ${axes} apart`,
  standUnknown: 'unknown, so parallax is unknown',
  nearest: 'Nearest subject that counts',
  nearestHint: 'From the tripod. Empty if you do not know.',
  nearestRange: 'This must lie between 0.01 and 1 000 000 m.',
  axes: 'Lens axes apart',
  axesHint: 'Between two rigs side by side, or as a plate puts them.',
  metres: 'm',
  millimetres: 'mm',
  mmOf: (figure: string) => `${figure} mm`,

  start: 'Start the outing',
  underWay: 'An outing is under way. End it before you start another.',
  hasProblems: 'Not started: the plan has something to put right.',

  /* A set. */
  setOf: (place: number, of: number) => `Set ${place} of ${of}`,
  intent: 'Intent',
  kind: 'Kind',
  toDial: 'To dial',
  bulbTime: 'Bulb, held for',
  seconds: 's',
  hold: 'Hold',
  holdHint: 'What is kept equal between the rigs.',
  holds: {
    'same-iso-and-time': {
      label: 'Same ISO and time',
      note: 'Gain and dark-current time stay alike. The usual choice when noise is the question.',
    },
    'same-picture': {
      label: 'Same picture',
      note: 'Full equivalence: framing, depth of field, total light, time.',
    },
    'same-exposure': { label: 'Same exposure', note: 'The same f-number, time and ISO.' },
    free: { label: 'Free', note: 'Each rig by hand. Differences are only told.' },
  } satisfies Record<Hold['kind'], { label: string; note: string }>,
  apertureRule: 'Aperture by',
  apertureRules: {
    'same-f-number': 'Same f-number',
    'same-depth-of-field': 'Same depth of field',
  } satisfies Record<ApertureRule['rule'], string>,
  plus: 'Stops from there',
  plusHint: 'Plus opens it, minus closes it.',
  stop: 'stop',
  targetOffset: 'Against the metered exposure',
  targetOffsetHint: 'Minus lies under it, plus over it.',
  framing: 'Framed alike by',
  framingHint: 'Which edges the landmark is set by, since two formats seldom frame alike.',
  passes: 'Passes',
  passesHint: (usual: number) => `Turns of all rigs. Usual in this order: ${usual}.`,
  repeats: 'Repeats',
  repeatsHint: 'Frames without touching the rig. Noise needs two.',
  seriesRepeatsHint: 'Frames back to back, cap on.',
  wait: 'Switched off before it',
  waitHint: 'From the end of the frame before. Empty or 0 for none.',
  seriesInShort: (frames: number, wait: string | null) =>
    `${count(frames, 'frame', 'frames')}${wait === null ? '' : ` after ${wait} switched off`}`,
  seriesDial:
    'The others take the same ISO and time as near as they can. The aperture plays no part.',
  more: 'Target, framing, passes, repeats',
  asMetered: 'As metered',
  moreInShort: (target: string, framing: string, frames: string) =>
    `${target}, framed by ${framing.toLowerCase()}, ${frames}`,
  setByHand: 'Start from the same exposure',

  /* Order. */
  orders: {
    'rig-by-rig': 'Rig by rig',
    'side-by-side': 'Side by side',
  },
  orderNotes: {
    'rig-by-rig':
      'The whole list with one rig, then the next. Fewest swaps, most fade between rigs.',
    forward: 'Each set once through the rigs. The fade stays in the difference.',
    mirror: 'Cancels a steady fade.',
    alternate: 'Two looks at each rig. A steady fade stays in the difference.',
    'double-mirror': 'Cancels a fade that steepens, too.',
    'side-by-side': 'All rigs stand and start together. Watch the parallax.',
  },
  allowances: 'Allowances',
  swap: 'Swap of rigs',
  dialChange: 'Change of dials',
  settle: 'Settling',
  settleHint: 'Hands off until nothing moves.',
  write: 'Writing the file',
  commonPractice: 'Common practice, no source.',
  frames: 'Frames in order',
  framesHint: 'Shutter open from and to, counted from the start of the list.',
  noFrame: 'No frame yet. They stand here as soon as a set can be dialled.',
  together: 'All rigs on the tripod',
  swapTakes: (time: string) => `swap ${time}`,
  restsFirst: (time: string) => `rests ${time} first`,
  passAndRepeat: (pass: number, repeat: number) => `pass ${pass}, frame ${repeat}`,
  fromTo: (start: string, end: string) => `${start}–${end}`,
  middle: (time: string) => `middle ${time}`,

  problems: {
    'no-rigs': 'This plan has no rig. Pick two or more under Rigs.',
    'one-rig': 'One rig alone has nothing to be compared with. It can be shot all the same.',
    tooManyRigs: (most: number) => `A plan takes ${most} rigs at most. Take one out.`,
    'rig-gone': 'A rig of this plan is no longer in Gear. Take it out under Rigs.',
    letterTwice: (letter: string) =>
      `Two rigs carry the letter ${letter}. Give one of them another under Gear.`,
    'no-sets': 'The shot list is empty. Add a set.',
    'dark-without-light':
      'A capped dark follows a set, and none stands before it. Move it down the list.',
    'reference-not-in-plan': 'The reference is not among the rigs of this plan. Choose another.',
    notOnDials: (rig: string, dial: string) =>
      `${rig} has no such ${dial}. Turn that dial to one that it has.`,
    bulbNotOnBody: (rig: string) => `${rig} has no bulb. Choose a time on its dial.`,
    bulbTooLong: (rig: string, longest: string) =>
      `${rig} holds bulb for ${longest} at most. Shorten the time.`,
    freeMissing: (rig: string) => `Nothing is set on ${rig} yet. Set it by hand.`,
    dialsRefused: (rig: string) =>
      `The dials of ${rig} yield no position. Put them right under Gear.`,
    extendedIso: (rig: string, mark: string) =>
      `${mark} is an extended position of ${rig}: beyond the range that its maker stands for.`,
    timeUncertain: (rig: string, mark: string, stops: string | null) =>
      `Nobody has measured whether ${mark} on ${rig} runs as marked.${stops === null ? '' : ` ${stops} stop hangs on it.`}`,
  },
  dial: 'setting',
  dials: {
    'f-mark-not-on-lens': 'f-number',
    'time-mark-not-on-body': 'time',
    'iso-mark-not-on-body': 'ISO',
  } as Readonly<Record<string, string>>,
  /** What a dial cannot reach, why, and what the nearest costs. */
  unreached(
    code: Unreached['code'],
    wanted: string,
    nearest: string,
    hasBulb: boolean,
    cost: string,
  ): string {
    const end = {
      'time-beyond-dial': `${nearest} is ${hasBulb ? 'as long as it can' : 'the last position and there is no bulb'}`,
      'time-short-of-dial': `${nearest} is the first position`,
      'aperture-wider-than-lens': `${nearest} is the widest`,
      'aperture-narrower-than-lens': `${nearest} is the narrowest`,
      'iso-above-dial': `${nearest} is the highest`,
      'iso-below-dial': `${nearest} is the lowest`,
    }[code];
    return `${wanted} wanted; ${end}: ${cost}.`;
  },
  cost: (stops: string, brighter: boolean) => `${stops} stop ${brighter ? 'brighter' : 'darker'}`,
};

const HOLDS = {
  'same-picture': 'Same picture',
  'same-exposure': 'Same exposure',
  free: 'Free, set by hand',
};
