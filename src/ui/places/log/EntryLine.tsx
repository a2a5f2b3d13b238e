import type { ComponentChildren } from 'preact';
import { assemble } from '../../../gear/rig.ts';
import type { LogEntry } from '../../../log/entries.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { MadeId } from '../../../outing/ids.ts';
import type { Instant } from '../../../outing/instant.ts';
import type { RunState } from '../../../outing/state.ts';
import { RigSign } from '../../parts/RigSign.tsx';
import { useWords } from '../../words/words.ts';
import {
  changedDials,
  clockText,
  DIALS,
  marksOf,
  openText,
  readingWords,
  remarks,
  setWords,
} from './sentences.ts';

interface Props {
  readonly entry: LogEntry;
  readonly state: RunState;
  readonly current: boolean;
  readonly onPress: (frame: MadeId) => void;
}

/** One line of the log. */
export function EntryLine({ entry, state, current, onPress }: Props) {
  const words = useWords();
  const { log, format } = words;
  const sign = (rig: LogFrame['rig']) => {
    const letter = assemble(state.gear, rig)?.rig.letter;
    return letter && <RigSign letter={letter} />;
  };
  switch (entry.kind) {
    case 'frame':
      return (
        <FrameLine frame={entry.frame} current={current} onPress={() => onPress(entry.frame.id)} />
      );
    case 'left-out': {
      const rigs = [...new Set(entry.frames.map(({ rig }) => rig))];
      return (
        <Line at={entry.at} sign={rigs.length === 1 && rigs[0] && sign(rigs[0])}>
          {log.leftOut[entry.why](entry.frames.length)}
        </Line>
      );
    }
    case 'reading':
      return (
        <Line at={entry.at}>
          {log.reading}, {entry.reading.meter}: {readingWords(words, entry.reading)}
        </Line>
      );
    case 'note':
      return <Line at={entry.at}>{words.log.quoted(entry.note.text)}</Line>;
    case 'rematched':
      return (
        <Line at={entry.at}>
          {log.rematched(setWords(words, state.plan, entry.rematched.set))}{' '}
          {entry.rematched.frames.map(({ rig, settings }) => (
            <span key={rig}>
              {sign(rig)} {DIALS.map((dial) => marksOf(words, settings)[dial]).join(' ')}{' '}
            </span>
          ))}
        </Line>
      );
    case 'rest-skipped':
      return (
        <Line at={entry.at} sign={sign(entry.rest.rig)}>
          {log.restSkipped(format.duration(entry.rest.leftS))}
        </Line>
      );
    case 'battery-changed':
      return (
        <Line at={entry.at} sign={sign(entry.rig)}>
          {log.battery}
        </Line>
      );
    case 'switched-off':
      return (
        <Line at={entry.at} sign={sign(entry.rig)}>
          {log.switchedOff}
        </Line>
      );
  }
}

interface LineProps {
  readonly at: Instant;
  readonly sign?: ComponentChildren;
  readonly children: ComponentChildren;
}

/** What is no frame: when, and what. */
function Line({ at, sign, children }: LineProps) {
  const { format } = useWords();
  return (
    <div class="log-line">
      <span class="log-sign">{sign}</span>
      <p>
        <span class="hint">{format.timeFine(at.wallMs, at.offsetMin)}</span> {children}
      </p>
    </div>
  );
}

interface FrameLineProps {
  readonly frame: LogFrame;
  readonly current: boolean;
  readonly onPress: () => void;
}

/** A frame: what was set, when, its file, and what is to be said of it. */
function FrameLine({ frame, current, onPress }: FrameLineProps) {
  const words = useWords();
  const { opened, closed, openTime, letter, fileName } = frame;
  const marks = marksOf(words, frame.settings ?? frame.planned.settings);
  const changed = changedDials(frame);
  const about = [
    clockText(words, opened, closed),
    frame.settings && openText(words, openTime),
    fileName,
  ];
  const said = remarks(words, frame);
  return (
    <button
      type="button"
      class={`log-line frame${frame.counts ? '' : ' apart'}`}
      aria-current={current ? 'true' : undefined}
      onClick={onPress}
    >
      <span class="log-sign">{letter && <RigSign letter={letter} />}</span>
      <span class="log-words">
        <span class="log-marks">
          {DIALS.map((dial) => (
            <span key={dial} class={changed.includes(dial) ? 'changed' : undefined}>
              {marks[dial]}{' '}
            </span>
          ))}
        </span>
        <span class="hint">{about.filter(Boolean).join(' · ')}</span>
        {said.length > 0 && <span class="log-said">{said.join(' · ')}</span>}
      </span>
    </button>
  );
}
