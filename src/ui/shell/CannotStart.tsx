import { Fragment } from 'preact';
import type { RescueWorld } from '../../app/rescue.ts';
import type { StoreFault } from '../../app/saving.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import '../theme/base.css';
import { useWords } from '../words/words.ts';
import './CannotStart.css';
import { later } from './later.tsx';

/** What is stored, as a file. */
const rescue = later(Fragment, async () => (await import('./Rescue.tsx')).Rescue);

interface Props {
  /** What the storage refused; else the words of a mistake of our own, for a report. */
  readonly why: StoreFault | string;
  readonly onRetry: () => void;
  readonly world: RescueWorld;
}

/** All there is when the app cannot start: why, the way to try again, and what is stored as a file. */
export function CannotStart({ why, onRetry, world }: Props) {
  const { shell } = useWords();
  const ours = typeof why === 'string';
  return (
    <main class="cannot-start">
      <h1>{shell.appName}</h1>
      <Notice urgent>{ours ? shell.cannotStart : shell.cannotOpen[why.kind]}</Notice>
      {ours && <p>{why}</p>}
      <Button rank="main" onPress={onRetry}>
        {shell.tryAgain}
      </Button>
      <rescue.Content world={world} />
      {(ours || why.kind === 'newer') && <a href="./?newest">{shell.openNewest}</a>}
    </main>
  );
}
