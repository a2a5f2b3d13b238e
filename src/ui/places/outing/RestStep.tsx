import type { Step } from '../../../outing/step.ts';
import { duration } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { Count } from './Timer.tsx';
import { useRun } from './useRun.ts';

/** A sensor cools: a suggestion by the rule of thumb, which can be skipped. */
export function RestStep({ step }: { readonly step: Extract<Step, { kind: 'rest' }> }) {
  const { state, tap } = useRun();
  const { outing: words, format } = useWords();
  const { rig, leftS, owedS } = step.resting;
  return (
    <StepFrame
      title={words.step.rest}
      frame={step.next}
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'skip-rest', rig })}>
          {words.rest.skip}
        </Button>
      }
    >
      <div class="timer">
        <Count text={format.duration(duration(Math.ceil(leftS)))} />
        <p>{words.rest.ask(rigText(state.gear, rig))}</p>
      </div>
      <p>{words.rest.rule(format.duration(owedS))}</p>
    </StepFrame>
  );
}
