import type { ComponentChildren } from 'preact';
import { Icon } from './Icon.tsx';
import './Tick.css';

interface Props {
  readonly checked: boolean;
  /** 64 px for the field. */
  readonly field?: boolean;
  readonly onChange: (checked: boolean) => void;
  readonly children: ComponentChildren;
}

/** A line to tick off. `<Tick checked={done} onChange={setDone}>Hood on</Tick>` */
export const Tick = ({ checked, field, onChange, children }: Props) => (
  <label class={`tick${field ? ' field' : ''}`}>
    <input
      type="checkbox"
      checked={checked}
      onChange={(event) => onChange(event.currentTarget.checked)}
    />
    <span class="box" aria-hidden="true">
      <Icon name="tick" />
    </span>
    <span>{children}</span>
  </label>
);
