import { useWords } from '../words/words.ts';
import './Figure.css';

interface Props {
  readonly label: string;
  /** As written, with its unit; null = unknown, and said so. */
  readonly value: string | null;
  /** 'plain' by default; 'large' 48 px, 'dial' 72 px for settings to dial, 'count' 96 px for the countdown. */
  readonly size?: 'plain' | 'large' | 'dial' | 'count';
  readonly note?: string;
}

/** A labelled figure. Several stand in `<Figures>`. `<Figure label="Crop ratio" value="0.79" />` */
export function Figure({ label, value, size = 'plain', note }: Props) {
  const { parts } = useWords();
  return (
    <div class={`figure ${size}`}>
      <dt>{label}</dt>
      <dd class={value === null ? 'unknown' : 'value'}>{value ?? parts.unknown}</dd>
      {note && <dd class="hint">{note}</dd>}
    </div>
  );
}
