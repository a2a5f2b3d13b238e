import { assemble } from '../../../gear/rig.ts';
import type { Step } from '../../../outing/step.ts';
import type { PlannedFrame } from '../../../plan/frame.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { Dials } from './Dials.tsx';
import { timeText } from './marks.ts';
import { RigName } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { useRun } from './useRun.ts';

/** Ready to release: one tap starts the exposure, or says that a short frame was taken. */
export function ExposeStep({ step }: { readonly step: Extract<Step, { kind: 'expose' }> }) {
  const { state, tap } = useRun();
  const words = useWords();
  const { expose } = words.outing;
  const [first] = step.frames;
  if (!first) return null;
  const single = step.frames.length === 1;
  return (
    <StepFrame
      title={words.outing.step.expose}
      frame={first}
      others={
        step.short && (
          <Button
            field
            onPress={() => void tap({ tap: 'taken', frame: first.key, otherwise: true })}
          >
            {expose.takenOtherwise}
          </Button>
        )
      }
      act={
        step.short ? (
          <Button rank="act" onPress={() => void tap({ tap: 'taken', frame: first.key })}>
            {expose.taken}
          </Button>
        ) : (
          <Button rank="act" onPress={() => void tap({ tap: 'start', frame: first.key })}>
            {single ? expose.start(timeText(words, first.settings.time)) : expose.startAll}
          </Button>
        )
      }
    >
      {step.frames.map((frame) => (
        <div class="to-expose" key={frame.key}>
          {!single && (
            <p class="lead">
              <RigName gear={state.gear} rig={frame.rig} />
            </p>
          )}
          <Dials settings={frame.settings} small={!single} />
          <How frame={frame} short={step.short} />
        </div>
      ))}
    </StepFrame>
  );
}

/** How this body is released for this frame. */
function How({ frame, short }: { readonly frame: PlannedFrame; readonly short: boolean }) {
  const { state } = useRun();
  const { outing: words, format } = useWords();
  const body = assemble(state.gear, frame.rig)?.body;
  if (short) return <p>{words.expose.takenHint}</p>;
  const timer = body?.selfTimer.usedS ?? null;
  return (
    <>
      <p>
        {timer === null
          ? words.expose.startHintNoTimer
          : words.expose.startHint(format.timeMark(format.plain(timer)))}
      </p>
      {frame.settings.time.kind === 'bulb' && body && body.bulb.kind !== 'none' && (
        <p>{words.expose.bulb[body.bulb.kind]}</p>
      )}
    </>
  );
}
