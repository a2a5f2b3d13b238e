import { useEffect, useLayoutEffect } from 'preact/hooks';
import type { Opened } from '../../../app/log.ts';
import type { OutingId } from '../../../outing/ids.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Split } from '../../parts/Split.tsx';
import { laterScreen } from '../../shell/later.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { ExportScreen } from './ExportScreen.tsx';
import './log.css';
import { OutingList } from './OutingList.tsx';
import { OutingScreen } from './OutingScreen.tsx';
import { FILES } from './paths.ts';

const desk = laterScreen('log', async () => (await import('./DeskPart.tsx')).DeskPart);

/** The Log place: the outings; then the frames of one, with a frame, the ledger or the export beside. */
export function LogPlace() {
  const { navigation, log } = useApp();
  const { log: words } = useWords();
  const [first, ...detail] = navigation.at.value.path;
  const outing = first === undefined || first === FILES ? null : (first as OutingId);
  useLayoutEffect(() => log.show(outing), [log, outing]);
  useEffect(() => {
    desk.fetch();
    return () => log.show(null);
  }, [log]);
  if (outing === null) {
    return (
      <Split
        list={<OutingList filesOpen={first === FILES} />}
        detail={first === FILES ? <desk.Content /> : null}
        hint={words.chooseHint}
      />
    );
  }
  const opened = log.opened.value;
  if (opened?.how !== 'open') return <NotOpen opened={opened} />;
  return (
    <Split
      list={<OutingScreen key={outing} log={opened.log} access={opened.access} detail={detail} />}
      detail={
        detail[0] === undefined ? null : detail[0] === 'export' ? (
          <ExportScreen log={opened.log} />
        ) : (
          <desk.Content />
        )
      }
      hint={words.openHint}
    />
  );
}

/** What every screen of an opened outing is given. */
export type OpenedLog = Pick<Extract<Opened, { how: 'open' }>, 'log' | 'access'>;

function NotOpen({ opened }: { readonly opened: Opened | null }) {
  const { log } = useApp();
  const { log: words } = useWords();
  return (
    <Screen inner title={words.title}>
      {opened?.how === 'missing' ? (
        <EmptyHint>{words.missing}</EmptyHint>
      ) : opened?.how === 'failed' ? (
        <Notice urgent acts={<Button onPress={log.reread}>{words.tryAgain}</Button>}>
          {words.unread(words.why[opened.fault.kind])}
        </Notice>
      ) : (
        <p role="status">{words.looking}</p>
      )}
    </Screen>
  );
}
