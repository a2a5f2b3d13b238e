import type { OutingLine } from '../../../app/log.ts';
import { type Settings, sameTimeMark } from '../../../gear/settings.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { Instant } from '../../../outing/instant.ts';
import { HAND_TIMING_S, type OpenTime } from '../../../outing/openTime.ts';
import type { TakenReading } from '../../../outing/state.ts';
import type { SetId } from '../../../plan/ids.ts';
import { isCapped, type Plan } from '../../../plan/plan.ts';
import type { Seconds } from '../../../science/units.ts';
import type { Words } from '../../words/words.ts';

/** '12 Feb 2027, 17:30 to 18:51', in the local time of the evening. */
export function spanWords({ format, log }: Words, line: Pick<OutingLine, 'begun' | 'ended'>) {
  const { begun, ended } = line;
  const date = format.date(begun.wallMs, begun.offsetMin);
  const from = format.time(begun.wallMs, begun.offsetMin);
  return ended
    ? log.span(date, from, format.time(ended.wallMs, ended.offsetMin))
    : log.begun(date, from);
}

/** '0.5 s', '12 s', '5:00' */
export const secondsText = ({ format }: Words, s: Seconds): string =>
  s < 60 ? format.timeMark(format.plain(s, 1)) : format.duration(s);

/** How long the shutter was open, with how sure that is; null where the body's mark says it all. */
export function openText(words: Words, open: OpenTime): string | null {
  const { format, log } = words;
  if (open.from === 'dial') return null;
  if (open.from === 'unknown') return log.open.unknown;
  const time = secondsText(words, open.s);
  if (open.from === 'correction') return log.open.correction(time);
  return open.certainty === 'wall'
    ? log.open.wall(time)
    : log.open.steady(time, format.plain(HAND_TIMING_S));
}

/** '17:31:21 to 17:32:25'; one instant where the clock shows no other. */
export function clockText({ format, log }: Words, opened: Instant, closed: Instant | null): string {
  const [from, to] = [opened, closed ?? opened].map(({ wallMs, offsetMin }) =>
    format.timeFine(wallMs, offsetMin),
  );
  return from === to || from === undefined || to === undefined
    ? (from ?? '')
    : log.fromTo(from, to);
}

/** A time as it is dialled; a held one with how long: 'Bulb 4:00'. */
export const timeMarkText = ({ format, log }: Words, time: Settings['time']): string =>
  time.kind === 'bulb' ? log.bulb(format.duration(time.seconds)) : format.timeMark(time.mark);

/** The marks of a frame's three dials, as the body shows them. */
export const marksOf = (words: Words, settings: Settings): Readonly<Record<Dial, string>> => ({
  fMark: words.format.fMark(settings.fMark),
  time: timeMarkText(words, settings.time),
  isoMark: words.format.isoMark(settings.isoMark),
});

export const DIALS = ['fMark', 'time', 'isoMark'] as const;
export type Dial = (typeof DIALS)[number];

/** The dials that stood otherwise than planned. A bulb's length is held, not dialled. */
export function changedDials({ settings, planned }: LogFrame): readonly Dial[] {
  if (!settings) return [];
  const { fMark, isoMark, time } = planned.settings;
  return DIALS.filter(
    (dial) =>
      ({
        fMark: fMark !== settings.fMark,
        isoMark: isoMark !== settings.isoMark,
        time: !sameTimeMark(time, settings.time),
      })[dial],
  );
}

/** What a line of the list must say of a frame besides its settings. */
export function remarks(words: Words, frame: LogFrame): readonly string[] {
  const { log, outing } = words;
  const planned = marksOf(words, frame.planned.settings);
  return [
    ...(isCapped(frame.set?.kind) ? [log.capped] : []),
    ...changedDials(frame).map((dial) => log.planned(planned[dial])),
    ...(frame.attempt > 1 ? [log.retake(frame.attempt)] : []),
    ...(frame.settings === null
      ? [log.notRecorded]
      : frame.counts
        ? []
        : [frame.discarded ? log.discarded : log.notCounting]),
    ...(frame.verdict && frame.verdict !== 'good'
      ? [outing.verdict.inLine(outing.verdict.words[frame.verdict])]
      : []),
    ...(frame.corrections.some(({ change }) => change.field !== 'note') ? [log.corrected] : []),
    ...frame.notes.map(log.quoted),
  ];
}

/** '2. Base ISO two stops under' */
export function setWords({ log }: Words, of: Plan, id: SetId): string {
  const place = of.sets.findIndex((set) => set.id === id);
  const set = of.sets[place];
  return set ? log.setAt(place + 1, set.intent || log.noIntent) : '';
}

/** What a meter said. */
export function readingWords({ format, log }: Words, { reading }: TakenReading): string {
  if (reading.kind === 'ev') return log.ev(format.number(reading.ev100, 1));
  const settings = [
    format.fMark(format.plain(reading.n, 1)),
    format.timeMark(format.plain(reading.t)),
    format.isoMark(format.plain(reading.s, 0)),
  ].join('  ');
  return reading.kind === 'settings'
    ? settings
    : `${settings}, ${log.cameOut(reading.thirdsOver, format.number(Math.abs(reading.thirdsOver) / 3, 1))}`;
}
