import { useApp } from '../shell/useApp.ts';
import { useWords } from '../words/words.ts';
import { Button } from './Button.tsx';
import { Icon } from './Icon.tsx';
import './UndoBar.css';

/** Says what was just deleted, and takes it back. It stands in the frame of the app; no place draws it. */
export function UndoBar() {
  const { undo } = useApp();
  const { parts } = useWords();
  const last = undo.last.value;
  return (
    <div role="status">
      {last && (
        <div class="undo-bar">
          <p>{parts.deed(last.deed)}</p>
          <Button onPress={() => undo.take()}>{parts.undo}</Button>
          <button
            type="button"
            class="icon-button"
            aria-label={parts.dismiss}
            onClick={() => undo.dismiss()}
          >
            <Icon name="close" />
          </button>
        </div>
      )}
    </div>
  );
}
