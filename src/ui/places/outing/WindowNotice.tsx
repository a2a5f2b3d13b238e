import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

/** Which window has the outing, and the way to have it here. Nothing where nobody else wants it. */
export function WindowNotice() {
  const { desk } = useRun();
  const { safety: say } = useWords();
  const ownership = desk.ownership.value;
  const state = desk.handOver.value;
  if (ownership === 'unsupported') return <Notice>{say.apart}</Notice>;
  if (ownership === 'owner')
    return state === 'none' ? null : <Notice>{say.handOver[state]}</Notice>;
  return (
    <Notice
      urgent
      acts={
        <Button field busy={state === 'asking'} onPress={() => void desk.takeOver()}>
          {say.takeOver}
        </Button>
      }
    >
      {say.handOver[state]}
    </Notice>
  );
}
