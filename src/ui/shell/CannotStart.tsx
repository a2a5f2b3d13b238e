import type { StoreFault } from '../../app/saving.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import '../theme/base.css';
import { useWords } from '../words/words.ts';
import './FirstStart.css';

interface Props {
  /** What the storage refused; else the words of a mistake of our own, for a report. */
  readonly why: StoreFault | string;
  readonly onRetry: () => void;
}

/** All there is when the app cannot start: why, and the way to try again. */
export function CannotStart({ why, onRetry }: Props) {
  const { shell } = useWords();
  const ours = typeof why === 'string';
  return (
    <main class="first-start">
      <h1>{shell.appName}</h1>
      <Notice urgent>{ours ? shell.cannotStart : shell.cannotOpen[why.kind]}</Notice>
      {ours && <p>{why}</p>}
      <Button rank="main" onPress={onRetry}>
        {shell.tryAgain}
      </Button>
      {ours && <a href="./?newest">{shell.openNewest}</a>}
    </main>
  );
}
