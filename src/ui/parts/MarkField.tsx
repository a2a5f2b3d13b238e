import { useId } from 'preact/hooks';
import { parseMark } from '../../gear/decimal.ts';
import { isRefusal } from '../../science/refusal.ts';
import { faultWords } from '../words/faults.ts';
import { useWords } from '../words/words.ts';
import { describedBy, Field } from './Field.tsx';
import { useDraft } from './useDraft.ts';

interface Props {
  readonly label: string;
  /** As the body shows it; '' = none yet. */
  readonly value: string;
  readonly unit?: string;
  readonly hint?: string;
  /** Takes the mark in the spelling that is stored; returns one sentence to refuse it. */
  readonly onCommit: (mark: string) => string | null;
}

/** A position of a dial, typed. `<MarkField label="Widest" value={dial.widest} onCommit={…} />` */
export function MarkField({ label, value, unit, hint, onCommit }: Props) {
  const words = useWords();
  const id = useId();
  const { fault, text, ...events } = useDraft(value, (typed) => {
    if (typed.trim() === '') return words.parts.needed;
    const mark = parseMark(typed);
    return isRefusal(mark)
      ? faultWords(words).fault({ refused: true, rule: mark.rule, path: '', params: {} })
      : onCommit(mark);
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
