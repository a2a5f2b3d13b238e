import type { Step } from '../../../outing/step.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { RigName } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** Focus is in doubt: asked for only then. */
export function FocusStep({ step }: { readonly step: Extract<Step, { kind: 'focus' }> }) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  return (
    <StepFrame
      title={words.step.focus}
      frame={state.queue[0] ?? null}
      act={
        <Button
          rank="act"
          onPress={() => void tap({ tap: 'tick', rig: step.rig, item: 'focus-fixed', done: true })}
        >
          {words.focus.act}
        </Button>
      }
    >
      <p class="lead">
        <RigName gear={state.gear} rig={step.rig} />
      </p>
      <p>{words.focus.why[step.why]}</p>
      <p>{words.focus.how}</p>
    </StepFrame>
  );
}
