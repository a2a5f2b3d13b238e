import { useRef, useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { Row } from '../../parts/Row.tsx';
import { Section } from '../../parts/Section.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useReportWords } from '../../words/report.ts';
import { LeaveButton } from './LeaveButton.tsx';
import type { OpenedLog } from './LogPlace.tsx';

/** The pairs as a table, sidecars for the pictures, and the report. */
export function MoreExports({ log }: Pick<OpenedLog, 'log'>) {
  const { navigation } = useApp();
  const { report: say } = useReportWords();
  const { outing } = log.journal;
  const [existing, setExisting] = useState<readonly string[]>([]);
  return (
    <>
      <Section title={say.pairs}>
        <p>{say.pairsAre}</p>
        <LeaveButton leaving={{ what: 'pairs', outing }} title={say.pairs}>
          {say.makePairs}
        </LeaveButton>
      </Section>
      <Section title={say.sidecars}>
        <p>{say.sidecarsAre}</p>
        <Names onNames={setExisting} />
        <p role="status">{existing.length > 0 && say.namesKnown(existing.length)}</p>
        <LeaveButton leaving={{ what: 'sidecars', outing, existing }} title={say.sidecars}>
          {say.makeSidecars}
        </LeaveButton>
      </Section>
      <div>
        <Row
          title={say.report}
          note={say.reportIs}
          onPress={() => navigation.go('log', outing, 'report')}
        />
      </div>
    </>
  );
}

/** The names in the pictures' folder: only the names are looked at. */
function Names({ onNames }: { readonly onNames: (names: readonly string[]) => void }) {
  const { report: say } = useReportWords();
  const input = useRef<HTMLInputElement>(null);
  return (
    <div>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        aria-label={say.names}
        onChange={({ currentTarget }) =>
          onNames([...(currentTarget.files ?? [])].map(({ name }) => name))
        }
      />
      <Button rank="quiet" onPress={() => input.current?.click()}>
        {say.names}
      </Button>
    </div>
  );
}
