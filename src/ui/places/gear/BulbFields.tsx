import type { Bulb } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { type Seconds, seconds } from '../../../science/units.ts';
import { Choice } from '../../parts/Choice.tsx';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { useGearWords } from '../../words/gear.ts';
import { same } from './same.ts';

/** Where a body without bulb starts from when it gets one: about what a battery bears. */
const LONGEST = seconds(3600);

/** How the body holds its shutter open. `onChange` returns one sentence to refuse it. */
export function BulbFields({
  bulb,
  onChange,
}: {
  readonly bulb: Bulb;
  readonly onChange: (bulb: Bulb) => string | null;
}) {
  const { format, gear } = useGearWords();
  const longestS = bulb.kind === 'none' ? LONGEST : bulb.longestS;
  return (
    <Disclosure
      label={gear.bulb}
      stated={gear.bulbUpTo(bulb.kind, format.duration(longestS))}
      isDefault={same(bulb, BODY_DEFAULTS.bulb)}
    >
      <Choice
        label={gear.bulb}
        as="list"
        options={gear.bulbKinds}
        value={bulb.kind}
        onChange={(kind) => onChange(kind === 'none' ? { kind } : { kind, longestS })}
      />
      {bulb.kind !== 'none' && (
        <NumberField
          label={gear.longestBulb}
          unit={gear.minutes}
          value={longestS / 60}
          onCommit={(minutes) => onChange({ ...bulb, longestS: (minutes * 60) as Seconds })}
        />
      )}
    </Disclosure>
  );
}
