import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { LeaveButton } from '../log/LeaveButton.tsx';

/** What of the outing in hand is not on disk: why, another try, and the journal as a file at once. */
export function NotSavedNotice() {
  const { run } = useApp();
  const { outing: words, safety, log } = useWords();
  const journal = run.journal.value;
  const fault = journal?.fault.value;
  if (!journal || !fault) return null;
  return (
    <Notice
      urgent
      acts={
        <>
          <Button onPress={() => void run.saveAgain()}>{words.saveAgain}</Button>
          <LeaveButton leaving={{ what: 'journal', outing: journal.outing }} title={log.journal}>
            {safety.asFile}
          </LeaveButton>
        </>
      }
    >
      {words.notSaved[fault.kind]} {safety.inMemory(journal.unsaved.value.length)}
    </Notice>
  );
}
