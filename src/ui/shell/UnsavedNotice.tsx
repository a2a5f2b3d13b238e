import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { useWords } from '../words/words.ts';
import { useApp } from './useApp.ts';

/** Says that what was edited is not on the device yet, and offers to try again. */
export function UnsavedNotice() {
  const { saving } = useApp();
  const { shell } = useWords();
  const state = saving.state.value;
  if (state.kind !== 'not-saved') return null;
  return (
    <Notice urgent acts={<Button onPress={saving.retry}>{shell.saveAgain}</Button>}>
      {shell.notSaved[state.fault.kind]}
    </Notice>
  );
}
