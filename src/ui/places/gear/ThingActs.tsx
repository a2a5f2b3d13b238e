import { Button } from '../../parts/Button.tsx';
import { useGearWords } from '../../words/gear.ts';

/** Copy and delete, at the foot of a thing's screen. Delete can be undone. */
export function ThingActs({
  onCopy,
  onDelete,
}: {
  readonly onCopy?: () => void;
  readonly onDelete: () => void;
}) {
  const { gear } = useGearWords();
  return (
    <div class="acts">
      {onCopy && <Button onPress={onCopy}>{gear.copy}</Button>}
      <Button onPress={onDelete}>{gear.delete}</Button>
    </div>
  );
}
