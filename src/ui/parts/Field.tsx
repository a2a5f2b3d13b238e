import type { ComponentChildren } from 'preact';
import './Field.css';

interface Props {
  readonly id: string;
  readonly label: string;
  /** Stands at the right of the box: 'mm', 'stop'. */
  readonly unit?: string | undefined;
  /** One line under the label, always there. */
  readonly hint?: string | undefined;
  /** One sentence when the field was left with something wrong in it. */
  readonly fault?: string | null;
  readonly children: ComponentChildren;
}

/** The label, unit, hint and fault around an input; the input carries `id` and `describedBy(id)`. */
export function Field({ id, label, unit, hint, fault, children }: Props) {
  return (
    <div class={`field-box${fault ? ' wrong' : ''}`}>
      <label for={id}>{label}</label>
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div class="line">
        {children}
        {unit && <span class="unit">{unit}</span>}
      </div>
      <p class="fault" id={`${id}-fault`} role="alert">
        {fault}
      </p>
    </div>
  );
}

/** The ids that describe the input within a `Field`. */
export const describedBy = (id: string, hint?: string): string =>
  hint ? `${id}-hint ${id}-fault` : `${id}-fault`;
