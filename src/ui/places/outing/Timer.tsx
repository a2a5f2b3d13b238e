import type { OpenFrame } from '../../../outing/step.ts';
import { duration } from '../../../science/units.ts';
import { useWords } from '../../words/words.ts';
import { rigText } from './RigName.tsx';
import { useRun } from './useRun.ts';

/** Seconds as a countdown shows them: the second that runs, so that 0:00 is the end. */
const shown = (leftS: number) => duration(Math.max(0, Math.ceil(leftS - 0.05)));

/** A duration in figures for arm's length; a longer one is written a little smaller. */
export const Count = ({ text }: { readonly text: string }) => (
  <p class={text.length > 4 ? 'count long' : 'count'}>{text}</p>
);

/**
 * The countdown of one open frame, in figures for arm's length. A timer is not read out as it runs
 * (its role says so, and again in words for readers that forget it): the heading tells its end.
 */
export function Timer({
  open: { phase, frame },
  small,
}: {
  readonly open: OpenFrame;
  readonly small?: boolean;
}) {
  const { outing: words, format } = useWords();
  const { state } = useRun();
  const size = small ? 'timer small' : 'timer';
  const name = rigText(state.gear, frame.planned.rig);
  switch (phase.phase) {
    case 'lead-in':
      return (
        <div class={size} role="timer" aria-live="off" aria-label={name}>
          <Count text={format.duration(shown(phase.leftS))} />
          <p>{words.open.leadIn}</p>
        </div>
      );
    case 'running':
    case 'held-open': {
      const over = phase.leftS < 0;
      return (
        <div class={size} role="timer" aria-live="off" aria-label={name}>
          <Count
            text={format.duration(over ? duration(Math.floor(-phase.leftS)) : shown(phase.leftS))}
          />
          <p>
            {over ? words.open.over : words.open.running}{' '}
            {words.open.ofTime(format.duration(phase.ofS))}
          </p>
          {frame.lateS !== null && <p>{words.open.missed(format.duration(frame.lateS))}</p>}
          <progress value={Math.max(0, Math.min(1, 1 - phase.leftS / phase.ofS))} max={1}>
            {format.duration(shown(phase.leftS))}
          </progress>
        </div>
      );
    }
    case 'to-record':
      return (
        <div class={size} role="timer" aria-live="off" aria-label={name}>
          <p>{words.open.late(format.duration(duration(phase.closedSinceS)))}</p>
          {frame.lateS !== null && <p>{words.open.missed(format.duration(frame.lateS))}</p>}
        </div>
      );
    case 'unknown':
      return <p>{words.open.unknown}</p>;
    case 'recorded':
      return null;
    default:
      return phase satisfies never;
  }
}
