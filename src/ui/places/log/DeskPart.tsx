import { Screen } from '../../parts/Screen.tsx';
import { later } from '../../shell/later.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { BesideScreen } from './BesideScreen.tsx';
import { FilesScreen } from './FilesScreen.tsx';
import { FrameScreen } from './FrameScreen.tsx';
import { LedgerScreen } from './LedgerScreen.tsx';
import './logDesk.css';
import type { OpenedLog } from './LogPlace.tsx';
import { PairScreen } from './PairScreen.tsx';
import { PicturesScreen } from './PicturesScreen.tsx';
import { BESIDE, FILES, PICTURES } from './paths.ts';

const report = later<Pick<OpenedLog, 'log'>>(
  ({ children }) => {
    const { log: say } = useWords();
    return (
      <Screen inner title={say.title}>
        {children}
      </Screen>
    );
  },
  async () => (await import('./report/ReportScreen.tsx')).ReportScreen,
);

/** What of the Log is for the desk and not for the field: it loads later than the first script. */
export function DeskPart() {
  const { log, navigation } = useApp();
  const [first, what, id, other] = navigation.at.value.path;
  if (first === FILES) return <FilesScreen />;
  const opened = log.opened.value;
  if (opened?.how !== 'open' || what === undefined) return null;
  if (opened.access === 'beginning') return <ReadingOn />;
  if (what === 'frame' && id !== undefined) return <FrameScreen key={id} {...opened} id={id} />;
  if (what === 'report') return <report.Content log={opened.log} />;
  if (what === PICTURES) return <PicturesScreen {...opened} />;
  if (what === BESIDE) return <BesideScreen {...opened} />;
  return id === undefined || other === undefined ? (
    <LedgerScreen log={opened.log} />
  ) : (
    <PairScreen key={`${id} ${other}`} log={opened.log} set={id} other={other} />
  );
}

/** What is said of a whole outing waits until all of it is here. */
function ReadingOn() {
  const { log: say } = useWords();
  return (
    <Screen inner title={say.title}>
      <p role="status">{say.readingRest}</p>
    </Screen>
  );
}
