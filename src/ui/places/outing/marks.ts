import type { Settings } from '../../../gear/settings.ts';
import type { Words } from '../../words/words.ts';

/** The settings of a frame in one line, as the body marks them: 'f/6.3  64 s  ISO 100'. */
export const settingsLine = ({ format, outing }: Words, settings: Settings): string =>
  [
    format.fMark(settings.fMark),
    timeText({ format, outing }, settings.time),
    format.isoMark(settings.isoMark),
  ].join('  ');

/** A time as it is dialled; a held one names bulb. */
export const timeText = (
  { format, outing }: Pick<Words, 'format' | 'outing'>,
  time: Settings['time'],
): string =>
  time.kind === 'bulb'
    ? outing.dial.bulbFor(format.duration(time.seconds))
    : format.timeMark(time.mark);
