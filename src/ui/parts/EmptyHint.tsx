import type { ComponentChildren } from 'preact';
import './EmptyHint.css';

interface Props {
  /** Says what is not here and what to do next. */
  readonly children: ComponentChildren;
  readonly acts?: ComponentChildren;
}

/** An empty list. `<EmptyHint acts={<Button …>Add a body</Button>}>No body yet. …</EmptyHint>` */
export const EmptyHint = ({ children, acts }: Props) => (
  <div class="empty-hint">
    <p>{children}</p>
    {acts && <div class="acts">{acts}</div>}
  </div>
);
