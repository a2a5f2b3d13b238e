import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import './Button.css';

interface Props {
  /** 'act': the one act of a run screen, full width, 116 px. 'main': the act of any other screen. 'plain' by default; 'quiet' has no frame. */
  readonly rank?: 'act' | 'main' | 'plain' | 'quiet';
  /** For the field: 64 px, as 'main' always is; 'act' is always 116. */
  readonly field?: boolean;
  /** The accessible name where the visible words do not say it all. */
  readonly name?: string;
  readonly disabled?: boolean;
  /** Shows that the tap is being written: stays in place, takes no second tap. */
  readonly busy?: boolean;
  /** Clicks quickly one after the other are each meant: a stepper. */
  readonly rapid?: boolean;
  readonly onPress: () => void;
  readonly children: ComponentChildren;
}

/** A second tap this soon is a bounce of the finger, not a wish (common practice, no source). */
const BOUNCE_MS = 400;

/**
 * A button. `<Button rank="act" onPress={start}>Start 64 s</Button>`
 *
 * 'act' and the buttons of the field take one tap and ignore the bounce of a wet or gloved finger.
 */
export function Button(props: Props) {
  const { rank = 'plain', field, name, disabled, busy, rapid, onPress, children } = props;
  const last = useRef(Number.NEGATIVE_INFINITY);
  const press = (event: MouseEvent) => {
    if (busy) return;
    const bounced = event.timeStamp - last.current < BOUNCE_MS;
    if (bounced && !rapid && (field || rank === 'act')) return;
    last.current = event.timeStamp;
    onPress();
  };
  return (
    <button
      type="button"
      class={`button ${rank}${field ? ' field' : ''}`}
      aria-label={name}
      aria-busy={busy}
      disabled={disabled}
      onClick={press}
    >
      {children}
    </button>
  );
}
