import type { Step } from '../../../outing/step.ts';
import { duration } from '../../../science/units.ts';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { Count } from './Timer.tsx';
import { useRun } from './useRun.ts';

/** The body is at its own dark frame and does not answer the release. */
export function BusyStep({ step }: { readonly step: Extract<Step, { kind: 'busy' }> }) {
  const { state } = useRun();
  const { outing: words, format } = useWords();
  return (
    <StepFrame
      title={words.step.busy}
      frame={step.next}
      act={<p class="act-place">{words.busy.hint}</p>}
    >
      <div class="timer">
        <Count text={format.duration(duration(Math.ceil(step.leftS)))} />
        <p>{words.busy.lead(rigText(state.gear, step.rig))}</p>
      </div>
    </StepFrame>
  );
}
