import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';
import './Choice.css';

interface Option<T> {
  readonly value: T;
  readonly label: ComponentChildren;
  /** A second line: what it means. */
  readonly note?: string;
}

interface Props<T> {
  readonly label: string;
  readonly options: readonly Option<T>[];
  /** null = nothing chosen yet. */
  readonly value: T | null;
  /** 'row' (default) wraps short words; 'list' is one below the other, for words with a note. */
  readonly as?: 'row' | 'list';
  readonly field?: boolean;
  readonly onChange: (value: T) => void;
}

/**
 * One of a few. The chosen one has a filled ring, a heavy frame and bold words.
 * `<Choice label="Step" options={steps} value={dial.step} onChange={setStep} />`
 */
export function Choice<T extends string | number>(props: Props<T>) {
  const { label, options, value, as = 'row', field, onChange } = props;
  const name = useId();
  return (
    <fieldset class={`choice${as === 'list' ? ' listed' : ''}${field ? ' field' : ''}`}>
      <legend>{label}</legend>
      <div class="options">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span class="words">
              <span class="word">{option.label}</span>
              {option.note && <span class="hint">{option.note}</span>}
            </span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
