import type { Left, NotTaken } from '../../app/files.ts';
import type { CorrectionValue, EventKind } from '../../outing/events.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Two or more in a row: 'a, b and c'. */
const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

const LEFT: Record<Left['what'], string> = {
  table: 'as a table',
  journal: 'as a journal',
  backup: 'in a backup',
};

/** Words of the Log place. Durations, marks and counts of stops come in as they are written. */
export const log = {
  title: 'Log',
  chooseHint: 'Choose an outing to see its frames.',
  openHint: 'Choose a frame, the ledger or the export.',
  none: 'No outing yet. Start one from a plan: every frame then stands here, with what was planned and what was set.',
  toPlan: 'Go to Plan',
  looking: 'Looking through the log.',
  unread: (why: string) => `The log could not be read. Nothing is lost. ${why}`,
  why: {
    full: 'The phone is full. Free some space, then try again.',
    blocked: 'Another window holds the storage. Close it, then try again.',
    newer: 'A newer version is open in another window. Reload this one.',
    closed: 'The browser closed the storage. Try again.',
    timeout: 'The storage does not answer. Try again.',
    refused: 'The storage refused. Reload the app.',
  },
  tryAgain: 'Try again',
  missing: 'There is no such outing on this phone. It may be in a backup file.',
  underWay: 'not ended',
  frames: (made: number) => count(made, 'frame', 'frames'),
  notLeft: 'not exported yet',
  begun: (date: string, from: string) => `${date}, ${from}`,
  span: (date: string, from: string, to: string) => `${date}, ${from} to ${to}`,

  notEnded: 'Nobody has ended this outing.',
  resume: 'Go on with this outing',
  notResumed: {
    'another-runs': 'Another outing is under way. End it first; both are safe.',
    'not-saved': 'Something said here is not saved yet. Save it first, then go on.',
  },
  readOnly: 'This outing is open in another window. Here it can only be read.',
  remind: 'This log has not left the phone since the outing ended. A lost phone takes it along.',
  getOff: 'Get it off this phone',

  ledger: 'Ledger',
  ledgerInShort: (pairs: number, sets: number) =>
    `${count(pairs, 'pair', 'pairs')} in ${count(sets, 'set', 'sets')}`,
  export: 'Export',
  lastLeft: (date: string, time: string, what: Left['what']) =>
    `Last left ${date}, ${time}, ${LEFT[what]}`,
  neverLeft: 'Has not left this phone',

  filter: 'Show',
  filterAll: 'everything',
  allRigs: 'All rigs',
  allSets: 'All sets',
  set: 'Set',
  rig: 'Rig',
  only: 'Only',
  onlyWhat: {
    all: 'Everything',
    changed: 'Not set as planned',
    'not-counting': 'Not counting',
  },
  shown: (wanted: number, all: number) => `${wanted} of ${count(all, 'line', 'lines')}`,
  nothingShown: 'No line fits. Show everything to see the rest.',
  showAll: 'Show everything',
  framesTitle: 'Frames',
  noFrames: 'No frame yet.',
  noIntent: 'no intent',
  setAt: (place: number, intent: string) => `${place}. ${intent}`,

  fromTo: (from: string, to: string) => `${from} to ${to}`,
  open: (time: string) => `open ${time}`,
  notRecorded: 'not recorded yet',
  planned: (mark: string) => `planned ${mark}`,
  asPlanned: 'as planned',
  firstLogged: (mark: string) => `first logged ${mark}`,
  retake: (attempt: number) => `retake ${attempt - 1}`,
  discarded: 'discarded',
  notCounting: 'does not count',
  corrected: 'corrected',
  leftOut: {
    skipped: (frames: number) => `${count(frames, 'frame', 'frames')} skipped`,
    'set-dropped': (frames: number) => `Set dropped: ${count(frames, 'frame', 'frames')} not made`,
  },
  restSkipped: (left: string) => `Rest skipped, ${left} left`,
  battery: 'Battery changed',
  note: 'Note',
  reading: 'Meter reading',
  ev: (figure: string) => `EV ${figure} at ISO 100`,
  cameOut: (thirds: number, stops: string) =>
    thirds === 0 ? 'came out right' : `came out ${stops} stop ${thirds > 0 ? 'over' : 'under'}`,

  frame: (place: number) => `Frame ${place}`,
  frameGone: 'There is no such frame. It may have been undone.',
  earlier: 'Earlier',
  later: 'Later',
  pass: (pass: number, repeat: number) => `pass ${pass}, frame ${repeat}`,
  settings: 'Settings',
  settingsHint: 'Tap one to correct it. What was first logged stays readable.',
  fields: {
    fMark: 'Aperture',
    time: 'Time',
    isoMark: 'ISO',
    elapsedS: 'Shutter open',
    fileNumber: 'File number',
    verdict: 'Verdict',
    counts: 'Counts',
    note: 'Note',
  } satisfies Record<CorrectionValue['field'], string>,
  openFrom: {
    dial: (exact: string) => `by the body: ${exact} s behind its mark`,
    steady: (within: string) => `measured between two taps, ±${within} s`,
    wall: 'by the phone’s clock alone, uncertain',
    correction: 'as corrected',
    unknown: 'the clock was set back: nobody knows',
  },
  noFile: 'no file number',
  noVerdict: 'no verdict',
  when: 'When',
  day: 'Day',
  opened: 'Shutter opened',
  closed: 'Shutter closed',
  stillOpen: 'not known',
  zone: 'Zone',
  zoneOf: (offset: string, zone: string) => `UTC${offset}, ${zone}`,
  leadIn: 'Self-timer',
  noLeadIn: 'none',
  rested: 'Rested before',
  notRested: 'unknown, or its first frame',
  late: 'End noticed late by',
  counts: 'Does it count',
  countsYes: 'It counts in the ledger.',
  countsNo: 'It does not count in the ledger.',
  countsOther: 'Another try of this frame counts in the ledger.',
  discard: 'Discard this frame',
  letCount: 'Let this one count',
  notes: 'Notes',
  addNote: 'Add a note',
  corrections: 'Corrections',
  correctedTo: (field: string, value: string) => `${field}: ${value}`,
  none1: 'none',
  yes: 'yes',
  no: 'no',
  correct: (what: string) => `Correct to ${what}`,
  unchanged: 'No change yet',
  bulb: 'Bulb',
  seconds: 's',
  done: 'Done',
  elapsedHint: 'How long the shutter really was open.',
  secondsBad: 'A time is above zero. Nothing was changed.',
  withoutNumber: 'Without a number',
  undo: (what: EventKind) =>
    `Undo ${{ corrected: 'correction', discarded: 'discard', noted: 'note', judged: 'verdict' }[what as string] ?? what}`,
  refused: 'That could not be logged. Nothing was changed.',

  ledgerHint:
    'Each rig against the reference of its set, from the frames that count. A set’s figure is the mean over its passes, in stops.',
  darksApart: 'Capped darks are not compared in light.',
  noPair: 'No complete pass: a pair needs a frame that counts on either side.',
  noMean: 'No complete pass',
  noLedger: 'No pair to compare. A plan with two rigs has one.',
  differs: (stops: string) => `Differs by ${stops} stop`,
  pairDiffers: (stops: string) => `The pair differs by ${stops} stop.`,
  pairAlike: 'The pair does not differ.',
  againstOne: 'against',
  byCause: 'Cause by cause',
  withoutUnknown: (causes: string) => `Without ${causes.toLowerCase()}: unknown.`,
  passesCaption: 'In stops',
  against: (other: string, reference: string) => `${other} against ${reference}`,
  renders: (rig: string, brighter: boolean) =>
    `${rig} renders ${brighter ? 'brighter' : 'darker'}.`,
  evenUp: (stops: string) => `even-up ${stops}`,
  residual: (stops: string) => `residual ${stops}`,
  inPasses: (passes: number) => count(passes, 'pass', 'passes'),
  byPass: 'By pass',
  passHead: 'Pass',
  unpaired: (passes: readonly number[]) =>
    `Not in the mean: pass ${joined(passes.map(String))}, where only one of the two rigs has a frame that counts.`,
  below: 'Below the line',
  belowHint: (pass: number) => `As set in pass ${pass}. Each in its own unit, in no sum.`,
  heat: 'Sensor heat',
  heatWhy: 'Nothing models it yet.',

  exportTitle: 'Get it off this phone',
  exportHint:
    'Nothing is deleted here by exporting. A file is made ready first; then you hand it on.',
  table: 'Table',
  tableIs: 'CSV: a row for each frame, settings under their Exif names. For a spreadsheet.',
  makeTable: 'Make the table ready',
  journal: 'Journal',
  journalIs: 'JSON: everything that was logged. This app reads it back; so does any program.',
  makeJournal: 'Make the journal ready',
  notReady: (why: string) => `The file was not made. Nothing is lost. ${why}`,

  files: 'Backup and restore',
  filesInShort: 'Everything in one file, and files read back',
  backup: 'Backup',
  backupIs:
    'Gear, plans and all outings in one file. The practice outing stays out. Keep it off this phone.',
  lastBackup: (date: string, time: string) => `Last made ${date}, ${time}.`,
  noBackup: 'None has left this phone yet.',
  makeBackup: 'Make the backup ready',
  restore: 'Read a file back',
  restoreIs:
    'A backup, a journal or a gear file of this app. It is read whole and told to you first. What is here is never changed or removed.',
  chooseFile: 'Choose a file',
  readingFile: 'Reading the file.',
  fits: (date: string, time: string) => `Written ${date}, ${time}.`,
  bringsTitle: 'It would bring in',
  brings: {
    nothing: 'Nothing new: all of it is here already.',
    outing: (name: string) => `Outing ${name}`,
    lines: (name: string) => `New lines for the outing ${name}`,
    bodies: (bodies: number) => count(bodies, 'body', 'bodies'),
    lenses: (lenses: number) => count(lenses, 'lens', 'lenses'),
    rigs: (rigs: number) => count(rigs, 'rig', 'rigs'),
    plans: (plans: number) => count(plans, 'plan', 'plans'),
    copies: (copies: number) =>
      `${copies === 1 ? 'One of them comes as a copy' : `${copies} of them come as copies`} beside what stands here under the same id.`,
    deletedHere: (things: number) =>
      `${things === 1 ? 'One thing stays' : `${things} things stay`} away, deleted here before.`,
  },
  takeIn: 'Take it in',
  leaveIt: 'Leave it',
  taken: 'Taken in. What was here stays as it was.',
  notTaken(not: Exclude<NotTaken, { how: 'refused' }>): string {
    if (not.how === 'unsaved')
      return 'Nothing was taken: something entered here is not saved yet. Save it, then choose the file again.';
    if (not.how === 'store')
      return `Nothing was taken, and nothing here has changed. ${log.why[not.fault.kind]}`;
    return {
      'too-large':
        'Nothing was taken: the file is too large to be one of ours. Choose another file.',
      'not-text': 'Nothing was taken: the file is not text. Choose another file.',
      gone: 'Nothing was taken: the phone does not give the file out any more. Choose it again.',
    }[not.why];
  },
};
