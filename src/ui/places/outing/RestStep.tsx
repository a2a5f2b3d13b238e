import type { RigId } from '../../../gear/ids.ts';
import type { RunState } from '../../../outing/state.ts';
import type { Step } from '../../../outing/step.ts';
import { kindOf } from '../../../outing/together.ts';
import { duration } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { Count } from './Timer.tsx';
import { useRun } from './useRun.ts';

/** A sensor cools, by the rule of thumb or as its set asks; it can be skipped. */
export function RestStep({ step }: { readonly step: Extract<Step, { kind: 'rest' }> }) {
  const { state, tap } = useRun();
  const { outing: words, format } = useWords();
  const { rig, leftS, owedS, why } = step.resting;
  // How a body cools is measured with it switched off; whether it was is said at a tap.
  const isSeries = kindOf(state, step.next.set) === 'capped-series';
  const name = rigText(state.gear, rig);
  return (
    <StepFrame
      title={words.step.rest}
      frame={step.next}
      others={
        isSeries &&
        !isOff(state, rig) && (
          <Button field onPress={() => void tap({ tap: 'powered-off', rig })}>
            {words.rest.isOff}
          </Button>
        )
      }
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'skip-rest', rig })}>
          {words.rest.skip}
        </Button>
      }
    >
      <div class="timer">
        <Count text={format.duration(duration(Math.ceil(leftS)))} />
        <p>{isSeries ? words.rest.off(name) : words.rest.ask(name)}</p>
      </div>
      <p>{words.rest[why === 'asked' ? 'asked' : 'rule'](format.duration(owedS))}</p>
    </StepFrame>
  );
}

/** Whether a rig was said to be switched off since its last exposure. */
const isOff = ({ acts }: RunState, of: RigId): boolean =>
  acts.findLast(({ rig, what }) => rig === of && (what === 'exposed' || what === 'switched-off'))
    ?.what === 'switched-off';
