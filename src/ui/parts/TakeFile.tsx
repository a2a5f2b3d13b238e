import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';
import { Button } from './Button.tsx';

interface Props {
  readonly onFile: (file: File) => void;
  readonly children: ComponentChildren;
}

/** Lets the user choose a file. `<TakeFile onFile={take}>Take gear from a file</TakeFile>` */
export function TakeFile({ onFile, children }: Props) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        hidden
        onChange={({ currentTarget }) => {
          const [file] = currentTarget.files ?? [];
          if (file) onFile(file);
          // The same file may be chosen again.
          currentTarget.value = '';
        }}
      />
      <Button onPress={() => input.current?.click()}>{children}</Button>
    </>
  );
}
