import type { ComponentChildren } from 'preact';
import './Notice.css';

interface Props {
  /** Read out at once. Leave it off for what is only good to know. */
  readonly urgent?: boolean;
  /** Acts that help, as buttons. */
  readonly acts?: ComponentChildren;
  readonly children: ComponentChildren;
}

/**
 * One sentence: what happened, what is safe, what to do.
 * `<Notice urgent acts={<Button …>Save again</Button>}>Not saved yet: the phone is full. …</Notice>`
 */
export const Notice = ({ urgent, acts, children }: Props) => (
  <div class="notice" role={urgent ? 'alert' : 'note'}>
    <p>{children}</p>
    {acts && <div class="acts">{acts}</div>}
  </div>
);
