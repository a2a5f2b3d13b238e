import { useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { Sheet } from '../../parts/Sheet.tsx';
import { Switch } from '../../parts/Switch.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

/** A note in one tap from the usual ones; own words for whoever can type. */
export function NoteSheet({ onClose }: { readonly onClose: () => void }) {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  const last = state.made.at(-1);
  const [aboutLast, setAboutLast] = useState(last !== undefined);
  const save = async (text: string) => {
    onClose();
    await tap({ tap: 'note', text, made: (aboutLast && last?.id) || null });
  };
  return (
    <Sheet title={words.note.title} onClose={onClose}>
      {last && <Switch label={words.note.aboutLast} on={aboutLast} onChange={setAboutLast} />}
      <div class="more">
        {words.note.ready.map((text) => (
          <Button key={text} field onPress={() => void save(text)}>
            {text}
          </Button>
        ))}
      </div>
      <TextField
        label={words.note.own}
        value=""
        long
        onCommit={(text) => {
          if (text.trim() !== '') void save(text);
          return null;
        }}
      />
    </Sheet>
  );
}
