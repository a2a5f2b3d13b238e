import { useId } from 'preact/hooks';
import { parseDecimal } from '../../gear/decimal.ts';
import { isRefusal } from '../../science/refusal.ts';
import { useWords } from '../words/words.ts';
import { describedBy, Field } from './Field.tsx';
import { useDraft } from './useDraft.ts';

interface Shared {
  readonly label: string;
  /** null shows an empty field. */
  readonly value: number | null;
  readonly unit?: string;
  readonly hint?: string;
}

type Props = Shared &
  (
    | {
        readonly optional?: false;
        /** Takes the number when the field is left; returns one sentence to refuse it. */
        readonly onCommit: (value: number) => string | null;
      }
    | {
        /** The field may be emptied: null = not known. */
        readonly optional: true;
        readonly onCommit: (value: number | null) => string | null;
      }
  );

/**
 * A number with comma or point, no spinner. It refuses what is no number by itself; what the number
 * may be is for `onCommit` to say. `<NumberField label="Width" unit="mm" value={36} onCommit={…} />`
 */
export function NumberField(props: Props) {
  const { label, value, unit, hint } = props;
  const { format, parts } = useWords();
  const id = useId();
  // No grouping in a field: what stands in it must be readable back.
  const kept = value === null ? '' : format.plain(value).replaceAll('\u00a0', '');
  const { fault, text, ...events } = useDraft(kept, (typed) => {
    if (typed.trim() === '') return props.optional ? props.onCommit(null) : parts.needed;
    const number = parseDecimal(typed);
    return isRefusal(number) ? parts.notANumber : props.onCommit(number);
  });
  return (
    <Field id={id} label={label} unit={unit} hint={hint} fault={fault}>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={text}
        aria-invalid={fault !== null}
        aria-describedby={describedBy(id, hint)}
        {...events}
      />
    </Field>
  );
}
