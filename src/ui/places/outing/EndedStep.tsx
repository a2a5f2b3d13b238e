import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { clockOffer } from './laterClock.ts';
import { UndoButton } from './SideActs.tsx';
import { useRun } from './useRun.ts';

/** The evening is over: the log should leave the phone now, and is asked for until it has once. */
export function EndedStep() {
  const { files, navigation } = useApp();
  const { state, desk } = useRun();
  const { outing: words, log, format } = useWords();
  const { outing, endedAt: ended, startedAt } = state;
  const left = files.leftAt({ outing, ended });
  const toLog = (rank: 'act' | 'plain') => (
    <Button rank={rank} field onPress={() => navigation.go('log', outing)}>
      {words.ended.toLog}
    </Button>
  );
  const toExport = (
    <Button rank="act" onPress={() => navigation.go('log', outing, 'export')}>
      {log.export}
    </Button>
  );
  return (
    <Screen
      title={words.step.ended}
      foot={
        <div class="step-foot">
          <div class="side-acts">
            <UndoButton />
            <Button field onPress={() => desk.leave()}>
              {words.ended.leave}
            </Button>
          </div>
          {left ? toLog('act') : toExport}
        </div>
      }
    >
      <p class="lead">{words.ended.lead(state.made.length)}</p>
      {left ? (
        <p role="status">
          {log.lastLeft(
            format.date(left.wallMs, startedAt.offsetMin),
            format.time(left.wallMs, startedAt.offsetMin),
            left.what,
          )}
        </p>
      ) : (
        <Notice urgent acts={toLog('plain')}>
          {words.ended.export}
        </Notice>
      )}
      <clockOffer.Content />
    </Screen>
  );
}
