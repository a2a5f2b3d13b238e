import type { Letter } from '../../gear/letter.ts';
import { useWords } from '../words/words.ts';
import './RigSign.css';

const SHAPES = {
  A: <circle cx="12" cy="12" r="8.5" />,
  B: <path d="M4.5 4.5H19.5V19.5H4.5Z" />,
  C: <path d="M12 3.5L21.5 20H2.5Z" />,
  D: <path d="M12 2L22 12L12 22L2 12Z" />,
} as const satisfies Record<Letter, unknown>;

/** A rig's letter and plain sign, as large as the text around it: `<RigSign letter="A" />` */
export function RigSign({ letter }: { readonly letter: Letter }) {
  const { parts } = useWords();
  return (
    <span class="rig-sign" role="img" aria-label={parts.rig(letter)}>
      <span aria-hidden="true">{letter}</span>
      <svg viewBox="0 0 24 24" aria-hidden="true">
        {SHAPES[letter]}
      </svg>
    </span>
  );
}
