import { Row } from '../../parts/Row.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { later } from '../../shell/later.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { LeaveButton } from './LeaveButton.tsx';
import type { OpenedLog } from './LogPlace.tsx';

/** What is for other programs and for paper comes later than the first script. */
const more = later<Pick<OpenedLog, 'log'>>(
  ({ children }) => <div>{children}</div>,
  async () => (await import('./MoreExports.tsx')).MoreExports,
);

/** One outing's log as files: what leaves, and in which form. */
export function ExportScreen({ log }: Pick<OpenedLog, 'log'>) {
  const { navigation } = useApp();
  const { log: say } = useWords();
  const { outing } = log.journal;
  return (
    <Screen inner title={say.export}>
      <p>{say.exportHint}</p>
      <Section title={say.table}>
        <p>{say.tableIs}</p>
        <LeaveButton leaving={{ what: 'table', outing }} title={say.table}>
          {say.makeTable}
        </LeaveButton>
      </Section>
      <Section title={say.journal}>
        <p>{say.journalIs}</p>
        <LeaveButton leaving={{ what: 'journal', outing }} title={say.journal}>
          {say.makeJournal}
        </LeaveButton>
      </Section>
      <more.Content log={log} />
      <div>
        <Row
          title={say.files}
          note={say.filesInShort}
          onPress={() => navigation.go('log', 'files')}
        />
      </div>
    </Screen>
  );
}
