import { timeOnStep } from '../../../app/dialSteps.ts';
import type { TimeDial } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { TIME_MARKS } from '../../../science/dialMarks.ts';
import { timePositions } from '../../../science/dials.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { MarkField } from '../../parts/MarkField.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { useGearWords } from '../../words/gear.ts';
import { MissingPositions } from './MissingPositions.tsx';
import { same } from './same.ts';

/** The timed positions of a body. `onChange` returns one sentence to refuse it. */
export function TimeDialFields({
  dial,
  onChange,
}: {
  readonly dial: TimeDial;
  readonly onChange: (dial: TimeDial) => string | null;
}) {
  const { format, gear } = useGearWords();
  const short = TIME_MARKS[dial.step]
    .filter((mark) => mark.startsWith('1/'))
    .map((mark) => ({ value: mark, label: format.timeMark(mark) }));
  const full = timePositions({ ...dial, missing: [] });
  return (
    <Disclosure
      label={gear.times}
      stated={
        gear.from(format.timeMark(dial.shortest), format.timeMark(dial.longest), dial.step) +
        gear.missingCount(dial.missing.length)
      }
      isDefault={same(dial, BODY_DEFAULTS.time)}
    >
      <div class="pair">
        <Pick
          label={gear.shortest}
          options={short}
          value={dial.shortest}
          onPick={(shortest) => onChange({ ...dial, shortest })}
        />
        <MarkField
          label={gear.longest}
          hint={gear.longestHint}
          unit={gear.seconds}
          value={dial.longest}
          onCommit={(longest) => onChange({ ...dial, longest })}
        />
      </div>
      <Choice
        label={gear.stepBelow1s}
        options={gear.steps}
        value={dial.step}
        onChange={(step) => onChange(timeOnStep(dial, step))}
      />
      <Choice
        label={gear.stepFrom1s}
        options={gear.steps}
        value={dial.stepFrom1s}
        onChange={(stepFrom1s) => onChange({ ...dial, stepFrom1s, missing: [] })}
      />
      <Choice
        label={gear.beyond30s}
        options={gear.beyond}
        value={dial.beyond30s}
        onChange={(beyond30s) => onChange({ ...dial, beyond30s, missing: [] })}
      />
      <Choice
        label={gear.longMarks}
        options={gear.longMark}
        value={dial.longMarks}
        onChange={(longMarks) => onChange({ ...dial, longMarks })}
      />
      <p>{gear.longMarksHint}</p>
      {!isRefusal(full) && (
        <MissingPositions
          all={full.map(({ mark }) => mark)}
          missing={dial.missing}
          write={format.timeMark}
          onChange={(missing) => onChange({ ...dial, missing })}
        />
      )}
    </Disclosure>
  );
}
