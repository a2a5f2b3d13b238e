import { useWords } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import './MarkStepper.css';

interface Props {
  /** What the dial is: 'ISO'. */
  readonly label: string;
  /** The positions in the order in which the dial clicks through them. */
  readonly marks: readonly string[];
  /** Where it stands; -1 = off the dial. */
  readonly at: number;
  /** How a mark is written: `format.timeMark`. */
  readonly write: (mark: string) => string;
  /** Said below, e.g. what it was planned to be. */
  readonly note?: string;
  readonly onTurn: (to: number) => void;
}

/**
 * A dial that is clicked: minus, the mark in large figures with its neighbours as on the dial, plus.
 * `<MarkStepper label="ISO" marks={marks} at={3} write={format.isoMark} onTurn={setAt} />`
 */
export function MarkStepper({ label, marks, at, write, note, onTurn }: Props) {
  const { parts } = useWords();
  const mark = marks[at];
  const turn = (by: number) => {
    const to = Math.min(Math.max(at + by, 0), marks.length - 1);
    if (to !== at) onTurn(to);
  };
  const turnByKey = (event: KeyboardEvent) => {
    const by = { ArrowUp: 1, ArrowRight: 1, ArrowDown: -1, ArrowLeft: -1 }[event.key];
    const end = { Home: -marks.length, End: marks.length }[event.key];
    const way = by ?? end;
    if (way === undefined) return;
    event.preventDefault();
    turn(way);
  };
  return (
    <div class="mark-stepper">
      <p class="name" aria-hidden="true">
        {label}
      </p>
      <button
        type="button"
        class="click"
        aria-label={parts.clickDown(label)}
        disabled={at <= 0}
        onClick={() => turn(-1)}
      >
        <Icon name="minus" />
      </button>
      <div
        class="window"
        role="spinbutton"
        tabIndex={0}
        aria-label={label}
        aria-valuemin={0}
        aria-valuemax={marks.length - 1}
        aria-valuenow={Math.max(at, 0)}
        aria-valuetext={mark === undefined ? parts.unknown : write(mark)}
        onKeyDown={turnByKey}
      >
        <span class="mark">{mark === undefined ? parts.unknown : write(mark)}</span>
        <span class="scale" aria-hidden="true">
          <span>{marks[at - 1]}</span>
          <span class="index" />
          <span>{marks[at + 1]}</span>
        </span>
      </div>
      <button
        type="button"
        class="click"
        aria-label={parts.clickUp(label)}
        disabled={at >= marks.length - 1}
        onClick={() => turn(1)}
      >
        <Icon name="plus" />
      </button>
      {note && <p class="note">{note}</p>}
    </div>
  );
}
