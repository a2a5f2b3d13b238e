import { assemble } from '../../../gear/rig.ts';
import type { Resting } from '../../../outing/rest.ts';
import type { Step } from '../../../outing/step.ts';
import { kindOf } from '../../../outing/together.ts';
import { duration, type Seconds, type Stops } from '../../../science/units.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords, type Words } from '../../words/words.ts';
import { thenWords } from './RestReminder.tsx';
import { rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { Count } from './Timer.tsx';
import { useRun } from './useRun.ts';

/** A sensor cools: why, what it wins and what it costs. It can be skipped. */
export function RestStep({ step }: { readonly step: Extract<Step, { kind: 'rest' }> }) {
  const { state, tap } = useRun();
  const words = useWords();
  const { outing, format } = words;
  const { resting } = step;
  const { rig, leftS, owedS, mode, why } = resting;
  const isSeries = kindOf(state, step.next.set) === 'capped-series';
  const isOff = state.acts.findLast((act) => act.rig === rig)?.what === 'switched-off';
  const then = thenWords(words, resting, (of) => assemble(state.gear, of)?.rig.letter ?? '');
  return (
    <StepFrame
      title={outing.step.rest}
      frame={step.next}
      others={
        isSeries &&
        !isOff && (
          <Button field onPress={() => void tap({ tap: 'powered-off', rig })}>
            {outing.rest.isOff}
          </Button>
        )
      }
      act={
        <Button rank="act" onPress={() => void tap({ tap: 'skip-rest', rig })}>
          {outing.rest.skip}
        </Button>
      }
    >
      <div class="timer">
        <Count text={format.duration(duration(Math.ceil(leftS)))} />
        <p>{outing.rest.ask[isSeries && !isOff ? 'series' : mode](rigText(state.gear, rig))}</p>
      </div>
      {!isSeries && <p>{worthWords(words, resting)}</p>}
      <p>
        {outing.rest.why[why](format.duration(owedS))} {isSeries && outing.rest.switchOn}
        {why === 'limit' && resting.isSuggestion && rangeWords(words, resting)}
      </p>
      {then && <p>{outing.rest.standsThen(then)}</p>}
    </StepFrame>
  );
}

/** What it wins and what it costs, each in its own unit, and then in one. */
function worthWords({ outing, format }: Words, resting: Resting): string {
  const { without, with: rested, fade, worth } = resting;
  const fine = (stops: number): string => format.stopsFine(stops as Stops);
  const wins = outing.rest.wins(fine(without), fine(rested));
  if (fade === null || !worth) return `${wins} ${outing.rest.costUnknown}`;
  const inLight = outing.rest.worth[worth.pays ? 'more' : 'less'](
    format.number(worth.wins, 2),
    format.number(worth.costs, 2),
  );
  return `${wins} ${outing.rest.costs(fine(fade))} ${inLight}`;
}

/** How long it would have to be over all that is known: a suggestion. */
function rangeWords({ outing, format }: Words, { range }: Resting): string {
  const written = (s: Seconds): string => format.duration(s);
  if (!range || range.least === null) return outing.rest.suggestion(null);
  return outing.rest.suggestion(
    range.most === null
      ? outing.rest.orNone(written(range.least))
      : outing.heat.between(written(range.least), written(range.most)),
  );
}
