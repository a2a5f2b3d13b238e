import type { ComponentChildren } from 'preact';
import './Split.css';

interface Props {
  /** An outer `Screen`. */
  readonly list: ComponentChildren;
  /** An inner `Screen`; null = nothing is open. */
  readonly detail: ComponentChildren;
  /** What a wide screen says while nothing is open. */
  readonly hint: string;
}

/** List and detail: one over the other on a narrow screen, side by side on a wide one. */
export const Split = ({ list, detail, hint }: Props) => (
  <div class={`split${detail ? ' open' : ''}`}>
    <div class="split-list">{list}</div>
    <div class="split-detail">{detail ?? <p class="split-hint">{hint}</p>}</div>
  </div>
);
