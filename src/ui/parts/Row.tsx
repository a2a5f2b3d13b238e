import type { ComponentChildren } from 'preact';
import { Icon } from './Icon.tsx';
import './Row.css';

interface Props {
  readonly title: string;
  /** Stands before the title: `<RigSign …/>`. */
  readonly sign?: ComponentChildren;
  /** Stands after the title: `<InventedTag />`. */
  readonly tag?: ComponentChildren;
  readonly note?: ComponentChildren;
  /** It is the one whose detail is open beside the list. */
  readonly current?: boolean;
  readonly onPress: () => void;
}

/** A line of a list that opens its detail. Rows stand in a `<ul class="rows">`, each in an `<li>`. */
export const Row = ({ title, sign, tag, note, current, onPress }: Props) => (
  <button type="button" class="row" aria-current={current ? 'true' : undefined} onClick={onPress}>
    {sign}
    <span class="words">
      <span class="title">
        <span>{title}</span>
        {tag}
      </span>
      {note && <span class="hint">{note}</span>}
    </span>
    <Icon name="onward" />
  </button>
);
