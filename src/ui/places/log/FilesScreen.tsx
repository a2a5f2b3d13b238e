import { useState } from 'preact/hooks';
import type { Bringing, Looked, Taken } from '../../../app/files.ts';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Section } from '../../parts/Section.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { TakeFile } from '../../parts/TakeFile.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useLogDeskWords } from '../../words/logDesk.ts';
import { LeaveButton } from './LeaveButton.tsx';

/** Everything in one file, and files read back. */
export function FilesScreen() {
  const { files } = useApp();
  const { format, log: say } = useLogDeskWords();
  const left = files.backedUp.value;
  return (
    <Screen inner title={say.files}>
      <Section title={say.backup}>
        <p>{say.backupIs}</p>
        <p>
          {left
            ? say.lastBackup(
                format.date(left.wallMs, left.offsetMin),
                format.time(left.wallMs, left.offsetMin),
              )
            : say.noBackup}
        </p>
        <LeaveButton leaving={{ what: 'backup' }} title={say.backup}>
          {say.makeBackup}
        </LeaveButton>
      </Section>
      <Section title={say.restore}>
        <Restore />
      </Section>
    </Screen>
  );
}

/** A file is read and told; only a second tap takes it in. */
function Restore() {
  const { files } = useApp();
  const { log: say, notTaken } = useLogDeskWords();
  const [state, setState] = useState<Looked | Taken | 'idle' | 'busy'>('idle');
  const after = (work: Promise<Looked | Taken>) => {
    setState('busy');
    void work.then(setState);
  };
  const answer = typeof state === 'string' ? null : state;
  return (
    <>
      <p>{say.restoreIs}</p>
      <div class="acts">
        <TakeFile label={say.chooseFile} onFile={(file) => after(files.look(file))} />
      </div>
      {state === 'busy' && <p role="status">{say.readingFile}</p>}
      {answer?.how === 'fits' && (
        <Brought
          brings={answer.brings}
          onTake={() => after(files.take(answer.brings))}
          onLeave={() => setState('idle')}
        />
      )}
      {answer && answer.how !== 'fits' && (
        <Notice urgent>{answer.how === 'taken' ? say.taken : notTaken(answer)}</Notice>
      )}
    </>
  );
}

interface BroughtProps {
  readonly brings: Bringing;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

/** What a file would bring in, before anything is written. */
function Brought({ brings, onTake, onLeave }: BroughtProps) {
  const { format, log: say } = useLogDeskWords();
  const { written, outings, bodies, lenses, rigs, plans, sites, copies, deletedHere } = brings;
  const things = (
    [
      ['bodies', bodies],
      ['lenses', lenses],
      ['rigs', rigs],
      ['plans', plans],
      ['sites', sites],
      ['copies', copies],
      ['deletedHere', deletedHere],
    ] as const
  ).flatMap(([what, count]) => (count > 0 ? [say.brings[what](count)] : []));
  const lines = [
    ...outings.map(({ name, begun }) => (begun ? say.brings.outing : say.brings.lines)(name)),
    ...things,
  ];
  const nothing = outings.length + bodies + lenses + rigs + plans + sites === 0;
  return (
    <Sheet
      title={nothing ? say.bringsNothing : say.bringsTitle}
      onClose={onLeave}
      acts={
        <>
          <Button field onPress={onLeave}>
            {nothing ? say.done : say.leaveIt}
          </Button>
          {!nothing && (
            <Button rank="main" field onPress={onTake}>
              {say.takeIn}
            </Button>
          )}
        </>
      }
    >
      {nothing && <p>{say.brings.nothing}</p>}
      {lines.length > 0 && (
        <ul class="log-notes">
          {lines.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      {written && (
        <p class="hint">
          {say.fits(
            format.date(written.wallMs, written.offsetMin),
            format.time(written.wallMs, written.offsetMin),
          )}
        </p>
      )}
    </Sheet>
  );
}
