import { useRef } from 'preact/hooks';
import { Button } from './Button.tsx';

interface Props {
  readonly label: string;
  readonly onFile: (file: File) => void;
}

/** Lets the user choose a file. `<TakeFile label="Gear from a file" onFile={take} />` */
export function TakeFile({ label, onFile }: Props) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        aria-label={label}
        hidden
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (file) onFile(file);
          // The same file may be chosen again.
          currentTarget.value = '';
        }}
      />
      <Button onPress={() => input.current?.click()}>{label}</Button>
    </>
  );
}
