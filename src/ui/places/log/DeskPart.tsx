import { useApp } from '../../shell/useApp.ts';
import { FilesScreen } from './FilesScreen.tsx';
import { FrameScreen } from './FrameScreen.tsx';
import { LedgerScreen } from './LedgerScreen.tsx';
import { PairScreen } from './PairScreen.tsx';
import { FILES } from './paths.ts';

/** What of the Log is for the desk and not for the field: it loads later than the first script. */
export function DeskPart() {
  const { log, navigation } = useApp();
  const [first, what, id, other] = navigation.at.value.path;
  if (first === FILES) return <FilesScreen />;
  const opened = log.opened.value;
  if (opened?.how !== 'open' || what === undefined) return null;
  if (what === 'frame' && id !== undefined) return <FrameScreen key={id} {...opened} id={id} />;
  return id === undefined || other === undefined ? (
    <LedgerScreen log={opened.log} />
  ) : (
    <PairScreen key={`${id} ${other}`} log={opened.log} set={id} other={other} />
  );
}
