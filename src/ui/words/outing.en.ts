import type { TurnedDial } from '../../light/rightSettings.ts';
import type { SetupItem, Verdict } from '../../outing/events.ts';
import type { Rest } from '../../outing/rest.ts';
import type { HeatDoubt } from '../../outing/rigCourse.ts';
import type { RigRun } from '../../outing/state.ts';

/** Words of the Outing place. Durations, marks and counts come in as they are written. */
export const outing = {
  title: 'Outing',
  none: 'No outing is under way.',
  noneHint: 'Choose a plan to walk. Everything you need is on this phone, also without a network.',
  noPlans: 'There is no plan yet. Make one under Plan, or take the practice outing.',
  toPlans: 'Go to Plan',
  start: 'Start',
  startPlan: (name: string) => `Start ${name}`,
  planFrames: (frames: number, minutes: string) => `${frames} frames, about ${minutes} min`,
  planNotReady: 'This plan has something to put right first.',
  anotherRuns: 'Another outing is under way. End it first; it is safe.',
  notStarted: (why: string) => `The outing was not started. ${why}`,

  caution: 'Mind edges, water, traffic, cold and the dark. Local rules come first.',
  cameBack: (last: string) => `Carried on where it stopped. Last recorded: ${last}.`,
  savedAgain: (events: number) =>
    `The browser cleared its storage. ${events} entries of this outing were written again from memory. Get the log off this phone when you can.`,
  mustReload:
    'A newer version is open in another window. What was recorded is safe. Load this window again.',

  notSaved: {
    full: 'Not saved yet: the phone is full. Nothing is lost while this stays open. Free some space, then save again.',
    blocked:
      'Not saved yet: another window holds the log. Nothing is lost while this stays open. Close the other window, then save again.',
    newer:
      'Not saved yet: a newer version is open in another window. Nothing is lost while this stays open. Close it, then save again.',
    closed:
      'Not saved yet: the browser closed its storage. Nothing is lost while this stays open. Save again.',
    timeout:
      'Not saved yet: the storage does not answer. Nothing is lost while this stays open. Save again.',
    refused:
      'Not saved: another window has this outing. Nothing is lost while this stays open. Take the outing over, then save again.',
  },
  saveAgain: 'Save again',
  writing: 'Recording',

  setUp: {
    title: 'Set up the rigs',
    lead: 'Once for each rig, by daylight. Each tick is logged.',
    items: {
      'raw-and-depth': 'Raw kind and bit depth set',
      'mechanical-shutter': 'Mechanical shutter',
      'dark-frame': 'In-camera dark frame as in the profile',
      'noise-reduction-off': 'Noise reduction off',
      'lens-corrections-off': 'Lens corrections off',
      'stabiliser-off': 'Stabiliser off',
      'auto-iso-and-highlight-modes-off': 'Auto ISO and highlight modes off',
      'no-crop-mode': 'No crop mode',
      'fixed-white-balance': 'White balance fixed',
      'manual-focus': 'Manual focus',
      'eyepiece-covered': 'Eyepiece covered',
      'hood-on': 'Hood on',
      'image-review-short': 'Image review short',
      'clock-set': 'Clock set',
      'card-space': 'Card has room',
      'battery-charged': 'Battery charged',
      'focus-fixed': 'Focus set by daylight and fixed',
    } satisfies Record<SetupItem, string>,
    rawNote: (bits: number, loweredBy: string) =>
      loweredBy ? `${bits} bits; lowered by ${loweredBy}` : `${bits} bits`,
    darkNote: { never: 'never', always: 'always', from: (time: string) => `from ${time}` },
    cardNote: (free: number) => `Room for ${free} or more frames`,
    darkSame: 'The bodies differ in their in-camera dark frame. That is a difference of the test.',
    counter: 'Next file number',
    counterNote: (name: string) => `The next file is ${name}`,
    counterUnknown: 'Not stated. Frames are then logged without a file number.',
    done: (ticked: number, all: number) => `${ticked} of ${all}`,
    tickRest: 'Tick all the rest',
    phone: 'This phone',
    phoneHints: [
      'Dim the screen by hand. Dimness counts more than redness.',
      'Auto-lock to never, do not disturb on.',
      'Never look at the sun through an optical finder.',
    ],
    begin: 'Begin with the frames',
    missing: (count: number) =>
      count === 1
        ? '1 line is not ticked. It stays open in the log.'
        : `${count} lines are not ticked. They stay open in the log.`,
  },

  step: {
    mount: 'Mount',
    focus: 'Focus',
    dial: 'Dial',
    expose: 'Expose',
    open: 'Exposing',
    record: 'Record',
    rest: 'Rest',
    busy: 'Dark frame',
    paused: 'Paused',
    done: 'List done',
    ended: 'Ended',
  },
  setOf: (place: number, of: number) => `Set ${place}/${of}`,
  passOf: (pass: number, of: number) => `pass ${pass}/${of}`,
  repeatOf: (repeat: number, of: number) => `repeat ${repeat}/${of}`,
  retake: 'retake',
  cappedDark: 'Capped dark: put the cap on. Same ISO and time.',
  cappedSeries: 'Capped series: cap on, viewfinder covered, screen off.',
  flat: 'Flat: the evenly lit wall fills the frame.',
  framesLeft: (count: number) => `${count} left`,
  next: 'Next',
  nextNone: 'then the list is done',

  mount: {
    act: (rig: string) => `${rig} is on the tripod`,
    actAll: 'All rigs are mounted',
    takeOff: 'Take the other rig off.',
    lock: 'Level, lock every knob, leave the focus alone.',
    landmark: 'Landmark to the centre, horizon to its height.',
    reference: 'This rig is the reference. Its frame is the measure.',
    edges: (sideways: string, upright: string) =>
      `The reference’s edges fall ${sideways} sideways and ${upright} upright.`,
    inside: (percent: string) => `at ${percent} % of this frame`,
    outside: (percent: string) => `${percent} % outside this frame`,
    same: 'on the edge of this frame',
    rule: {
      width: 'Framed alike by width.',
      height: 'Framed alike by height.',
      diagonal: 'Framed alike by diagonal.',
      'pixels-per-degree': 'Framed for the same pixels per degree.',
    },
    drawing: 'The reference’s frame, dashed, in this rig’s frame',
  },
  focus: {
    why: {
      'not-fixed': 'Focus was not ticked on the set-up sheet.',
      'battery-changed': 'The battery was changed, and this lens loses focus without power.',
      'lens-touched': 'The lens was touched.',
      'powered-off': 'The body was switched off, and this lens loses focus without power.',
    } satisfies Record<NonNullable<RigRun['focusDoubt']>, string>,
    how: 'Set it on the landmark, then fix it.',
    act: 'Focus is fixed',
  },
  dial: {
    act: 'Dials are set',
    changed: 'turn',
    same: 'stays',
    aperture: 'Aperture',
    time: 'Time',
    iso: 'ISO',
    bulb: 'Bulb',
    bulbFor: (time: string) => `Bulb, held for ${time}`,
  },
  expose: {
    taken: 'Taken',
    takenHint: 'Release, then tap.',
    takenOtherwise: 'Taken, but set otherwise',
    start: (time: string) => `Start ${time}`,
    startAll: 'Start all',
    startHint: (leadIn: string) => `Press the release and tap together. Self-timer ${leadIn}.`,
    startHintNoTimer: 'Press the release and tap together.',
    bulb: {
      'press-press': 'Time mode: one press opens, one press closes.',
      hold: 'Hold the release down until the end.',
    },
  },
  open: {
    leadIn: 'Shutter opens in',
    running: 'left',
    over: 'over',
    ofTime: (time: string) => `of ${time}`,
    closed: 'Closed',
    closedHint: {
      'press-press': 'Press the release again and tap together.',
      hold: 'Let go of the release and tap together.',
    },
    closedOtherwise: 'Closed, but set otherwise',
    stopEarly: 'Stopped early',
    waiting: 'The body ends it by itself.',
    unknown: 'The clock was set back. How long this has been open is unknown.',
    missed: (by: string) => `Its end was noticed ${by} late.`,
    late: (by: string) => `Ended ${by} ago.`,
    wake: 'Tap once to light the screen',
  },
  record: {
    act: 'Record as planned',
    changed: 'Set otherwise',
    recordThis: 'Record this',
    title: 'What was really set',
    planned: (mark: string) => `planned ${mark}`,
    bulbMeasured: 'measured by the two taps',
    file: 'File number',
    fileNone: 'no number',
  },
  verdict: {
    ask: (rig: string) => `Last frame of ${rig}`,
    words: {
      good: 'Good',
      soft: 'Soft',
      moved: 'Moved',
      clipped: 'Clipped',
      'passer-by-light': 'Passer-by light',
    } satisfies Record<Verdict, string>,
    inLine: (word: string) => word.toLowerCase(),
    notGood: 'Not good',
    other: 'Change',
    retake: 'Retake it',
  },
  rest: {
    ask: {
      off: (rig: string) => `${rig} rests, switched off`,
      idle: (rig: string) => `${rig} rests, left on: its lens loses the focus without power`,
      /** Under the cap the focus does not matter. */
      series: (rig: string) => `${rig}: switch off and wait`,
    },
    isOff: 'It is switched off',
    why: {
      thumb: (owed: string) =>
        `Rule of thumb: ${owed} after this exposure. Swaps count. Common practice, no source.`,
      limit: (owed: string) => `${owed} in all, to the plan’s limit on heat.`,
      asked: (owed: string) => `The set asks for ${owed} from the end of the last frame.`,
    } satisfies Record<Rest['why'], (owed: string) => string>,
    switchOn: 'Switch on when it is over.',
    wins: (without: string, rested: string) => `Wins: dark current ${rested}, not ${without} stop.`,
    costs: (fade: string) => `Costs: fade ${fade} stop.`,
    costUnknown: 'Costs: unknown, as the fade is.',
    worth: {
      more: (wins: string, costs: string) => `Worth ${wins} for ${costs} stop of light.`,
      less: (wins: string, costs: string) =>
        `Worth ${wins} for ${costs} stop of light: it costs more than it wins.`,
    },
    suggestion: (range: string | null) =>
      `A suggestion, as nobody has measured this body${range ? `: ${range}` : ''}.`,
    orNone: (least: string) => `${least}, or more than any rest`,
    skip: 'Skip the rest',
    ready: (rig: string, time: string) => `${rig} may shoot in ${time}`,
    stands: (heat: string, reference: string, range: string) =>
      `then ${heat} stop over ${reference} (${range})`,
    standsThen: (then: string) => `Dark current: ${then}.`,
  },
  heat: {
    between: (least: string, most: string) => `${least} to ${most}`,
    doubt: {
      'battery-changed': 'how warm it is nobody knows, as its battery was changed',
      'clock-set': 'how warm it is nobody knows, as the clock was set back',
    } satisfies Record<HeatDoubt, string>,
  },
  busy: {
    lead: (rig: string) => `${rig} takes its own dark frame.`,
    hint: 'It answers the release when it is done.',
  },
  paused: { lead: 'Nothing is asked of you.', act: 'Go on' },
  done: {
    lead: 'Every frame is made or left out.',
    act: 'End the outing',
    made: (count: number) => (count === 1 ? '1 frame made' : `${count} frames made`),
  },
  ended: {
    lead: (made: number) => `${made === 1 ? '1 frame' : `${made} frames`} in the log.`,
    export: 'Get the log off this phone now. Then it survives the phone.',
    toLog: 'Open the log',
    leave: 'Put the outing aside',
  },

  counterSave: 'Set the numbers',
  counterBad: 'A file number is a whole number from 0 on. Nothing was changed.',
  otherPlaces: 'Other places',

  undo: 'Undo',
  undone: (what: string) => `Taken back: ${what}.`,
  extra: 'Extra shot',
  extraShort: 'Extra',
  more: 'More',
  acts: {
    title: 'More',
    retake: 'Retake the last frame',
    skip: 'Skip the next frame',
    dropSet: 'Drop the rest of this set',
    swap: 'Swap the next two',
    note: 'Note',
    reading: 'Meter reading',
    battery: 'Battery changed',
    lens: 'Lens touched',
    power: 'Switched off',
    counter: 'File number',
    pause: 'Pause',
    end: 'End the outing',
    endSure: 'End now? Frames not made are logged as not made. Undo brings them back.',
  },
  which: 'Which rig',
  note: {
    title: 'Note',
    ready: [
      'Wind',
      'Cloud moved',
      'Dew on the lens',
      'Tripod touched',
      'Head torch',
      'Traffic',
      'Rain',
      'Battery low',
    ],
    own: 'Own words',
    save: 'Log the note',
    aboutLast: 'About the last frame',
  },
  reading: {
    title: 'Meter reading',
    meter: 'Meter',
    kind: 'As',
    kinds: { ev: 'EV at ISO 100', settings: 'ISO, f-number, time', 'test-frame': 'Test frame' },
    ev: 'EV',
    over: 'Came out',
    thirds: (thirds: number, stops: string) =>
      thirds === 0 ? 'right' : thirds > 0 ? `${stops} stop over` : `${stops} stop under`,
    meters: ['Hand meter', 'Camera meter', 'Test frames'],
    save: 'Log the reading',
    hint: 'Built-in meters commonly give up near EV −3 (common practice, no source). In the dark take a test frame.',
  },

  light: {
    title: 'Light',
    fits(minutes: number, least: number, most: number | null): string {
      const width = most === null ? `${least} or more` : `${least} to ${most}`;
      return `This set fits for ${minutes} more ${minutes === 1 ? 'minute' : 'minutes'}, nine times in ten ${width}.`;
    },
    off: (stops: string, bright: boolean, within: string) =>
      `This set comes out ${stops} stop too ${bright ? 'bright' : 'dark'}, nine times in ten within ±${within}.`,
    rematch: 'Follow the light',
    rematchHint: 'For every frame of this set that is still to be made. Undo takes it back.',
    noRematch:
      'No one dial brings this set back on every rig. Wait for its light, or drop the rest of it under More.',
    dials: {
      time: 'By the time',
      iso: 'By the ISO',
      'f-number': 'By the aperture',
    } satisfies Record<TurnedDial['dial'], string>,
    take: (miss: string) => `Take these: ${miss} stop from what is meant`,
    takeNamed: (dial: string, rigs: readonly string[]) => `${dial}: ${rigs.join(', ')}`,
    wanted: {
      reading: 'A meter reading would help',
      'test-frame': 'A test frame would help',
    },
    now: (ev100: string, within: string) =>
      `The scene has EV ${ev100} now, nine times in ten within ±${within}.`,
    reads: (meter: string, stops: string) => `${meter}: ${stops} stop against the open sky.`,
    leftOut: (readings: number) =>
      readings === 1
        ? 'One reading does not fit the others and counts for nothing.'
        : `${readings} readings do not fit the others and count for nothing.`,
    noSky:
      'The sky could not be worked out at the start. Fade stays unknown; everything else goes on.',
    siteGone: 'The plan’s site is not on this phone, so fade stays unknown.',
  },

  /** What an event did, as said by undo and on coming back. */
  did: {
    'outing-started': 'outing begun',
    'setup-ticked': 'a tick on the set-up sheet',
    'setup-finished': 'set-up finished',
    'counter-set': 'file number set',
    mounted: 'rig mounted',
    dialled: 'dials set',
    'exposure-started': 'exposure started',
    'exposure-closed': 'shutter closed',
    recorded: 'frame recorded',
    'extra-shot': 'extra shot',
    judged: 'verdict',
    'retake-asked': 'retake asked for',
    'frame-skipped': 'frame skipped',
    replanned: 'list changed',
    noted: 'note',
    'reading-taken': 'meter reading',
    'battery-changed': 'battery changed',
    'lens-touched': 'lens touched',
    'powered-off': 'body switched off',
    'rest-skipped': 'rest skipped',
    'cue-late': 'end noticed late',
    paused: 'pause',
    resumed: 'went on',
    ended: 'outing ended',
    undone: 'undo',
    discarded: 'frame discarded',
    corrected: 'correction',
    'gear-corrected': 'gear corrected',
    'clock-framed': 'clock frame',
    'files-matched': 'files matched',
    'values-taken': 'values of files taken',
    'evened-up': 'even-up as it was needed',
  },
  /** A tap that made no sense now. */
  refused: (rule: string): string =>
    ({
      'frame-open': 'A frame is still open. Record it or undo it first.',
      'shutter-still-open': 'The shutter is still open. Nothing was recorded.',
      'shutter-not-open': 'The shutter has not opened yet. Undo takes the start back.',
      'bulb-not-closed': 'Close the shutter first.',
      'retake-already-waiting': 'This frame is already waiting to be taken again.',
      'no-two-frames-left': 'There are no two frames left to swap.',
      'nothing-to-undo': 'There is nothing to take back.',
      'runs-elsewhere': 'Another window runs this outing. Take it over first.',
      'note-empty': 'The note is empty. Write a word first.',
    })[rule] ?? 'That was served already. Nothing was changed.',
};
