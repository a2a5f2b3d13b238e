import { useState } from 'preact/hooks';
import { Button } from '../parts/Button.tsx';
import { Pick } from '../parts/Pick.tsx';
import { Section } from '../parts/Section.tsx';
import { Switch } from '../parts/Switch.tsx';
import { useCueFieldWords } from '../words/cueFields.ts';
import './CueSection.css';
import { KeyFields } from './KeyFields.tsx';
import { useApp } from './useApp.ts';

/** How the moments of an exposure are told on this device. */
export function CueSection() {
  const say = useCueFieldWords();
  return (
    <Section title={say.title}>
      <CueFields />
    </Section>
  );
}

type Channel = 'sound' | 'vibration' | 'speech';
type Answer = 'done' | 'needs-tap' | 'unsupported';

/** Sound, vibration and voice, each to be chosen and tried; silence over all; keys and remotes. */
export function CueFields() {
  const { cues } = useApp();
  const say = useCueFieldWords();
  const [tried, setTried] = useState<{ channel: Channel; answer: Answer } | null>(null);
  const { sound, vibration, speech, voice, silent } = cues.choices.value;
  const voices = cues.voices();
  const attempt = (channel: Channel) => async () => {
    setTried(null);
    setTried({ channel, answer: await cues.try(channel, say.sample) });
  };
  const answerOf = (channel: Channel) => (
    <p role="status">{tried?.channel === channel && say.answer[channel][tried.answer]}</p>
  );
  return (
    <div class="cue-fields">
      <p>{say.lead}</p>
      {cues.sound.value === 'unsupported' ? (
        <p>{say.answer.sound.unsupported}</p>
      ) : (
        <div class="cue-line">
          <Switch
            label={say.sound}
            hint={say.soundHint}
            on={sound}
            onChange={(on) => cues.choose({ sound: on })}
          />
          <Button field name={say.tryNamed(say.sound)} onPress={attempt('sound')}>
            {say.tryIt}
          </Button>
          {answerOf('sound')}
        </div>
      )}
      {cues.vibrates ? (
        <div class="cue-line">
          <Switch
            label={say.vibration}
            on={vibration}
            onChange={(on) => cues.choose({ vibration: on })}
          />
          <Button field name={say.tryNamed(say.vibration)} onPress={attempt('vibration')}>
            {say.tryIt}
          </Button>
          {answerOf('vibration')}
        </div>
      ) : (
        <p>{say.noVibration}</p>
      )}
      {voices[0] ? (
        <div class="cue-line">
          <Switch
            label={say.speech}
            hint={say.speechHint}
            on={speech}
            onChange={(on) => cues.choose({ speech: on })}
          />
          <Button field name={say.tryNamed(say.speech)} onPress={attempt('speech')}>
            {say.tryIt}
          </Button>
          {answerOf('speech')}
          {voices.length > 1 && (
            <Pick
              label={say.voice}
              options={voices.map(({ id, name }) => ({ value: id, label: name }))}
              value={voices.find(({ id }) => id === voice)?.id ?? voices[0].id}
              onPick={(id) => {
                cues.choose({ voice: id });
                return null;
              }}
            />
          )}
        </div>
      ) : (
        <p>{say.noVoice}</p>
      )}
      <Switch
        label={say.silent}
        hint={say.silentHint}
        on={silent}
        onChange={(on) => cues.choose({ silent: on })}
      />
      <KeyFields />
    </div>
  );
}
