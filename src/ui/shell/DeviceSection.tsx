import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Section } from '../parts/Section.tsx';
import { Switch } from '../parts/Switch.tsx';
import { useWords } from '../words/words.ts';
import { useApp } from './useApp.ts';

/** What holds for this device: a newer version, ready for offline, storage, the dimmed figures. */
export function DeviceSection() {
  const { preferences, readiness, updateOffered, applyUpdate, version } = useApp();
  const { shell } = useWords();
  const keeping = readiness.keeping.value;
  const { dim, bySun } = preferences.current.value;
  return (
    <Section title={shell.device}>
      {updateOffered.value && (
        <Notice acts={<Button onPress={applyUpdate}>{shell.takeUpdate}</Button>}>
          {shell.updateWaits}
        </Notice>
      )}
      <p role="status">{shell.offline[readiness.offline.value]}</p>
      <p>{shell.keeping[keeping]}</p>
      {keeping === 'may-be-cleared' && (
        <div class="acts">
          <Button onPress={readiness.askToKeep}>{shell.askToKeep}</Button>
        </div>
      )}
      <Switch
        label={shell.bySun}
        hint={shell.bySunHint}
        on={bySun}
        onChange={(on) => preferences.change({ bySun: on })}
      />
      <Switch
        label={shell.dim}
        hint={shell.dimHint}
        on={dim}
        onChange={(on) => preferences.change({ dim: on })}
      />
      <p>{shell.version(version)}</p>
    </Section>
  );
}
