import { useState } from 'preact/hooks';
import type { Leaving, Prepared } from '../../../app/files.ts';
import { Button } from '../../parts/Button.tsx';
import { GiveFile } from '../../parts/GiveFile.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';

interface Props {
  readonly leaving: Leaving;
  readonly title: string;
  readonly children: string;
}

/** Makes a file ready; a second tap, in the sheet, hands it on, for only a fresh one may share. */
export function LeaveButton({ leaving, title, children }: Props) {
  const { files } = useApp();
  const { log, shell } = useWords();
  const [state, setState] = useState<Prepared | 'idle' | 'preparing'>('idle');
  const prepare = () => {
    setState('preparing');
    void files.prepare(leaving).then(setState);
  };
  const made = typeof state === 'string' ? null : state;
  return (
    <>
      {made?.how === 'part-missing' && <Notice urgent>{shell.partMissing}</Notice>}
      {made?.how === 'store' && <Notice urgent>{log.notReady(log.why[made.fault.kind])}</Notice>}
      <div class="acts">
        <Button busy={state === 'preparing'} onPress={prepare}>
          {children}
        </Button>
      </div>
      {made?.how === 'ready' && (
        <GiveFile title={title} offer={made.offer} onClose={() => setState('idle')} />
      )}
    </>
  );
}
