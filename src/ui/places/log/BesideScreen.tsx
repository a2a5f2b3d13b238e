import { useState } from 'preact/hooks';
import { changesFor, differencesOf } from '../../../exchange/matching/differences.ts';
import type { Difference, TakenDifference } from '../../../exchange/matching/types.ts';
import { assemble } from '../../../gear/rig.ts';
import type { LogFrame } from '../../../log/frames.ts';
import type { CameraFile } from '../../../outing/cameraFile.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { type PictureWords, usePictureWords } from '../../words/pictures.ts';
import { frameFacts, writtenTime } from './fileWords.ts';
import type { OpenedLog } from './LogPlace.tsx';
import './pictures.css';
import { Said } from './Said.tsx';

interface Differing {
  readonly place: number;
  readonly frame: LogFrame;
  readonly file: CameraFile;
  readonly differences: readonly Difference[];
}

/** The frames whose files say something else than was logged. */
export function differing(log: OpenedLog['log']): readonly Differing[] {
  const { files, gear } = log.journal.state.value;
  return log.frames.value.flatMap((frame, place) => {
    const file = files.get(frame.id);
    const parts = assemble(gear, frame.rig);
    if (!file || !parts) return [];
    const differences = differencesOf(frame, file, parts.body, parts.lens);
    return differences.length > 0 ? [{ place, frame, file, differences }] : [];
  });
}

/** Where the files and the log say different things, and taking what the files say. */
export function BesideScreen({ log, access }: OpenedLog) {
  const { log: desk } = useApp();
  const words = usePictureWords();
  const { log: logWords, pictures: say } = words;
  const [answer, setAnswer] = useState<'taken' | 'refused' | null>(null);
  const state = log.journal.state.value;
  const all = differing(log);
  const matched = [...state.files.values()].some((file) => file !== null);
  const takeable = (of: readonly Differing[]): readonly TakenDifference[] =>
    of.flatMap(({ frame, differences }) =>
      differences
        .filter(({ correction }) => correction !== null)
        .map((difference) => ({ made: frame.id, difference })),
    );
  const take = async (taken: readonly TakenDifference[]) => {
    const served = await desk.tap({ tap: 'take-values', changes: changesFor(taken) });
    setAnswer(served.how === 'refused' ? 'refused' : 'taken');
  };
  const whole = takeable(all);
  const last = desk.undoable.value;
  return (
    <Screen
      inner
      title={logWords.beside}
      foot={
        access === 'full' && (
          <>
            {last?.kind === 'values-taken' && (
              <Button
                onPress={() => {
                  setAnswer(null);
                  void desk.undo();
                }}
              >
                {logWords.undo[last.kind]}
              </Button>
            )}
            {whole.length > 1 && (
              <Button rank="main" onPress={() => void take(whole)}>
                {say.takeAll(whole.length)}
              </Button>
            )}
          </>
        )
      }
    >
      <div class="log-about">
        <Said log={log} access={access} />
        {answer === 'refused' && <Notice urgent>{say.refused}</Notice>}
        {answer === 'taken' && <p role="status">{say.taken}</p>}
        {!matched ? (
          <EmptyHint>{say.besideNoFiles}</EmptyHint>
        ) : all.length === 0 ? (
          <EmptyHint>{say.besideNone}</EmptyHint>
        ) : (
          <p class="hint">{say.besideHint}</p>
        )}
      </div>
      {all.map((one) => (
        <Section key={one.frame.id} title={`${say.frame(one.place + 1)} · ${one.file.name}`}>
          <p class="hint">{frameFacts(words, state.gear, one.frame)}</p>
          <ul>
            {one.differences.map((difference) => (
              <li key={difference.field} class="pictures-beside">
                <Line
                  difference={difference}
                  onTake={
                    access === 'full' ? () => void take([{ made: one.frame.id, difference }]) : null
                  }
                />
              </li>
            ))}
          </ul>
          {access === 'full' && takeable([one]).length > 1 && (
            <div class="acts">
              <Button onPress={() => void take(takeable([one]))}>{say.takeFrame}</Button>
            </div>
          )}
        </Section>
      ))}
    </Screen>
  );
}

interface LineProps {
  readonly difference: Difference;
  /** Null = it can only be read. */
  readonly onTake: (() => void) | null;
}

function Line({ difference, onTake }: LineProps) {
  const words = usePictureWords();
  const { format, pictures: say } = words;
  const { field, logged, written, stops, correction } = difference;
  const value = valueText(words, field, written);
  return (
    <>
      <p>
        <strong>{say.field[field]}</strong>:{' '}
        {logged === null ? say.nothingLogged : say.logged(valueText(words, field, logged))},{' '}
        {say.written(value)}
        {stops !== null && (
          <>
            <br />
            {(stops < 0 ? say.darker : say.brighter)(format.number(Math.abs(stops), 2))}
          </>
        )}
      </p>
      {correction === null ? (
        <p class="hint">{say.cannotTake}</p>
      ) : (
        onTake && (
          <div class="acts">
            <Button onPress={onTake}>{say.take(value)}</Button>
          </div>
        )
      )}
    </>
  );
}

function valueText(words: PictureWords, field: Difference['field'], value: number): string {
  const { format } = words;
  switch (field) {
    case 'time':
      return writtenTime(words, value);
    case 'fNumber':
      return format.fMark(format.plain(value, 1));
    case 'iso':
      return format.isoMark(String(Math.round(value)));
    case 'fileNumber':
      return String(value);
    default:
      return field satisfies never;
  }
}
