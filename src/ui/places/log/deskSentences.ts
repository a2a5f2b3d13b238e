import { fileName } from '../../../gear/files.ts';
import { assemble, type Gear } from '../../../gear/rig.ts';
import { HAND_TIMING_S, type LogFrame, type OpenTime } from '../../../log/frames.ts';
import type { Correction } from '../../../outing/state.ts';
import type { LogDeskWords } from '../../words/logDesk.ts';
import type { Words } from '../../words/words.ts';
import { secondsText, timeMarkText } from './sentences.ts';

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

/** 'ISO: ISO 200' */
export function correctionWords(
  words: LogDeskWords,
  gear: Gear,
  frame: LogFrame,
  made: Correction,
) {
  const { format, log, outing } = words;
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
        return secondsText(words, change.value);
      case 'fileNumber': {
        const body = assemble(gear, frame.rig)?.body;
        return change.value === null || !body ? log.noFile : fileName(body.files, change.value);
      }
      case 'verdict':
        return change.value === null ? log.noVerdict : outing.verdict.words[change.value];
      case 'counts':
        return change.value ? log.yes : log.no;
      case 'note':
        return change.value;
    }
  };
  return log.correctedTo(log.fields[change.field], value());
}
