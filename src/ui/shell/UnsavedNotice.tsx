import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { NotSavedNotice } from '../places/outing/NotSavedNotice.tsx';
import { useWords } from '../words/words.ts';
import { useApp } from './useApp.ts';

/**
 * Says that what was edited is not on the device yet, and offers to try again; the same of the
 * outing in hand, which says it itself where it is on the screen.
 */
export function UnsavedNotice() {
  const { navigation, saving } = useApp();
  const { shell } = useWords();
  const state = saving.state.value;
  return (
    <>
      {navigation.at.value.place !== 'outing' && <NotSavedNotice />}
      {state.kind === 'not-saved' && (
        <Notice urgent acts={<Button onPress={saving.retry}>{shell.saveAgain}</Button>}>
          {shell.notSaved[state.fault.kind]}
        </Notice>
      )}
    </>
  );
}
