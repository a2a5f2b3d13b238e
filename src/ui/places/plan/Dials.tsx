import { positionsOf } from '../../../gear/positions.ts';
import type { Assembled } from '../../../gear/rig.ts';
import type { Settings } from '../../../gear/settings.ts';
import { isRefusal } from '../../../science/refusal.ts';
import type { Seconds } from '../../../science/units.ts';
import { MarkStepper } from '../../parts/MarkStepper.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { usePlanWords } from '../../words/plan.ts';

interface Props {
  readonly assembled: Assembled;
  readonly settings: Settings;
  /** Returns one sentence to refuse the settings, null if taken. */
  readonly onTurn: (settings: Settings) => string | null;
}

/** Stands on the time dial after its last position. */
const BULB = 'bulb';

/** The dials of one rig: f-number, time with bulb where the body has it, ISO. */
export function Dials({ assembled: { rig, body, lens }, settings, onTurn }: Props) {
  const { format, plan } = usePlanWords();
  const positions = positionsOf(body, lens);
  // The problem that stands beside the rig says so.
  if (isRefusal(positions)) return null;
  const marksOf = (dial: readonly { readonly mark: string }[]) => dial.map(({ mark }) => mark);
  const fMarks = marksOf(positions.fNumbers);
  const isoMarks = marksOf(positions.isos);
  const { bulb } = body;
  const timeMarks = marksOf(positions.times);
  const withBulb = bulb.kind === 'none' ? timeMarks : [...timeMarks, BULB];
  const { time } = settings;

  const turnTime = (to: number) => {
    const mark = timeMarks[to];
    if (mark !== undefined) onTurn({ ...settings, time: { kind: 'dial', mark } });
    else if (bulb.kind !== 'none') {
      const longest = positions.times.at(-1)?.exact ?? 0;
      const held = Math.min(2 * longest, bulb.longestS) as Seconds;
      onTurn({ ...settings, time: { kind: 'bulb', seconds: held } });
    }
  };

  return (
    <fieldset class="dials" aria-label={plan.rigOf(rig.letter, body.name)}>
      <MarkStepper
        label={plan.fNumber}
        marks={fMarks}
        at={fMarks.indexOf(settings.fMark)}
        write={format.fMark}
        onTurn={(to) => onTurn({ ...settings, fMark: fMarks[to] ?? settings.fMark })}
      />
      <MarkStepper
        label={plan.time}
        marks={withBulb}
        at={withBulb.indexOf(time.kind === 'bulb' ? BULB : time.mark)}
        write={(mark) =>
          mark !== BULB
            ? format.timeMark(mark)
            : plan.bulb(time.kind === 'bulb' ? format.duration(time.seconds) : '')
        }
        onTurn={turnTime}
      />
      {time.kind === 'bulb' && (
        <NumberField
          label={plan.bulbTime}
          unit={plan.seconds}
          value={time.seconds}
          // The plan is parsed whole: a time that is none is refused there.
          onCommit={(held) =>
            onTurn({ ...settings, time: { kind: 'bulb', seconds: held as Seconds } })
          }
        />
      )}
      <MarkStepper
        label={plan.iso}
        marks={isoMarks}
        at={isoMarks.indexOf(settings.isoMark)}
        // The label says ISO; the figure needs the room.
        write={(mark) => format.plain(Number(mark))}
        onTurn={(to) => onTurn({ ...settings, isoMark: isoMarks[to] ?? settings.isoMark })}
      />
    </fieldset>
  );
}
