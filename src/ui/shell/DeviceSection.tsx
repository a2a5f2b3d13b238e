import { LANGUAGES } from '../../app/preferences.ts';
import { Button } from '../parts/Button.tsx';
import { Choice } from '../parts/Choice.tsx';
import { Notice } from '../parts/Notice.tsx';
import { Section } from '../parts/Section.tsx';
import { Switch } from '../parts/Switch.tsx';
import { useDeviceWords } from '../words/device.ts';
import { LANGUAGE_NAMES } from '../words/languageNames.ts';
import { useWords } from '../words/words.ts';
import { useApp } from './useApp.ts';
import { useLanguage } from './useLanguage.ts';

/** What holds for this device: a newer version, ready for offline, storage, language, the dimmed figures. */
export function DeviceSection() {
  const app = useApp();
  const { preferences, readiness, updateOffered, applyUpdate, version } = app;
  const say = useDeviceWords();
  const keeping = readiness.keeping.value;
  const { language, missing, choose } = useLanguage();
  const { shell } = useWords();
  const { dim, bySun } = preferences.current.value;
  return (
    <Section title={say.title}>
      {updateOffered.value && (
        <Notice acts={<Button onPress={applyUpdate}>{say.takeUpdate}</Button>}>
          {say.updateWaits}
        </Notice>
      )}
      <p role="status">{say.offline[readiness.offline.value]}</p>
      <p>{say.keeping[keeping]}</p>
      {!app.installed && <p>{say.install[app.installFirst ? 'ios' : 'other']}</p>}
      {keeping === 'may-be-cleared' && (
        <div class="acts">
          <Button onPress={readiness.askToKeep}>{say.askToKeep}</Button>
        </div>
      )}
      <Choice
        label={say.language}
        options={LANGUAGES.map((value) => ({ value, label: LANGUAGE_NAMES[value] }))}
        value={language}
        onChange={choose}
      />
      {missing && <Notice urgent>{shell.partMissing}</Notice>}
      <Switch
        label={say.bySun}
        hint={say.bySunHint}
        on={bySun}
        onChange={(on) => preferences.change({ bySun: on })}
      />
      <Switch
        label={say.dim}
        hint={say.dimHint}
        on={dim}
        onChange={(on) => preferences.change({ dim: on })}
      />
      <p>{say.version(version)}</p>
    </Section>
  );
}
