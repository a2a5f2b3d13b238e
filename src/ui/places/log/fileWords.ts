import type { Gear } from '../../../gear/rig.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { CameraFile } from '../../../outing/cameraFile.ts';
import type { PictureWords } from '../../words/pictures.ts';
import { rigText } from '../outing/RigName.tsx';
import { DIALS, marksOf } from './sentences.ts';

/** A time as a file writes it: '64 s', '1/250 s'. */
export const writtenTime = ({ format }: PictureWords, s: number): string =>
  s < 0.25 ? `1/${format.plain(1 / s, 0)}\u00a0s` : `${format.plain(s, 2)}\u00a0s`;

/** 'f/6.3 · 64 s · ISO 100 · 12 Feb 2027 17:45:06', as far as the file says it. */
export function fileFacts(words: PictureWords, file: CameraFile): string {
  const { format } = words;
  return [
    file.fNumber === null ? null : format.fMark(format.plain(file.fNumber, 1)),
    file.exposureS === null ? null : writtenTime(words, file.exposureS),
    file.iso === null ? null : format.isoMark(String(Math.round(file.iso))),
    // As the body's clock showed it, in no zone of ours.
    file.time === null
      ? null
      : `${format.date(file.time.shownMs, 0)} ${format.timeFine(file.time.shownMs, 0)}`,
  ]
    .filter((fact) => fact !== null)
    .join(' · ');
}

/** 'A Alder 44 · f/6.3 · 64 s · ISO 100 · 17:45:06' */
export function frameFacts(words: PictureWords, gear: Gear, frame: LogFrame): string {
  const { format } = words;
  const marks = marksOf(words, frame.settings ?? frame.planned.settings);
  return [
    rigText(gear, frame.rig),
    ...DIALS.map((dial) => marks[dial]),
    format.timeFine(frame.opened.wallMs, frame.opened.offsetMin),
  ].join(' · ');
}
