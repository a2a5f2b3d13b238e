import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';
import { useWords } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import './Disclosure.css';

interface Props {
  readonly label: string;
  /** What stands inside, in a few words: '100 to 51 200, thirds'. */
  readonly stated: string;
  /** True while it is still the stated default, which is then said. */
  readonly isDefault?: boolean;
  readonly children: ComponentChildren;
}

/**
 * A group of fields with a stated value that can be opened and changed.
 * `<Disclosure label="ISO dial" stated="100 to 51 200, thirds" isDefault>…</Disclosure>`
 */
export function Disclosure({ label, stated, isDefault, children }: Props) {
  const { parts } = useWords();
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <div class="disclosure">
      <button
        type="button"
        class="opener"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => setOpen(!open)}
      >
        <span class="words">
          <span class="label">{label}</span>
          <span class="stated">{stated}</span>
          {isDefault && <span class="hint">{parts.asStated}</span>}
        </span>
        <Icon name={open ? 'up' : 'down'} />
      </button>
      <fieldset class="inside" id={id} aria-label={label} hidden={!open}>
        {open && children}
      </fieldset>
    </div>
  );
}
