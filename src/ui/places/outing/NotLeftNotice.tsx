import { useEffect } from 'preact/hooks';
import { Button } from '../../parts/Button.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useApp } from '../../shell/useApp.ts';
import { useSafetyCopyWords } from '../../words/safetyCopy.ts';
import { useWords } from '../../words/words.ts';

/** Reminds of the newest outing that has ended and never left this phone; the invented one may stay. */
export function NotLeftNotice() {
  const { files, log, navigation } = useApp();
  const { log: words } = useWords();
  const say = useSafetyCopyWords();
  useEffect(() => void log.refresh(), [log]);
  const line = log.outings.value?.find((one) => one.ended && !one.invented && !files.leftAt(one));
  if (!line) return null;
  return (
    <Notice
      acts={
        <Button onPress={() => navigation.go('log', line.outing, 'export')}>{words.export}</Button>
      }
    >
      {say.notLeft(line.name)}
    </Notice>
  );
}
