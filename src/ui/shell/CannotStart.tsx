import type { StoreFault } from '../../app/saving.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import '../theme/base.css';
import { useWords } from '../words/words.ts';
import './FirstStart.css';

/** All there is when the storage cannot be opened: why, and the way to try again. */
export function CannotOpen({
  fault,
  onRetry,
}: {
  readonly fault: StoreFault;
  readonly onRetry: () => void;
}) {
  const { shell } = useWords();
  return (
    <main class="first-start">
      <h1>{shell.appName}</h1>
      <Notice urgent>{shell.cannotOpen[fault.kind]}</Notice>
      <Button rank="main" onPress={onRetry}>
        {shell.tryAgain}
      </Button>
    </main>
  );
}
