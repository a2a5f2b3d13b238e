import { Fragment } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { EVERYTHING, isWanted, type LogEntry, type Wanted } from '../../../log/entries.ts';
import type { SetId } from '../../../plan/ids.ts';
import { isCapped } from '../../../plan/plan.ts';
import { Button } from '../../parts/Button.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { InventedTag } from '../../parts/InventedTag.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { later } from '../../shell/later.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { EntryLine } from './EntryLine.tsx';
import type { OpenedLog } from './LogPlace.tsx';
import { BESIDE, PICTURES } from './paths.ts';
import { Said } from './Said.tsx';
import { setWords, spanWords } from './sentences.ts';
import { type Stretch, Windowed } from './Windowed.tsx';

/** To look for something in a long log is for the desk. */
const filter = later(Fragment, async () => (await import('./FilterFields.tsx')).FilterFields);

interface Props extends OpenedLog {
  /** What stands open beside it on a wide screen. */
  readonly detail: readonly string[];
}

/** An outing: where its log leads, and its lines in the order in which they happened. */
export function OutingScreen({ log, access, detail }: Props) {
  const { files, navigation } = useApp();
  const words = useWords();
  const { format, log: say } = words;
  const [wanted, setWanted] = useState<Wanted>(EVERYTHING);
  useEffect(filter.fetch, []);
  const state = log.journal.state.value;
  const { outing, plan, made, endedAt: ended, startedAt: begun } = state;
  const given = [...state.files.values()].filter((file) => file !== null).length;
  const line = { outing, name: plan.name, invented: plan.invented, begun, ended, frames: 0 };
  const left = files.leftAt(line);
  const entries = log.entries.value;
  const shown = entries.filter((entry) => isWanted(entry, wanted));
  const open = (...path: string[]) =>
    (detail.length > 0 ? navigation.replace : navigation.go)('log', outing, ...path);
  const compared = plan.sets.filter(({ kind }) => !isCapped(kind)).length;
  const pairs = compared * Math.max(0, plan.rigs.length - 1);
  return (
    <Screen
      inner
      title={plan.name}
      tag={plan.invented && <InventedTag />}
      foot={ended === null && access === 'full' && <Resume outing={outing} />}
    >
      <div class="log-about">
        <p role="status">{access === 'beginning' ? say.readingRest : spanWords(words, line)}</p>
        <Said log={log} access={access} />
        <div>
          {compared > 0 && (
            <Row
              title={say.ledger}
              note={say.ledgerInShort(pairs, compared)}
              current={detail[0] === 'ledger'}
              onPress={() => open('ledger')}
            />
          )}
          <Row
            title={say.pictures}
            note={say.picturesInShort(given, made.length)}
            current={detail[0] === PICTURES}
            onPress={() => open(PICTURES)}
          />
          {given > 0 && (
            <Row
              title={say.beside}
              note={say.besideInShort}
              current={detail[0] === BESIDE}
              onPress={() => open(BESIDE)}
            />
          )}
          <Row
            title={say.export}
            note={
              left
                ? say.lastLeft(
                    format.date(left.wallMs, begun.offsetMin),
                    format.time(left.wallMs, begun.offsetMin),
                    left.what,
                  )
                : ended && !plan.invented
                  ? say.remind
                  : say.neverLeft
            }
            current={detail[0] === 'export'}
            onPress={() => open('export')}
          />
        </div>
      </div>
      <Section title={say.framesTitle}>
        {entries.length === 0 ? (
          <EmptyHint>{say.noFrames}</EmptyHint>
        ) : (
          <>
            <Disclosure
              label={say.filter}
              stated={
                shown.length === entries.length
                  ? say.filterAll
                  : say.shown(shown.length, entries.length)
              }
            >
              <filter.Content state={state} wanted={wanted} onChange={setWanted} />
            </Disclosure>
            {shown.length === 0 && (
              <EmptyHint
                acts={<Button onPress={() => setWanted(EVERYTHING)}>{say.showAll}</Button>}
              >
                {say.nothingShown}
              </EmptyHint>
            )}
            <Windowed
              key={JSON.stringify(wanted)}
              stretches={stretchesOf(shown)}
              draw={({ items, head }) => (
                <>
                  {head && <h3 class="log-set">{setWords(words, plan, head)}</h3>}
                  <ul>
                    {items.map((entry) => (
                      <li key={keyOf(entry)}>
                        <EntryLine
                          entry={entry}
                          state={state}
                          current={
                            entry.kind === 'frame' &&
                            detail[0] === 'frame' &&
                            detail[1] === entry.frame.id
                          }
                          onPress={(id) => open('frame', id)}
                        />
                      </li>
                    ))}
                  </ul>
                </>
              )}
            />
          </>
        )}
      </Section>
    </Screen>
  );
}

function Resume({ outing }: { readonly outing: OpenedLog['log']['journal']['outing'] }) {
  const { log, navigation } = useApp();
  const { log: say } = useWords();
  const [refused, setRefused] = useState<string | null>(null);
  const resume = async () => {
    const answer = await log.resume(outing);
    if (answer === 'resumed') navigation.visit('outing');
    else setRefused(say.notResumed[answer]);
  };
  return (
    <>
      {refused && <Notice urgent>{refused}</Notice>}
      <Button rank="main" onPress={() => void resume()}>
        {say.resume}
      </Button>
    </>
  );
}

interface SetStretch extends Stretch {
  readonly items: readonly LogEntry[];
  /** The set that begins here; null where it goes on. */
  readonly head: SetId | null;
}

/** Enough lines for more than one screen. */
const MOST_LINES = 20;
const LINE_REM = 5;
const HEAD_REM = 3;

const setOf = (entry: LogEntry): SetId | null =>
  entry.kind === 'frame'
    ? entry.frame.planned.set
    : entry.kind === 'left-out'
      ? (entry.frames[0]?.set ?? null)
      : null;

/** The lines under their sets, cut where a set begins or a stretch grows too long. */
function stretchesOf(entries: readonly LogEntry[]): readonly SetStretch[] {
  const stretches: { head: SetId | null; items: LogEntry[] }[] = [];
  let set: SetId | null = null;
  for (const entry of entries) {
    const begins = setOf(entry) !== null && setOf(entry) !== set;
    set = setOf(entry) ?? set;
    const last = stretches.at(-1);
    if (last && !begins && last.items.length < MOST_LINES) last.items.push(entry);
    else stretches.push({ head: begins ? set : null, items: [entry] });
  }
  return stretches.map(({ head, items }, index) => ({
    key: `${index}`,
    head,
    items,
    rem: items.length * LINE_REM + (head ? HEAD_REM : 0),
  }));
}

const keyOf = (entry: LogEntry): string => {
  switch (entry.kind) {
    case 'frame':
      return entry.frame.id;
    case 'reading':
      return entry.reading.id;
    case 'note':
      return entry.note.id;
    default:
      return `${entry.kind} ${entry.at.session} ${entry.at.monoMs}`;
  }
};
