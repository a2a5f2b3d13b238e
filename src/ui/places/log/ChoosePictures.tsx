import { useRef, useState } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { usePictureWords } from '../../words/pictures.ts';

interface Props {
  readonly onChoose: (files: readonly File[]) => void;
}

/** Not in every browser, and then not offered: a folder chosen whole. */
const FOLDERS = 'webkitdirectory' in HTMLInputElement.prototype;

/** Pictures by the system's own picker, file by file or a whole folder, or dropped. */
export function ChoosePictures({ onChoose }: Props) {
  const { log, pictures: say } = usePictureWords();
  const files = useRef<HTMLInputElement>(null);
  const folder = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  const take = (input: HTMLInputElement) => {
    onChoose([...(input.files ?? [])]);
    // The same files may be chosen again.
    input.value = '';
  };
  return (
    <fieldset
      aria-label={log.pictures}
      class={`pictures-choose${over ? ' over' : ''}`}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        onChoose([...(event.dataTransfer?.files ?? [])]);
      }}
    >
      <input
        ref={files}
        type="file"
        multiple
        hidden
        aria-label={say.choose}
        onChange={({ currentTarget }) => take(currentTarget)}
      />
      <Button onPress={() => files.current?.click()}>{say.choose}</Button>
      {FOLDERS && (
        <>
          <input
            ref={(input) => {
              folder.current = input;
              input?.setAttribute('webkitdirectory', '');
            }}
            type="file"
            hidden
            aria-label={say.chooseFolder}
            onChange={({ currentTarget }) => take(currentTarget)}
          />
          <Button onPress={() => folder.current?.click()}>{say.chooseFolder}</Button>
        </>
      )}
      <p class="hint pictures-drop">{say.drop}</p>
    </fieldset>
  );
}
