import type { ComponentChildren } from 'preact';
import { useEffect, useId, useLayoutEffect, useRef } from 'preact/hooks';
import { useApp } from '../shell/useApp.ts';
import { useWords } from '../words/words.ts';
import { Icon } from './Icon.tsx';
import './Sheet.css';

interface Props {
  readonly title: string;
  /** Called on Escape, on the back gesture, on the close button and on a tap beside the sheet. */
  readonly onClose: () => void;
  /** The acts at the foot, always in reach. */
  readonly acts?: ComponentChildren;
  readonly children: ComponentChildren;
}

/**
 * Our own dialog: it holds the focus and gives it back. Render it while it is open:
 * `{open && <Sheet title="Lowest ISO" onClose={() => setOpen(false)}>…</Sheet>}`
 */
export function Sheet({ title, onClose, acts, children }: Props) {
  const { parts } = useWords();
  const { navigation } = useApp();
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  useLayoutEffect(() => {
    const { current } = dialog;
    if (current === null) return;
    current.showModal();
    // Beside the sheet is its backdrop, whose clicks are the dialog's own.
    current.addEventListener('click', (event) => {
      if (event.target === current) close.current();
    });
    // Closing it before it leaves the page is what gives the focus back.
    return () => current.close();
  }, []);
  useEffect(() => navigation.hold(() => close.current()), [navigation]);
  return (
    <dialog
      ref={dialog}
      class="sheet"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <div class="sheet-body">
        <header>
          <h2 id={id}>{title}</h2>
          <button type="button" class="icon-button" aria-label={parts.close} onClick={onClose}>
            <Icon name="close" />
          </button>
        </header>
        <div class="scroll">{children}</div>
        {acts && <footer class="acts">{acts}</footer>}
      </div>
    </dialog>
  );
}
