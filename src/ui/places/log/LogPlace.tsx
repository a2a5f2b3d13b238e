import { useEffect, useLayoutEffect } from 'preact/hooks';
import type { Opened } from '../../../app/log.ts';
import type { OutingId } from '../../../outing/ids.ts';
import { Button } from '../../parts/Button.tsx';
import { EmptyHint } from '../../parts/EmptyHint.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { Split } from '../../parts/Split.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { ExportScreen } from './ExportScreen.tsx';
import { FilesScreen } from './FilesScreen.tsx';
import { FrameScreen } from './FrameScreen.tsx';
import { LedgerScreen } from './LedgerScreen.tsx';
import './log.css';
import { OutingList } from './OutingList.tsx';
import { OutingScreen } from './OutingScreen.tsx';
import { PairScreen } from './PairScreen.tsx';

/** The Log place: the outings; then the frames of one, with a frame, the ledger or the export beside. */
export function LogPlace() {
  const { navigation, log } = useApp();
  const { log: words } = useWords();
  const [first, ...detail] = navigation.at.value.path;
  const outing = first === undefined || first === FILES ? null : (first as OutingId);
  useLayoutEffect(() => log.show(outing), [log, outing]);
  useEffect(() => () => log.show(null), [log]);
  if (outing === null) {
    return (
      <Split
        list={<OutingList filesOpen={first === FILES} />}
        detail={first === FILES ? <FilesScreen /> : null}
        hint={words.chooseHint}
      />
    );
  }
  const opened = log.opened.value;
  if (opened?.how !== 'open') return <NotOpen opened={opened} />;
  const shared = { log: opened.log, readOnly: opened.readOnly };
  return (
    <Split
      list={<OutingScreen key={outing} {...shared} detail={detail} />}
      detail={<Detail {...shared} detail={detail} />}
      hint={words.openHint}
    />
  );
}

/** The path under which backup and restore stand; no outing has such an id. */
const FILES = 'files';

/** What every screen of an opened outing is given. */
export type OpenedLog = Pick<Extract<Opened, { how: 'open' }>, 'log' | 'readOnly'>;

function Detail({ detail, ...shared }: OpenedLog & { readonly detail: readonly string[] }) {
  const [what, id, rig] = detail;
  if (what === 'frame' && id !== undefined) return <FrameScreen key={id} {...shared} id={id} />;
  if (what === 'export') return <ExportScreen {...shared} />;
  if (what !== 'ledger') return null;
  return id === undefined || rig === undefined ? (
    <LedgerScreen {...shared} />
  ) : (
    <PairScreen key={`${id} ${rig}`} {...shared} set={id} other={rig} />
  );
}

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
