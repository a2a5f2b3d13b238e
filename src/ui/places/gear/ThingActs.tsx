import { Button } from '../../parts/Button.tsx';
import { useWords } from '../../words/words.ts';

/** Copy and delete, at the foot of a thing's screen. Delete can be undone. */
export function ThingActs({
  onCopy,
  onDelete,
}: {
  readonly onCopy?: () => void;
  readonly onDelete: () => void;
}) {
  const { gear } = useWords();
  return (
    <div class="acts">
      {onCopy && <Button onPress={onCopy}>{gear.copy}</Button>}
      <Button onPress={onDelete}>{gear.delete}</Button>
    </div>
  );
}
