import type { Remark } from '../../app/log.ts';
import type { CorrectionValue } from '../../outing/events.ts';
import type { WhyNoHeat } from '../../outing/heat.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Two or more in a row: 'a, b and c'. */
const joined = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Words of what the Log does at the desk: one frame and its corrections, the ledger, files read back. */
export const logDesk = {
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

  frame: (place: number) => `Frame ${place}`,
  frameGone: 'There is no such frame. It may have been undone.',
  earlier: 'Earlier',
  later: 'Later',
  pass: (pass: number, repeat: number) => `Pass ${pass}, frame ${repeat}`,
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
  openFor: (time: string) => `Open ${time}`,
  openFrom: {
    dial: (exact: string) => `by the body, ${exact} s behind its mark`,
    steady: (within: string) => `measured between two taps, ±${within} s`,
    wall: 'by the phone’s clock alone, uncertain',
    correction: 'as corrected',
    unknown: 'the clock was set back: nobody knows',
  },
  noFile: 'No file number',
  noVerdict: 'No verdict',
  when: 'When',
  day: 'Day',
  opened: 'Shutter opened',
  closed: 'Shutter closed',
  zone: 'Zone',
  zoneOf: (offset: string, zone: string) => `UTC${offset}, ${zone}`,
  leadIn: 'Self-timer',
  noLeadIn: 'none',
  rested: 'Rested before',
  firstOfRig: 'its first frame',
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
  yes: 'yes',
  no: 'no',
  correct: (what: string) => `Correct to ${what}`,
  unchanged: 'No change yet',
  seconds: 's',
  done: 'Done',
  elapsedHint: 'How long the shutter really was open.',
  secondsBad: 'A time is above zero. Nothing was changed.',
  withoutNumber: 'Without a number',
  undo: {
    corrected: 'Undo the correction',
    discarded: 'Undo the discard',
    noted: 'Undo the note',
    judged: 'Undo the verdict',
    'evened-up': 'Undo the even-up',
    'gear-corrected': 'Undo the change of gear',
    'files-matched': 'Undo the accepted files',
    'values-taken': 'Undo the taken values',
  } satisfies Record<Remark['kind'], string>,
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
  withoutUnknown: (causes: string) => `Not in it, because unknown: ${causes.toLowerCase()}.`,
  passesCaption: 'In stops',
  against: (other: string, reference: string) => `${other} against ${reference}`,
  renders: (rig: string, brighter: boolean) =>
    `${rig} renders ${brighter ? 'brighter' : 'darker'}.`,
  evenUp: (stops: string) => `even-up\u00a0${stops}`,
  residual: (stops: string) => `residual\u00a0${stops}`,
  fade: (stops: string, width: string) => `fade\u00a0${stops}\u00a0${width}`,
  fadeHead: 'Fade',
  meanOf: (passes: number) => `mean of ${passes} passes`,
  byPass: 'By pass',
  passHead: 'Pass',
  unpaired: (passes: readonly number[]) =>
    `Not in the mean: pass ${joined(passes.map(String))}, where only one of the two rigs has a frame that counts.`,
  below: 'Below the line',
  belowHint: (pass: number) => `As set in pass ${pass}. Each in its own unit, in no sum.`,
  heat: 'Sensor heat',
  heatOf: (usual: string, range: string) => `${usual} stop of dark current (${range})`,
  heatShort: (usual: string, range: string) => `heat\u00a0${usual} (${range})`,
  heatBodies: 'Were the two bodies to warm unlike',
  heatIs: (warmer: string | null) =>
    `${warmer === null ? 'Neither was the warmer.' : `${warmer} was the warmer.`} By what each rig went through, each over its own rested state; what either is when rested nobody has measured. A body that warms more is a result, not an unfairness.`,
  heatUnknown: {
    'battery-changed': (rig: string) =>
      `The battery of ${rig} was changed: how warm it was from there on nobody knows.`,
    'clock-set': (rig: string) =>
      `The clock was set back: how long ${rig} worked and cooled nobody knows.`,
    'still-open': (rig: string) => `A frame of ${rig} is still open.`,
    'rig-gone': (rig: string) => `${rig} is not among the gear.`,
  } satisfies Record<WhyNoHeat, (rig: string) => string>,
  averaging: 'How the mean is taken',
  weighted: (price: string, leaves: string) =>
    `Weighted against the drift; noise ×${price}. The frames were made at times by which a plain mean would leave ${leaves} stop of a steady fade. Weigh what you measure in them alike, in stops.`,
  weightedShort: (price: string) => `weighted against the drift, noise ×${price}`,
  notSeparable: (leaves: string) =>
    `A plain mean, which leaves ${leaves} stop of a steady fade: these times do not tell a drift from the rigs.`,
  tooDear: (leaves: string, price: string) =>
    `A plain mean, which leaves ${leaves} stop of a steady fade: weights against it would make the noise ×${price}.`,
  weightOf: (rig: string, pass: number, weight: string) => `${rig}, pass ${pass}: ${weight}`,
  asPlanned: 'as planned',
  firstLogged: (mark: string) => `first logged ${mark}`,

  backup: 'Backup',
  backupIs:
    'Gear, plans, sites and all outings in one file. The practice outing stays out. Keep it off this phone.',
  lastBackup: (date: string, time: string) => `Last made ${date}, ${time}.`,
  noBackup: 'None has left this phone yet.',
  makeBackup: 'Make the backup ready',
  restore: 'Read a file back',
  restoreIs:
    'A backup, a journal or a gear file of this app. It is read whole and told to you first. What is here is never changed or removed.',
  chooseFile: 'Choose a file',
  readingFile: 'Reading the file.',
  fits: (date: string, time: string) =>
    `The file was written ${date}, ${time}. Nothing is taken in before you say so.`,
  bringsTitle: 'It would bring in',
  bringsNothing: 'Nothing new',
  brings: {
    nothing: 'All of it is here already, or was deleted here.',
    outing: (name: string) => `Outing ${name}`,
    lines: (name: string) => `New lines for the outing ${name}`,
    bodies: (bodies: number) => count(bodies, 'body', 'bodies'),
    lenses: (lenses: number) => count(lenses, 'lens', 'lenses'),
    rigs: (rigs: number) => count(rigs, 'rig', 'rigs'),
    plans: (plans: number) => count(plans, 'plan', 'plans'),
    sites: (sites: number) => count(sites, 'site', 'sites'),
    copies: (copies: number) =>
      `${copies === 1 ? 'One of them comes as a copy' : `${copies} of them come as copies`} beside what stands here under the same id.`,
    deletedHere: (things: number) =>
      `${things === 1 ? 'One thing stays' : `${things} things stay`} away, deleted here before.`,
  },
  takeIn: 'Take it in',
  leaveIt: 'Leave it',
  taken: 'Taken in. What was here stays as it was.',
};
