import { fileName } from '../../../gear/files.ts';
import type { RigId } from '../../../gear/ids.ts';
import { assemble, type Gear } from '../../../gear/rig.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { Verdict } from '../../../outing/events.ts';
import { HAND_TIMING_S, type OpenTime } from '../../../outing/openTime.ts';
import type { Correction } from '../../../outing/state.ts';
import type { Doublings } from '../../../science/sensorUnits.ts';
import type { Ranged } from '../../../science/thermalRange.ts';
import type { Stops } from '../../../science/units.ts';
import type { LogDeskWords } from '../../words/logDesk.ts';
import type { Words } from '../../words/words.ts';
import { timeMarkText } from './sentences.ts';

/** How that is known. */
export function openWords({ format, log }: LogDeskWords, open: OpenTime): string {
  if (open.from === 'dial') return log.openFrom.dial(format.plain(open.s));
  if (open.from !== 'hand') return log.openFrom[open.from];
  return open.certainty === 'wall'
    ? log.openFrom.wall
    : log.openFrom.steady(format.plain(HAND_TIMING_S));
}

/** A size in stops without its sign: '0.76'. */
export const sizeText = ({ format }: Words, stops: number): string =>
  format.number(Math.abs(stops), 2);

/** A heat in stops of dark current: '+0.12'. */
export const heatFigure = ({ format }: Words, heat: number): string =>
  format.stopsFine(heat as Stops);

/** '0.03 to 0.30' */
export const heatRange = (
  { format, outing }: Words,
  { least, most }: Pick<Ranged<Doublings>, 'least' | 'most'>,
): string => outing.heat.between(format.number(least, 2), format.number(most, 2));

/** 'ALD_0042' */
export function fileWords({ log }: LogDeskWords, gear: Gear, rig: RigId, number: number | null) {
  const body = assemble(gear, rig)?.body;
  return number === null || !body ? log.noFile : fileName(body.files, number);
}

export const verdictWords = ({ log, outing }: LogDeskWords, verdict: Verdict | null): string =>
  verdict === null ? log.noVerdict : outing.verdict.words[verdict];

/** 'ISO: ISO 200' */
export function correctionWords(
  words: LogDeskWords,
  gear: Gear,
  frame: LogFrame,
  made: Correction,
) {
  const { format, log } = words;
  const { change } = made;
  const value = (): string => {
    switch (change.field) {
      case 'fMark':
        return format.fMark(change.value);
      case 'isoMark':
        return format.isoMark(change.value);
      case 'time':
        return timeMarkText(words, change.value);
      case 'elapsedS':
        return format.timeMark(format.plain(change.value, 1));
      case 'fileNumber':
        return fileWords(words, gear, frame.rig, change.value);
      case 'verdict':
        return verdictWords(words, change.value);
      case 'counts':
        return change.value ? log.yes : log.no;
      case 'note':
        return change.value;
    }
  };
  return log.correctedTo(log.fields[change.field], value());
}
