import { useEffect } from 'preact/hooks';
import type { OutingLine } from '../../../app/log.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { spanWords } from './sentences.ts';

/** The outings of this device, the newest first, and the way to its files. */
export function OutingList({ filesOpen }: { readonly filesOpen: boolean }) {
  const { log, navigation } = useApp();
  const { log: words } = useWords();
  useEffect(() => void log.refresh(), [log]);
  const outings = log.outings.value;
  const fault = log.fault.value;
  return (
    <Screen title={words.title}>
      {fault && (
        <Notice urgent acts={<Button onPress={() => void log.refresh()}>{words.tryAgain}</Button>}>
          {words.unread(words.why[fault.kind])}
        </Notice>
      )}
      {outings === null ? (
        !fault && <p role="status">{words.looking}</p>
      ) : outings.length === 0 ? (
        <EmptyHint acts={<Button onPress={() => navigation.visit('plan')}>{words.toPlan}</Button>}>
          {words.none}
        </EmptyHint>
      ) : (
        <ul>
          {outings.map((line) => (
            <li key={line.outing}>
              <OutingRow line={line} />
            </li>
          ))}
        </ul>
      )}
      <div>
        <Row
          title={words.files}
          note={words.filesInShort}
          current={filesOpen}
          onPress={() => navigation.go('log', 'files')}
        />
      </div>
    </Screen>
  );
}

function OutingRow({ line }: { readonly line: OutingLine }) {
  const { files, navigation } = useApp();
  const words = useWords();
  const { log } = words;
  const about = [
    log.frames(line.frames),
    line.ended === null ? log.underWay : null,
    line.ended && !line.invented && files.leftAt(line) === null ? log.notLeft : null,
  ];
  return (
    <Row
      title={line.name}
      tag={line.invented && <InventedTag />}
      note={
        <>
          {spanWords(words, line)}
          <br />
          {about.filter(Boolean).join(' · ')}
        </>
      }
      onPress={() => navigation.go('log', line.outing)}
    />
  );
}
