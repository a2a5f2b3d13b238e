import { useState } from 'preact/hooks';
import { LANGUAGES } from '../../app/preferences.ts';
import { Button } from '../parts/Button.tsx';
import { Notice } from '../parts/Notice.tsx';
import { useFirstStartWords } from '../words/firstStart.ts';
import { LANGUAGE_NAMES } from '../words/languageNames.ts';
import { useWords } from '../words/words.ts';
import './FirstStart.css';
import { NightSwitch } from './NightSwitch.tsx';
import { useApp } from './useApp.ts';
import { useLanguage } from './useLanguage.ts';

/** The first screen: what the tool does, and the ways in. */
export function FirstStart() {
  const app = useApp();
  const { shell } = useWords();
  const { language, missing, choose } = useLanguage();
  const say = useFirstStartWords();
  const [practice, setPractice] = useState<'here' | 'coming' | 'missing'>('here');
  const tryPractice = () => {
    setPractice('coming');
    app.tryPractice().catch(() => setPractice('missing'));
  };
  return (
    <main class="first-start">
      <Formats />
      <h1>{shell.appName}</h1>
      <p class="does">{say.does}</p>
      {app.installFirst ? (
        <Notice>{say.installFirst}</Notice>
      ) : (
        <div class="ways">
          {practice === 'missing' && <Notice urgent>{shell.partMissing}</Notice>}
          <Button rank="main" busy={practice === 'coming'} onPress={tryPractice}>
            {say.tryPractice}
          </Button>
          <Button field onPress={app.beginWithOwnBody}>
            {say.addBody}
          </Button>
          <Button rank="quiet" onPress={app.beginWithBackup}>
            {say.restore}
          </Button>
        </div>
      )}
      {missing && <Notice urgent>{shell.partMissing}</Notice>}
      <div class="tastes">
        <NightSwitch />
        {LANGUAGES.filter((other) => other !== language).map((other) => (
          <Button key={other} rank="quiet" onPress={() => choose(other)}>
            {LANGUAGE_NAMES[other]}
          </Button>
        ))}
      </div>
    </main>
  );
}

/** Frames of different format over one horizon, to scale with one another. */
const Formats = () => (
  <svg class="formats" viewBox="0 0 240 132" aria-hidden="true">
    <path d="M0 130H240" />
    <path d="M8 130V9H169V130M70 130V42H202V130M158 130V82H222V130" />
  </svg>
);
