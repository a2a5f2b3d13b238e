import { useWords } from '../words/words.ts';
import './Figure.css';

interface Props {
  readonly label: string;
  /** As written, with its unit; null = unknown, and said so. */
  readonly value: string | null;
  readonly note?: string;
}

/** A labelled figure. Several stand in `<Figures>`. `<Figure label="Crop ratio" value="0.79" />` */
export function Figure({ label, value, note }: Props) {
  const { parts } = useWords();
  return (
    <div class="figure">
      <dt>{label}</dt>
      <dd class={value === null ? 'unknown' : 'value'}>{value ?? parts.unknown}</dd>
      {note && <dd class="hint">{note}</dd>}
    </div>
  );
}
