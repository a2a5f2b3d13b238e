import type { DarkFrame } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { type Seconds, seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { useGearWords } from '../../words/gear.ts';
import { same } from './same.ts';

/** Where 'from a time on' starts until the owner writes the body's own time. */
const FROM = seconds(8);

/** When the body takes a closed frame by itself. `onChange` returns one sentence to refuse it. */
export function DarkFrameFields({
  rule,
  onChange,
}: {
  readonly rule: DarkFrame;
  readonly onChange: (rule: DarkFrame) => string | null;
}) {
  const { format, gear } = useGearWords();
  const fromS = rule.kind === 'from' ? rule.fromS : FROM;
  return (
    <Disclosure
      label={gear.darkFrame}
      stated={gear.darkFrameStated(rule.kind, format.timeMark(format.plain(fromS)))}
      isDefault={same(rule, BODY_DEFAULTS.darkFrame)}
    >
      <p>{gear.darkFrameHint}</p>
      <Choice
        label={gear.darkFrame}
        options={gear.darkFrameKinds}
        value={rule.kind}
        onChange={(kind) => onChange(kind === 'from' ? { kind, fromS } : { kind })}
      />
      {rule.kind === 'from' && (
        <NumberField
          label={gear.darkFrameFrom}
          unit={gear.seconds}
          value={fromS}
          onCommit={(from) => onChange({ kind: 'from', fromS: from as Seconds })}
        />
      )}
    </Disclosure>
  );
}
