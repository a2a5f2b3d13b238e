import type { NotTaken } from '../../app/files.ts';
import type { Fault } from '../../gear/read.ts';
import { figures } from './figures.en.ts';
import { log } from './log.en.ts';

/** As it is typed, but for a real minus. */
const figure = (value: string | number): string => figures.plain(Number(value), 6);

type Sentence = (params: Fault['params']) => string;

/**
 * What is wrong with a value, by the key of the rule that it broke. One sentence each: what is
 * wrong, and what to do.
 */
export const faultSentences: Readonly<Record<string, Sentence>> = {
  'text-empty': () => 'This is empty. Write something that you will know it by.',
  'text-too-long': ({ most }) => `This is too long. ${most} characters fit.`,
  'text-unprintable': () => 'There is a character in this that cannot be shown. Type it again.',
  'not-text': () => 'This is not text. Type it again.',
  'not-a-number': () => 'This is not a number. Write it with digits and one comma or point.',
  'not-a-decimal': () => 'This is not a number. Write it with digits and one comma or point.',
  'not-whole': () => 'This must be a whole number. Leave out the decimals.',
  'out-of-range': ({ least = 0, most = 0, unit }) =>
    `This must lie between ${figure(least)} and ${figure(most)}${unit === undefined ? '' : unit === '°' ? unit : `\u00a0${unit}`}.`,
  'latitude-out-of-range': () => 'A latitude lies between 90 S and 90 N.',
  'longitude-out-of-range': () => 'A longitude lies between 180 W and 180 E.',
  'zone-offset-out-of-range': () =>
    'A time zone is a whole number of minutes, less than a day, from UTC.',
  'limit-not-above-one': () => 'The ratio must be more than 1.',
  'not-a-mark': () =>
    'This is not a position of a dial. Write it as the body shows it, as in 6.3, 64 or 1/250.',
  'not-a-date': () => 'This is not a day. Write year, month and day, as in 2027-02-12.',
  'not-among': ({ choices }) => `This must be one of these: ${choices}.`,
  'not-yes-or-no': () => 'This must be yes or no.',
  'not-in-file-names': () =>
    'File names cannot hold any of / \\ : * ? " < > |. Leave that character out.',
  'counter-past-its-digits': ({ digits }) =>
    `A number of ${digits} digits never gets that far. Write a smaller last number, or more digits.`,
  'sensor-upright': () =>
    'The height is larger than the width. Enter the longer side as the width.',
  'pixels-not-of-this-sensor': () =>
    'These pixels do not fit these sides: they would be far from square. Check sides and pixels.',
  'order-comes-back': () =>
    'One rig at a time is shot rig by rig. Choose that order, or another way to mount.',
  'value-outside-its-range': () =>
    'The value lies outside its own range. Correct one of the three.',
  'ratio-limit-not-above-one': () => 'The ratio must be more than 1.',
  'tolerance-not-positive': () => 'What is tolerated is above zero. Write it as in 0.02.',
  'timer-not-among-choices': () => 'The body has no such self-timer. Choose one of its times.',
  'dial-ends-upside-down': () =>
    'The ends of the dial are the wrong way round. The first must be below the last.',
  'dial-end-off-series': () =>
    'The dial has no such position at this step. Choose another end or another step.',
  'dial-empty': () => 'No position would be left on the dial. Keep at least one.',
  'dial-mark-not-a-number': () =>
    'This is not a position of a dial. Write it as the body shows it, as in 6.3, 64 or 1/250.',
  'f-number-not-positive': () => 'An f-number is above zero. Write it as on the lens.',
  'iso-not-positive': () => 'An ISO is above zero. Write it as on the body.',
  'time-not-positive': () => 'A time is above zero. Write it in seconds.',
  'doubling-temperature-not-positive': () => 'A doubling is above zero. Write it in K.',
  'duration-negative': () => 'This time cannot be below zero.',
  'length-not-positive': () => 'A length is above zero. Write it in millimetres.',
  'pixels-not-positive': () => 'A count of pixels is above zero.',
  'stops-not-finite': () => 'This is not a number of stops. Write it as in -0.15.',
  'not-an-object': () => 'A group of fields is missing here.',
  'not-a-list': () => 'A list is missing here.',
  'list-too-long': ({ most }) => `There are more than ${most} here.`,
  'field-missing': () => 'This field is missing.',
  'field-unknown': ({ field }) => `There is a field that this version does not know: ${field}.`,
  'not-an-id': () => 'This is not a name that the app gives.',
  'id-twice': ({ id }) => `The name ${id} stands twice.`,
  'file-empty': () => 'The file is empty. Choose another file.',
  'file-too-large': ({ mostMegabytes }) => `The file is larger than ${mostMegabytes} MB.`,
  'file-too-full': () => 'It holds more than any file of ours could. Choose another file.',
  'file-newer': () => 'A newer version of the app wrote it. Update the app, then take it again.',
  'not-json': ({ line, column }) =>
    line === undefined
      ? 'It is damaged, or not one of ours. Choose another file.'
      : `It is damaged at line ${line}, column ${column}. Choose another file.`,
  'event-newer': () => 'A newer version of the app wrote it. Update the app, then take it again.',
  'event-differs': () =>
    'The outing here says something else at this place, so that one of the two was altered. Choose the file as it left the phone.',
  'event-place-taken': () =>
    'The outing here says something else at this place, so that one of the two was altered. Choose the file as it left the phone.',
  'event-of-other-outing': () => 'This belongs to another outing. Choose another file.',
  'key-not-of-this-frame': () => 'This frame carries the name of another one.',
  'stretch-backward': () => 'This stretch ends before it begins.',
  'zone-unknown': () => 'There is no such time zone.',
  'other-format': () => 'It is not one of ours. Choose another file.',
  'too-many-frames': ({ most }) =>
    `That makes more than ${most} frames, too many for an evening. Take fewer passes, repeats or sets.`,
  'body-gone': () => 'A rig needs a body that is not there. Choose another body.',
  'no-long-time': () =>
    'No time of this body is long enough to warm it. Enter its longest time or its bulb under Gear.',
  'lens-gone': () => 'A rig needs a lens that is not there. Choose another lens.',
};

/** What is wrong with what was entered or with a file. */
export const faults = {
  /** What is wrong with a value, in one sentence. */
  fault: ({ rule, params }: Fault): string =>
    faultSentences[rule]?.(params) ?? `This cannot be taken: ${rule}. Enter it in another way.`,
  /** Why a file was not taken. */
  notTaken(not: NotTaken): string {
    if (not.how === 'refused') return fileFault(not.fault);
    if (not.how === 'unsaved')
      return 'Nothing was taken: something entered here is not saved yet. Save it, then choose the file again.';
    if (not.how === 'store')
      return `Nothing was taken, and nothing here has changed. ${log.why[not.fault.kind]}`;
    return {
      'too-large':
        'Nothing was taken: the file is too large to be one of ours. Choose another file.',
      'not-text': 'Nothing was taken: the file is not text. Choose another file.',
      'part-missing':
        'Nothing was taken: a part of the app is not on the device. Open the app once with a network, then choose the file again.',
      gone: 'Nothing was taken: the phone does not give the file out any more. Choose it again.',
    }[not.why];
  },
};

/** With the first fault and its place. */
function fileFault({ rule, params, path }: Fault): string {
  const sentence = faultSentences[rule]?.(params) ?? `It breaks a rule: ${rule}.`;
  return `Nothing was taken from the file, and nothing here has changed. ${path === '' ? '' : `At ${path}: `}${sentence}`;
}
