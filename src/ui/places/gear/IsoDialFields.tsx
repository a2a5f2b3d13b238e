import { isoOnStep } from '../../../app/dialSteps.ts';
import type { IsoDial } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { ISO_MARKS } from '../../../science/dialMarks.ts';
import { isoPositions } from '../../../science/dials.ts';
import { isRefusal } from '../../../science/refusal.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { Pick } from '../../parts/Pick.tsx';
import { useGearWords } from '../../words/gear.ts';
import { MissingPositions } from './MissingPositions.tsx';
import { same } from './same.ts';

/** The ISO dial of a body. `onChange` returns one sentence to refuse it. */
export function IsoDialFields({
  dial,
  onChange,
}: {
  readonly dial: IsoDial;
  readonly onChange: (dial: IsoDial) => string | null;
}) {
  const { format, gear } = useGearWords();
  const marks = ISO_MARKS[dial.step].map((mark) => ({
    value: mark,
    label: format.number(Number(mark), 0),
  }));
  const orNone = [{ value: null, label: gear.none }, ...marks];
  const full = isoPositions({ ...dial, missing: [] });
  return (
    <Disclosure
      label={gear.iso}
      stated={
        gear.from(format.isoMark(dial.lowest), format.isoMark(dial.highest), dial.step) +
        gear.missingCount(dial.missing.length)
      }
      isDefault={same(dial, BODY_DEFAULTS.iso)}
    >
      <Choice
        label={gear.step}
        options={gear.steps}
        value={dial.step}
        onChange={(step) => onChange(isoOnStep(dial, step))}
      />
      <div class="pair">
        <Pick
          label={gear.lowest}
          options={marks}
          value={dial.lowest}
          onPick={(lowest) => onChange({ ...dial, lowest })}
        />
        <Pick
          label={gear.highest}
          options={marks}
          value={dial.highest}
          onPick={(highest) => onChange({ ...dial, highest })}
        />
      </div>
      <p>{gear.extendedHint}</p>
      <div class="pair">
        <Pick
          label={gear.extendedLowest}
          options={orNone}
          value={dial.extendedLowest}
          onPick={(extendedLowest) => onChange({ ...dial, extendedLowest })}
        />
        <Pick
          label={gear.extendedHighest}
          options={orNone}
          value={dial.extendedHighest}
          onPick={(extendedHighest) => onChange({ ...dial, extendedHighest })}
        />
      </div>
      {!isRefusal(full) && (
        <MissingPositions
          all={full.map(({ mark }) => mark)}
          missing={dial.missing}
          write={format.isoMark}
          onChange={(missing) => onChange({ ...dial, missing })}
        />
      )}
    </Disclosure>
  );
}
