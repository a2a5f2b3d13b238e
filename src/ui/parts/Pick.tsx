import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { useWords } from '../words/words.ts';
import { Field } from './Field.tsx';
import { Icon } from './Icon.tsx';
import './Pick.css';
import { Sheet } from './Sheet.tsx';

interface Option<T> {
  readonly value: T;
  readonly label: string;
}

interface Props<T> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  readonly value: T;
  readonly hint?: string;
  /** Returns one sentence to refuse the choice, null if taken. */
  readonly onPick: (value: T) => string | null;
}

/**
 * One of many, chosen from a sheet: the system's own list would be white.
 * `<Pick label="Lowest" options={marks} value={dial.lowest} onPick={setLowest} />`
 */
export function Pick<T extends string | number | null>(props: Props<T>) {
  const { label, options, value, hint, onPick } = props;
  const { parts } = useWords();
  const id = useId();
  const [open, setOpen] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const shown = options.find((option) => option.value === value)?.label ?? parts.unknown;
  return (
    <>
      <Field id={id} label={label} hint={hint} fault={fault}>
        <button
          id={id}
          type="button"
          class="pick"
          aria-haspopup="dialog"
          aria-label={`${label}: ${shown}`}
          onClick={() => setOpen(true)}
        >
          {shown}
          <Icon name="down" />
        </button>
      </Field>
      {open && (
        <Sheet title={label} onClose={() => setOpen(false)}>
          <Options
            options={options}
            value={value}
            onPick={(picked) => {
              setFault(onPick(picked));
              setOpen(false);
            }}
          />
        </Sheet>
      )}
    </>
  );
}

function Options<T extends string | number | null>({
  options,
  value,
  onPick,
}: {
  readonly options: readonly Option<T>[];
  readonly value: T;
  readonly onPick: (value: T) => void;
}) {
  const chosen = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    chosen.current?.focus();
    chosen.current?.scrollIntoView({ block: 'center' });
  }, []);
  return (
    <ul class="pick-options">
      {options.map((option) => (
        <li key={option.value}>
          <button
            ref={option.value === value ? chosen : null}
            type="button"
            aria-pressed={option.value === value}
            onClick={() => onPick(option.value)}
          >
            {option.label}
            {option.value === value && <Icon name="tick" />}
          </button>
        </li>
      ))}
    </ul>
  );
}
