import type { Step } from '../../../outing/step.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { Dials } from './Dials.tsx';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** What to set, with what must be turned marked. */
export function DialStep({ step }: { readonly step: Extract<Step, { kind: 'dial' }> }) {
  const { tap } = useRun();
  const { outing: words } = useWords();
  return (
    <StepFrame
      title={words.step.dial}
      frame={step.frame}
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'dialled', frame: step.frame.key })}>
          {words.dial.act}
        </Button>
      }
    >
      <Dials settings={step.frame.settings} changed={step.changed} />
    </StepFrame>
  );
}
