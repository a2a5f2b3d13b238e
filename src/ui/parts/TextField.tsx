import { useId } from 'preact/hooks';
import { describedBy, Field } from './Field.tsx';
import { useDraft } from './useDraft.ts';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly hint?: string;
  /** Several lines. */
  readonly long?: boolean;
  /** Takes the text when the field is left; returns one sentence to refuse it, null if taken. */
  readonly onCommit: (text: string) => string | null;
}

/** A line or box of text. `<TextField label="Name" value={body.name} onCommit={rename} />` */
export function TextField({ label, value, hint, long, onCommit }: Props) {
  const id = useId();
  const { fault, text, onKeyDown, ...events } = useDraft(value, onCommit);
  const shared = {
    id,
    value: text,
    autocomplete: 'off',
    spellcheck: false,
    'aria-invalid': fault !== null,
    'aria-describedby': describedBy(id, hint),
    ...events,
  } as const;
  return (
    <Field id={id} label={label} hint={hint} fault={fault}>
      {long ? <textarea {...shared} /> : <input type="text" {...shared} onKeyDown={onKeyDown} />}
    </Field>
  );
}
