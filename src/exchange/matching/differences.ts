import type { Body } from '../../gear/body.ts';
import type { Lens } from '../../gear/lens.ts';
import { type Positions, positionsOf } from '../../gear/positions.ts';
import type { TimeChoice } from '../../gear/settings.ts';
import type { LogFrame } from '../../log/frames.ts';
import type { CameraFile } from '../../outing/cameraFile.ts';
import type { CorrectionValue, EventData } from '../../outing/events.ts';
import { HAND_TIMING_S } from '../../outing/openTime.ts';
import { markedFNumber, markedIso, markedTime } from '../../science/dialSeries.ts';
import type { DialPosition } from '../../science/dials.ts';
import {
  stopsBetweenFNumbers,
  stopsBetweenIsos,
  stopsBetweenTimes,
} from '../../science/exposure.ts';
import { isRefusal, type Refusal } from '../../science/refusal.ts';
import type { FNumber, Iso, Seconds } from '../../science/units.ts';
import { fileNumberOf } from './fileNumber.ts';
import type { Difference, TakenDifference } from './types.ts';

/**
 * Figures nearer than this are one setting: the rounding of fractions and of APEX values in a file,
 * in stops. Below the 0.093 stop between 60 and 64 s, which are two settings (our choice).
 */
const ROUNDED_STOPS = 0.06;
/** Below a second files also write 1/3 for 0.3; the next mark is a third of a stop away (our choice). */
const ROUNDED_BELOW_1S = 0.15;
/** A file gives an f-number to a tenth, and a long time in whole seconds (common practice, no source). */
const ROUNDED_F = 0.051;
const ROUNDED_S = 0.5;
/** A file has 16 bits for the ISO: the largest figure stands for all above (CIPA DC-008, from memory). */
const MOST_ISO = 65535;

/** A figure of a dial: what its mark shows and what is behind it. Files give either. */
interface Figure<U> {
  readonly marked: U;
  readonly exact: U;
}

/**
 * Where a file says something else than was logged: time, f-number, ISO, file number, in this order,
 * each only where both are more apart than the rounding of a file's figures. A frame whose settings
 * were never recorded differs in nothing but its number: there is nothing to correct.
 */
export function differencesOf(
  frame: LogFrame,
  file: CameraFile,
  body: Body,
  lens: Lens,
): readonly Difference[] {
  const positions = positionsOf(body, lens);
  const found: (Difference | null)[] = [];
  if (frame.settings && !isRefusal(positions)) {
    found.push(
      timeDifference(frame, file.exposureS, body, positions),
      fNumberDifference(frame.settings.fMark, file.fNumber, positions),
      isoDifference(frame.settings.isoMark, file.iso, positions),
    );
  }
  found.push(numberDifference(frame.fileNumber, fileNumberOf(file.name, body.files)));
  return found.filter((each) => each !== null);
}

/** The one event that takes what was chosen, for `take-values`; what cannot be taken is left out. */
export const changesFor = (
  taken: readonly TakenDifference[],
): EventData['values-taken']['changes'] =>
  taken.flatMap(({ made, difference: { correction } }) =>
    correction ? [{ frame: made, ...correction }] : [],
  );

function timeDifference(
  { settings, openTime }: LogFrame,
  written: Seconds | null,
  body: Body,
  { times }: Positions,
): Difference | null {
  if (settings === null || written === null) return null;
  const { time } = settings;
  const open = openTime.from === 'unknown' ? null : openTime.s;
  if (open !== null && (openTime.from === 'hand' || time.kind === 'bulb')) {
    if (Math.abs(open - written) <= HAND_TIMING_S + ROUNDED_S) return null;
  } else if (time.kind === 'dial') {
    const figure = figureAt(times, time.mark, markedTime);
    if (figure && saysTime(figure, written)) return null;
  }
  const position = nearest(times, written, markedTime, (figure) => saysTime(figure, written));
  return {
    field: 'time',
    logged: open,
    written,
    stops: open === null ? null : stopsBetweenTimes(open, position?.exact ?? written),
    correction: timeCorrection(time, position?.mark ?? null, written, body),
  };
}

