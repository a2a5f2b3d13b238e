import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** Nothing is asked until the hand comes back. */
export function PausedStep() {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  return (
    <StepFrame
      title={words.step.paused}
      frame={state.queue[0] ?? null}
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'resume' })}>
          {words.paused.act}
        </Button>
      }
    >
      <p>{words.paused.lead}</p>
    </StepFrame>
  );
}
