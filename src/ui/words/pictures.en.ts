import type { Unread } from '../../app/readPicture.ts';
import type { LeftKind } from '../../exchange/matching/types.ts';

const count = (number: number, one: string, several: string): string =>
  `${number} ${number === 1 ? one : several}`;

/** Frames and their pictures. */
export const pictures = {
  hint: 'Only what a picture’s file says of itself is read. Pictures stay where they are and as they are, and nothing leaves this device.',
  choose: 'Choose pictures',
  chooseFolder: 'Choose a folder',
  drop: 'They can also be dropped here.',
  reading: (done: number, of: number) => `${done} of ${of} read`,
  progress: 'Files read',
  cancel: 'Cancel',
  failed:
    'The pictures could not be read: a part of the app is missing. Nothing was changed. Reload the app while online.',
  cancelled: (done: number) => `Cancelled: only the first ${done} are matched.`,
  noneRead:
    'None of these files says anything of itself. Nothing was changed. Choose the pictures as the body wrote them.',

  outcome: 'What was found',
  matched: (frames: number, of: number) =>
    `${frames} of ${count(of, 'frame', 'frames')} with a file`,
  inDoubt: (asks: number) => count(asks, 'question to decide', 'questions to decide'),
  without: (frames: number) => `${count(frames, 'frame', 'frames')} without a file`,
  left: (files: number) => `${count(files, 'file', 'files')} without a frame`,
  unread: (files: number) => `${count(files, 'file', 'files')} without Exif`,

  clocks: 'Clocks of the bodies',
  ahead: (amount: string, width: string) => `${amount} ahead of this phone, ±${width}`,
  behind: (amount: string, width: string) => `${amount} behind this phone, ±${width}`,
  gains: (amount: string) => `gains ${amount} an hour`,
  loses: (amount: string) => `loses ${amount} an hour`,
  from: {
    'clock-frame': 'from the clock frame',
    sequence: 'from the sequence of frames',
    'by-hand': 'decided by hand',
  },

  decide: 'To be decided',
  whichRig: (group: string, files: number) =>
    `Which rig took the ${count(files, 'file', 'files')} of ${group}?`,
  noRig: 'None of this outing',
  whichClock: (rig: string) => `How did the clock of ${rig} stand? More than one answer fits.`,
  whichFile: 'Which file is this frame?',
  noFile: 'None of the files',
  unnamed: 'a body that does not say its name',

  accept: (files: number) => `Accept ${count(files, 'file', 'files')}`,
  acceptClocks: 'Accept what is decided',
  accepted: 'Accepted. Undo takes it back.',
  refused: 'That could not be logged. Nothing was changed. Try again.',

  framesTitle: 'Frames and files',
  frame: (place: number) => `Frame ${place}`,
  sure: 'found',
  said: 'said by hand',
  doubtful: 'in doubt',
  noneYet: 'no file',
  changeTitle: (place: number) => `File of frame ${place}`,
  changeHint: 'The files taken nearest to it, and those that were in doubt.',

  leftTitle: 'Files without a frame',
  leftKind: {
    'clock-frame': 'a clock frame',
    copy: 'the same picture as another file',
    retake: 'a retake that was not logged',
    bracket: 'a bracket beside a frame',
    'extra-shot': 'an extra shot of this evening',
    'other-evening': 'of another evening',
    unknown: 'says too little to be placed',
  } satisfies Record<LeftKind, string>,
  unreadTitle: 'Files without Exif',
  why: {
    'no-exif': 'holds no Exif that can be read',
    gone: 'is gone: the card may have been taken out',
    'too-large': 'is too large for a picture',
  } satisfies Record<Unread, string>,

  file: 'File',
  fileOf: (name: string) => `File ${name}`,
  noFileSaid: 'It has no file.',

  besideHint:
    'Where a file says something else than was logged. What you take becomes a correction; what was first logged stays readable.',
  besideNone: 'The log and the files say the same, as far as files say it.',
  besideNoFiles: 'No frame has a file yet. Choose the pictures first.',
  field: { time: 'Time', fNumber: 'Aperture', iso: 'ISO', fileNumber: 'File number' },
  logged: (value: string) => `logged ${value}`,
  written: (value: string) => `file ${value}`,
  nothingLogged: 'nothing logged',
  brighter: (stops: string) => `by the file ${stops} stop brighter`,
  darker: (stops: string) => `by the file ${stops} stop darker`,
  take: (value: string) => `Take ${value}`,
  cannotTake: 'This body has no such position: correct the frame by hand.',
  takeFrame: 'Take all from this file',
  takeAll: (differ: number) => `Take all ${differ}`,
  taken: 'Taken. The ledger counts with it now.',
};
