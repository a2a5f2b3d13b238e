import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { clockOffer } from './laterClock.ts';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** The list is through; retakes are still one tap away. */
export function ListDoneStep() {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  return (
    <StepFrame
      title={words.step.done}
      frame={null}
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'end' })}>
          {words.done.act}
        </Button>
      }
    >
      <p class="lead">{words.done.made(state.made.length)}</p>
      <p>{words.done.lead}</p>
      <clockOffer.Content />
    </StepFrame>
  );
}
