import { useState } from 'preact/hooks';
import { type PictureDesk, pictureDesk } from '../../../app/pictures.ts';
import type { Ask, Matching } from '../../../exchange/matching/types.ts';
import type { CameraFile } from '../../../outing/cameraFile.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { usePictureWords } from '../../words/pictures.ts';
import { AskedOf } from './AskedOf.tsx';
import { ChoosePictures } from './ChoosePictures.tsx';
import { ClockLines } from './ClockLines.tsx';
import { FramesAndFiles } from './FramesAndFiles.tsx';
import type { OpenedLog } from './LogPlace.tsx';
import { BESIDE } from './paths.ts';
import './pictures.css';
import { Said } from './Said.tsx';

/** The pictures of an outing: chosen, read, matched with its frames, decided, accepted. */
export function PicturesScreen({ log, access }: OpenedLog) {
  const app = useApp();
  const desk = pictureDesk(app);
  const words = usePictureWords();
  const { pictures: say } = words;
  const { outing } = log.journal;
  const state = desk.state(outing);
  const matching = desk.matching(log);
  const readOnly = access !== 'full';
  return (
    <Screen
      inner
      title={words.log.pictures}
      foot={matching && !readOnly && <Accept log={log} desk={desk} matching={matching} />}
    >
      <div class="log-about">
        <p class="hint">{say.hint}</p>
        <Said log={log} access={access} />
        {!readOnly && <ChoosePictures onChoose={(files) => desk.choose(outing, files)} />}
        {state.kind === 'reading' && (
          <div class="pictures-reading">
            <p role="status">{say.reading(state.done, state.of)}</p>
            <progress aria-label={say.progress} max={state.of} value={state.done} />
            <Button onPress={desk.cancel}>{say.cancel}</Button>
          </div>
        )}
        {state.kind === 'failed' && <Notice urgent>{say.failed}</Notice>}
        {state.kind === 'read' && !state.whole && (
          <Notice>{say.cancelled(state.files.length + state.unread.length)}</Notice>
        )}
        {state.kind === 'read' && state.files.length === 0 && (
          <Notice urgent>{say.noneRead}</Notice>
        )}
      </div>
      {state.kind === 'read' && matching && (
        <Outcome
          log={log}
          access={access}
          desk={desk}
          matching={matching}
          files={state.files}
          unread={state.unread}
        />
      )}
    </Screen>
  );
}

interface OutcomeProps extends OpenedLog {
  readonly desk: PictureDesk;
  readonly matching: Matching;
  readonly files: readonly CameraFile[];
  readonly unread: Extract<ReturnType<PictureDesk['state']>, { kind: 'read' }>['unread'];
}

/** What was found: in one glance, then what is to be decided, then each frame and file. */
function Outcome({ log, access, desk, matching, files, unread }: OutcomeProps) {
  const { navigation } = useApp();
  const words = usePictureWords();
  const { pictures: say } = words;
  const { frames, left, asks, clocks } = matching;
  const state = log.journal.state.value;
  const matched = frames.filter(({ file, made }) => file !== null || state.files.get(made)).length;
  const lines = [
    say.matched(matched, frames.length),
    asks.length > 0 && say.inDoubt(asks.length),
    matched < frames.length && say.without(frames.length - matched),
    left.length > 0 && say.left(left.length),
    unread.length > 0 && say.unread(unread.length),
  ].filter((line) => line !== false);
  return (
    <>
      <Section title={say.outcome}>
        <div role="status">
          <ul class="log-notes">
            {lines.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </div>
        <div>
          <Row
            title={words.log.beside}
            note={words.log.besideInShort}
            onPress={() => navigation.go('log', log.journal.outing, BESIDE)}
          />
        </div>
      </Section>
      {asks.length > 0 && (
        <Section title={say.decide}>
          {asks.map((ask) => (
            <AskedOf
              key={keyOf(ask)}
              ask={ask}
              log={log}
              matching={matching}
              files={files}
              onDecide={desk.decide}
            />
          ))}
        </Section>
      )}
      {clocks.length > 0 && (
        <Section title={say.clocks}>
          <ClockLines clocks={clocks} gear={state.gear} />
        </Section>
      )}
      <FramesAndFiles log={log} access={access} desk={desk} matching={matching} files={files} />
      {left.length > 0 && (
        <Section title={say.leftTitle}>
          <dl class="log-facts">
            {left.map(({ file, kind }) => (
              <div key={file}>
                <dt>{files[file]?.name}</dt>
                <dd>{say.leftKind[kind]}</dd>
              </div>
            ))}
          </dl>
        </Section>
      )}
      {unread.length > 0 && (
        <Section title={say.unreadTitle}>
          <dl class="log-facts">
            {unread.map(({ name, why }, index) => (
              <div key={index}>
                <dt>{name}</dt>
                <dd>{say.why[why]}</dd>
              </div>
            ))}
          </dl>
        </Section>
      )}
    </>
  );
}

const keyOf = (ask: Ask): string =>
  ask.ask === 'which-rig'
    ? `rig ${ask.group}`
    : ask.ask === 'which-clock'
      ? `clock ${ask.rig}`
      : `file ${ask.made}`;

interface AcceptProps extends Pick<OpenedLog, 'log'> {
  readonly desk: PictureDesk;
  readonly matching: Matching;
}

/** One act writes all that is sure or decided; where that is written already there is nothing to do. */
function Accept({ log, desk, matching }: AcceptProps) {
  const app = useApp();
  const { log: logWords, pictures: say } = usePictureWords();
  const [answer, setAnswer] = useState<'accepted' | 'refused' | null>(null);
  const ready = desk.ready(log);
  const last = app.log.undoable.value;
  const accept = async () => {
    const served = await desk.accept(log);
    setAnswer(served.how === 'refused' ? 'refused' : 'accepted');
  };
  return (
    <>
      {answer === 'refused' && <Notice urgent>{say.refused}</Notice>}
      {answer === 'accepted' && ready === 0 && <p role="status">{say.accepted}</p>}
      {last?.kind === 'files-matched' && (
        <Button
          onPress={() => {
            setAnswer(null);
            void app.log.undo();
          }}
        >
          {logWords.undo[last.kind]}
        </Button>
      )}
      {ready > 0 && (
        <Button rank="main" onPress={() => void accept()}>
          {matching.asks.length > 0 || ready > 0 ? say.accept(ready) : say.acceptClocks}
        </Button>
      )}
    </>
  );
}
