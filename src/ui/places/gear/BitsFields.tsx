import type { Bits } from '../../../gear/body.ts';
import { BODY_DEFAULTS } from '../../../gear/defaults.ts';
import { Disclosure } from '../../parts/Disclosure.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useGearWords } from '../../words/gear.ts';
import { same } from './same.ts';

/** The bit depth of the raw file and what lowers it. `onChange` returns one sentence to refuse it. */
export function BitsFields({
  bits,
  onChange,
}: {
  readonly bits: Bits;
  readonly onChange: (bits: Bits) => string | null;
}) {
  const { gear } = useGearWords();
  return (
    <Disclosure
      label={gear.bits}
      stated={gear.bitsStated(bits.depth, bits.loweredBy)}
      isDefault={same(bits, BODY_DEFAULTS.bits)}
    >
      <NumberField
        label={gear.depth}
        unit={gear.bit}
        value={bits.depth}
        onCommit={(depth) => onChange({ ...bits, depth })}
      />
      <TextField
        label={gear.loweredBy}
        hint={gear.loweredByHint}
        value={bits.loweredBy}
        onCommit={(loweredBy) => onChange({ ...bits, loweredBy: loweredBy.trim() })}
      />
    </Disclosure>
  );
}
