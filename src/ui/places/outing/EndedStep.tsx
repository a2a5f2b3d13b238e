import { Button } from '../../parts/Button.tsx';
import { Screen } from '../../parts/Screen.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useWords } from '../../words/words.ts';
import { UndoButton } from './SideActs.tsx';
import { useRun } from './useRun.ts';

/** The evening is over: the log should leave the phone now. */
export function EndedStep() {
  const { navigation } = useApp();
  const { state, desk } = useRun();
  const { outing: words } = useWords();
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
          <Button rank="act" onPress={() => navigation.go('log', state.outing)}>
            {words.ended.toLog}
          </Button>
        </div>
      }
    >
      <p class="lead">{words.ended.lead(state.made.length)}</p>
      <p>{words.ended.export}</p>
    </Screen>
  );
}
