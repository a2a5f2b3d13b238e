import { Button } from '../../parts/Button.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useWords } from '../../words/words.ts';
import { useRun } from './useRun.ts';

/** Takes the newest tap back; on every screen of the run, for as long as it lasts. */
export function UndoButton() {
  const { desk, undo } = useRun();
  const { outing: words } = useWords();
  const nothing = (desk.journal.value?.undoable.value.length ?? 0) === 0;
  return (
    <Button field disabled={nothing} onPress={() => void undo()}>
      <Icon name="undo" />
      {words.undo}
    </Button>
  );
}

/** Undo and extra shot: on every step, beside 'more'. */
export function SideActs() {
  const { state, tap } = useRun();
  const { outing: words } = useWords();
  // An extra shot is of the rig that stands there, or, side by side, of the one used last.
  const rig = state.mounted.length === 1 ? state.mounted[0] : state.made.at(-1)?.planned.rig;
  return (
    <>
      <UndoButton />
      <Button
        field
        name={words.extra}
        disabled={rig === undefined}
        onPress={() => rig && void tap({ tap: 'extra-shot', rig })}
      >
        <Icon name="plus" />
        {words.extraShort}
      </Button>
    </>
  );
}
