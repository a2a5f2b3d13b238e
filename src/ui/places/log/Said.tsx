import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useWords } from '../../words/words.ts';
import type { OpenedLog } from './LogPlace.tsx';

/** What must be said over the screens of an outing's log: it can only be read, or is not saved. */
export function Said({ log, access }: OpenedLog) {
  const { log: say, outing } = useWords();
  const { journal } = log;
  const fault = journal.fault.value;
  return (
    <>
      {access === 'elsewhere' && <Notice>{say.readOnly}</Notice>}
      {fault && (
        <Notice
          urgent
          acts={<Button onPress={() => void journal.retry()}>{outing.saveAgain}</Button>}
        >
          {outing.notSaved[fault.kind]}
        </Notice>
      )}
    </>
  );
}
