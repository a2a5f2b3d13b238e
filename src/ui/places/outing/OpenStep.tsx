import { useState } from 'preact/hooks';
import { assemble } from '../../../gear/rig.ts';
import type { MadeId } from '../../../outing/ids.ts';
import type { OpenFrame, Step } from '../../../outing/step.ts';
import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';
import { DarkScreen } from './DarkScreen.tsx';
import { Dials } from './Dials.tsx';
import { OtherwiseSheet } from './OtherwiseSheet.tsx';
import { RigName, rigText } from './RigName.tsx';
import { StepFrame } from './StepFrame.tsx';
import { Timer } from './Timer.tsx';
import { useRun } from './useRun.ts';

/** Exposures under way and frames that wait for their record. */
export function OpenStep({ step }: { readonly step: Extract<Step, { kind: 'open' }> }) {
  const { state } = useRun();
  const { outing: words } = useWords();
  const [otherwise, setOtherwise] = useState<MadeId | null>(null);
  const inHand = mostUrgent(step.frames);
  const changing = step.frames.find(({ frame }) => frame.id === otherwise);
  if (!inHand) return null;
  const { frame, phase } = inHand;
  const several = step.frames.length > 1;
  const toRecord = phase.phase === 'to-record';
  return (
    <>
      <StepFrame
        title={toRecord ? words.step.record : words.step.open}
        frame={frame.planned}
        attempt={frame.attempt}
        others={<Others open={inHand} onOtherwise={() => setOtherwise(frame.id)} />}
        act={<Act open={inHand} several={several} />}
      >
        {several ? (
          <ul class="timers">
            {step.frames.map((open) => (
              <li key={open.frame.id}>
                <RigName gear={state.gear} rig={open.frame.planned.rig} />
                <Timer open={open} small />
                {open.phase.phase === 'to-record' && (
                  <Dials settings={open.frame.planned.settings} small />
                )}
              </li>
            ))}
          </ul>
        ) : (
          <Timer open={inHand} />
        )}
        {!several && toRecord && <Dials settings={frame.planned.settings} small />}
      </StepFrame>
      <DarkScreen frames={step.frames} />
      {changing && <OtherwiseSheet frame={changing.frame} onClose={() => setOtherwise(null)} />}
    </>
  );
}

/** The frame that needs the hand first: what waits for a record, then a held one, then what ends soonest. */
function mostUrgent(frames: readonly OpenFrame[]): OpenFrame | undefined {
  const rank = ({ phase }: OpenFrame): number => {
    switch (phase.phase) {
      case 'to-record':
        return Number.NEGATIVE_INFINITY;
      case 'unknown':
        return -1e9;
      case 'held-open':
      case 'running':
        return phase.leftS;
      case 'lead-in':
        return phase.leftS + 1e6;
      case 'recorded':
        return Number.POSITIVE_INFINITY;
      default:
        return phase satisfies never;
    }
  };
  return frames.toSorted((a, b) => rank(a) - rank(b))[0];
}

function Act({
  open: { frame, phase },
  several,
}: {
  readonly open: OpenFrame;
  readonly several: boolean;
}) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const name = several ? `${rigText(state.gear, frame.planned.rig)}: ` : '';
  const bulb = frame.planned.settings.time.kind === 'bulb';
  const made = frame.id;
  if (phase.phase === 'to-record') {
    return (
      <Button rank="act" onPress={() => void tap({ tap: 'record', made })}>
        {name}
        {words.record.act}
      </Button>
    );
  }
  if (phase.phase === 'held-open' || (phase.phase === 'unknown' && bulb)) {
    return (
      <Button rank="act" onPress={() => void tap({ tap: 'closed', made })}>
        {name}
        {words.open.closed}
      </Button>
    );
  }
  if (phase.phase === 'unknown') {
    return (
      <Button rank="act" onPress={() => void tap({ tap: 'record', made })}>
        {name}
        {words.record.act}
      </Button>
    );
  }
  return <p class="act-place">{words.open.waiting}</p>;
}

function Others({
  open: { frame, phase },
  onOtherwise,
}: {
  readonly open: OpenFrame;
  readonly onOtherwise: () => void;
}) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const made = frame.id;
  const body = assemble(state.gear, frame.planned.rig)?.body;
  switch (phase.phase) {
    case 'to-record':
      return (
        <Button field onPress={onOtherwise}>
          {words.record.changed}
        </Button>
      );
    case 'held-open':
      return (
        <>
          {body && body.bulb.kind !== 'none' && <p>{words.open.closedHint[body.bulb.kind]}</p>}
          <Button field onPress={() => void tap({ tap: 'closed-otherwise', made })}>
            {words.open.closedOtherwise}
          </Button>
        </>
      );
    case 'running':
      return (
        <Button field onPress={() => void tap({ tap: 'closed-otherwise', made })}>
          {words.open.stopEarly}
        </Button>
      );
    default:
      return null;
  }
}
