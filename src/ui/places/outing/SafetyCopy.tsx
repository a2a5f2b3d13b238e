import { useState } from 'preact/hooks';
import type { Prepared } from '../../../app/files.ts';
import { type SafetyDesk, safetyDesk } from '../../../app/safetyCopy.ts';
import { Button } from '../../parts/Button.tsx';
import { GiveFile } from '../../parts/GiveFile.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Section } from '../../parts/Section.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useSafetyCopyWords } from '../../words/safetyCopy.ts';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

const useSafetyDesk = (): SafetyDesk => safetyDesk(useApp().desks.safety);

/** Where copies of the journal go after each set; chosen by daylight, as the system's sheets are bright. */
export function SafetySheet() {
  const safety = useSafetyDesk();
  const say = useSafetyCopyWords();
  const copy = safety.copy.value;
  return (
    <Section title={say.copy}>
      {safety.choosesFiles ? (
        <>
          <p>{copy.way === 'file' ? say.toFile(copy.name) : say.fileHint}</p>
          <Button field onPress={() => void safety.chooseFile()}>
            {copy.way === 'file' ? say.chooseOther : say.choose}
          </Button>
        </>
      ) : (
        <Switch
          label={say.offer}
          hint={say.offerHint}
          on={copy.way === 'offer'}
          onChange={safety.offer}
        />
      )}
    </Section>
  );
}

/** What became of the last copy, and a copy that waits for a tap. */
export function SafetyNotice() {
  const safety = useSafetyDesk();
  const say = useSafetyCopyWords();
  const { format } = useWords();
  const copy = safety.copy.value;
  if (copy.way === 'off') return null;
  if (copy.way === 'offer') return copy.due ? <Due /> : null;
  switch (copy.state) {
    case 'waits':
      return null;
    case 'failed':
      return (
        <Notice
          urgent
          acts={<Button onPress={() => void safety.chooseFile()}>{say.choose}</Button>}
        >
          {say.failed}
        </Notice>
      );
    case 'asks':
      return (
        <Notice acts={<Button onPress={() => void safety.goOn()}>{say.goOn}</Button>}>
          {say.asks}
        </Notice>
      );
    default: {
      const { wallMs, offsetMin } = copy.state.written;
      return <p role="status">{say.copied(format.time(wallMs, offsetMin))}</p>;
    }
  }
}

/** A second tap, in the sheet, hands it on, for only a fresh one may share. */
function Due() {
  const { files } = useApp();
  const safety = useSafetyDesk();
  const { state } = useRun();
  const say = useSafetyCopyWords();
  const { log } = useWords();
  const [made, setMade] = useState<Prepared | null>(null);
  const prepare = async () =>
    setMade(await files.prepare({ what: 'journal', outing: state.outing }));
  return (
    <>
      <Notice
        acts={
          <>
            <Button onPress={() => void prepare()}>{say.handOn}</Button>
            <Button rank="quiet" onPress={safety.settle}>
              {say.notNow}
            </Button>
          </>
        }
      >
        {made?.how === 'store' ? log.notReady(log.why[made.fault.kind]) : say.due}
      </Notice>
      {made?.how === 'ready' && (
        <GiveFile title={say.copy} offer={made.offer} onClose={safety.settle} />
      )}
    </>
  );
}