/** What stood on the dial, where it has the time; else the time that the shutter was open. */
function timeCorrection(
  logged: TimeChoice,
  mark: string | null,
  written: Seconds,
  body: Body,
): CorrectionValue {
  // In bulb the dial stood right, only the hand was not timed well.
  if (logged.kind === 'bulb') return { field: 'elapsedS', value: written };
  if (mark !== null && mark !== logged.mark) {
    return { field: 'time', value: { kind: 'dial', mark } };
  }
  return body.bulb.kind === 'none' || mark !== null
    ? { field: 'elapsedS', value: written }
    : { field: 'time', value: { kind: 'bulb', seconds: written } };
}

function fNumberDifference(
  mark: string,
  written: FNumber | null,
  { fNumbers }: Positions,
): Difference | null {
  if (written === null) return null;
  const isIt = (figure: Figure<FNumber>): boolean =>
    Math.abs(figure.marked - written) <= ROUNDED_F || Math.abs(figure.exact - written) <= ROUNDED_F;
  const logged = figureAt(fNumbers, mark, markedFNumber);
  if (logged && isIt(logged)) return null;
  const position = nearest(fNumbers, written, markedFNumber, isIt);
  return {
    field: 'fNumber',
    logged: logged?.marked ?? null,
    written,
    stops: logged && stopsBetweenFNumbers(logged.exact, position?.exact ?? written),
    correction: position && { field: 'fMark', value: position.mark },
  };
}

function isoDifference(mark: string, written: Iso | null, { isos }: Positions): Difference | null {
  if (written === null) return null;
  const logged = figureAt(isos, mark, markedIso);
  if (logged && saysSame(logged, written)) return null;
  if (logged && written === MOST_ISO && logged.marked >= MOST_ISO) return null;
  const position =
    written === MOST_ISO
      ? null
      : nearest(isos, written, markedIso, (figure) => saysSame(figure, written));
  return {
    field: 'iso',
    logged: logged?.marked ?? null,
    written,
    stops: logged && stopsBetweenIsos(logged.exact, position?.exact ?? written),
    correction: position && { field: 'isoMark', value: position.mark },
  };
}

const numberDifference = (logged: number | null, written: number | null): Difference | null =>
  written === null || logged === written
    ? null
    : {
        field: 'fileNumber',
        logged,
        written,
        stops: null,
        correction: { field: 'fileNumber', value: written },
      };

function figureOf<U extends number>(
  { mark, exact }: DialPosition<U>,
  read: (mark: string) => U | Refusal,
): Figure<U> {
  const marked = read(mark);
  return { marked: isRefusal(marked) ? exact : marked, exact };
}

function figureAt<U extends number>(
  positions: readonly DialPosition<U>[],
  mark: string,
  read: (mark: string) => U | Refusal,
): Figure<U> | null {
  const position = positions.find((each) => each.mark === mark);
  return position ? figureOf(position, read) : null;
}

/** Of the positions that a written figure may stand for, the one whose mark is nearest to it. */
function nearest<U extends number>(
  positions: readonly DialPosition<U>[],
  written: U,
  read: (mark: string) => U | Refusal,
  isIt: (figure: Figure<U>) => boolean,
): DialPosition<U> | null {
  const away = (position: DialPosition<U>): number =>
    Math.abs(figureOf(position, read).marked - written);
  let best: DialPosition<U> | null = null;
  for (const position of positions) {
    if (!isIt(figureOf(position, read))) continue;
    if (best === null || away(position) < away(best)) best = position;
  }
  return best;
}

/** Whether two figures that count once in stops, times or speeds, are one setting. */
const isNear = (a: number, b: number, within = ROUNDED_STOPS): boolean =>
  Math.abs(Math.log2(a / b)) <= within;

const saysSame = (figure: Figure<number>, written: number, within = ROUNDED_STOPS): boolean =>
  isNear(figure.marked, written, within) || isNear(figure.exact, written, within);

const saysTime = (figure: Figure<Seconds>, written: Seconds): boolean =>
  saysSame(figure, written, written < 1 ? ROUNDED_BELOW_1S : ROUNDED_STOPS);
