import { useWords } from '../words/words.ts';
import './InventedTag.css';

/** Marks what belongs to the practice outing. Stands beside the name, everywhere. */
export function InventedTag() {
  const { parts } = useWords();
  return <span class="invented-tag">{parts.invented}</span>;
}
