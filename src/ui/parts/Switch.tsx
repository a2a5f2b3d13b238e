import './Switch.css';

interface Props {
  readonly label: string;
  readonly hint?: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
}

/** On or off, at once. `<Switch label="Focus survives power-off" on={…} onChange={…} />` */
export const Switch = ({ label, hint, on, onChange }: Props) => (
  <button
    type="button"
    class="switch"
    role="switch"
    aria-checked={on}
    onClick={() => onChange(!on)}
  >
    <span class="words">
      <span>{label}</span>
      {hint && <span class="hint">{hint}</span>}
    </span>
    <span class="track" aria-hidden="true">
      <span class="knob" />
    </span>
  </button>
);
