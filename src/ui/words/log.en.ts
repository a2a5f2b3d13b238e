import type { Left } from '../../app/files.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

const LEFT: Record<Left['what'], string> = {
  table: 'as a table',
  journal: 'as a journal',
  backup: 'in a backup',
};

/** Words of the Log place as far as the field needs them. Durations, marks and counts of stops come in as they are written. */
export const log = {
  title: 'Log',
  chooseHint: 'Choose an outing to see its frames.',
  openHint: 'Choose a frame, the ledger or the export.',
  none: 'No outing yet. Start one from a plan: every frame then stands here, with what was planned and what was set.',
  toPlan: 'Go to Plan',
  looking: 'Looking through the log.',
  readingRest: 'Reading the rest of the log.',
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

  resume: 'Go on with this outing',
  notResumed: {
    'another-runs': 'Another outing is under way. End it first; both are safe.',
    'not-saved': 'Something said here is not saved yet. Save it first, then go on.',
  },
  readOnly: 'This outing is open in another window. Here it can only be read.',
  remind: 'Has not left this phone. A lost phone takes it along.',

  ledger: 'Ledger',
  ledgerInShort: (pairs: number, sets: number) =>
    `${count(pairs, 'pair', 'pairs')} in ${count(sets, 'set', 'sets')}`,
  export: 'Export',
  lastLeft: (date: string, time: string, what: Left['what']) =>
    `Last left ${date}, ${time}, ${LEFT[what]}`,
  neverLeft: 'Has not left this phone',

  filter: 'Show',
  filterAll: 'everything',
  shown: (wanted: number, all: number) => `${wanted} of ${count(all, 'line', 'lines')}`,
  nothingShown: 'No line fits. Show everything to see the rest.',
  showAll: 'Show everything',
  framesTitle: 'Frames',
  noFrames: 'No frame yet.',
  noIntent: 'no intent',
  setAt: (place: number, intent: string) => `${place}. ${intent}`,

  fromTo: (from: string, to: string) => `${from} to ${to}`,
  open: {
    steady: (time: string, within: string) => `open ${time} ±${within} s`,
    wall: (time: string) => `open ${time}, uncertain`,
    correction: (time: string) => `open ${time}`,
    unknown: 'open time unknown',
  },
  bulb: (time: string) => `Bulb ${time}`,
  notRecorded: 'not recorded yet',
  capped: 'capped dark',
  planned: (mark: string) => `planned ${mark}`,
  retake: (attempt: number) => `retake ${attempt - 1}`,
  discarded: 'discarded',
  notCounting: 'does not count',
  corrected: 'corrected',
  quoted: (note: string) => `“${note}”`,
  leftOut: {
    skipped: (frames: number) => `${count(frames, 'frame', 'frames')} skipped`,
    'set-dropped': (frames: number) => `Set dropped: ${count(frames, 'frame', 'frames')} not made`,
  },
  rematched: (set: string) => `${set} followed the light:`,
  restSkipped: (left: string) => `Rest skipped, ${left} left`,
  battery: 'Battery changed',
  switchedOff: 'Switched off',
  reading: 'Meter reading',
  ev: (figure: string) => `EV ${figure} at ISO 100`,
  cameOut: (thirds: number, stops: string) =>
    thirds === 0 ? 'came out right' : `came out ${stops} stop ${thirds > 0 ? 'over' : 'under'}`,

  exportHint:
    'Nothing is deleted here by exporting. A file is made ready first; then you hand it on.',
  table: 'Table',
  tableIs: 'CSV: a row for each frame, settings under their Exif names. For a spreadsheet.',
  makeTable: 'Make the table ready',
  journal: 'Journal',
  journalIs: 'JSON: everything that was logged. This app reads it back; so does any program.',
  makeJournal: 'Make the journal ready',
  notReady: (why: string) => `The file was not made. Nothing is lost. ${why}`,

  pictures: 'Pictures',
  picturesInShort: (given: number, made: number) =>
    given === 0
      ? 'Find the file of each frame'
      : `${given} of ${count(made, 'frame', 'frames')} with a file`,
  beside: 'Log beside files',
  besideInShort: 'Where they say different things',

  files: 'Backup and restore',
  filesInShort: 'Everything in one file, and files read back',
};
