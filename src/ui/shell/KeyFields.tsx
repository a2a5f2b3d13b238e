import { useLayoutEffect, useState } from 'preact/hooks';
import { givesHeadset } from '../../app/headset.ts';
import { Button } from '../parts/Button.tsx';
import { Switch } from '../parts/Switch.tsx';
import { useCueFieldWords } from '../words/cueFields.ts';
import { holdWhileTapped, KEYS } from './mainActKeys.ts';
import { useApp } from './useApp.ts';

/** A trial of keys and remotes: not asked for, waiting for a press, or what came of it. */
type Trial = 'none' | 'waiting' | { readonly came: string };

/** Whether keys, presenter remotes and a headset press the one act of a run; a trial of each. */
export function KeyFields() {
  const { preferences } = useApp();
  const say = useCueFieldWords();
  const { keys, headset } = preferences.current.value;
  const [trial, setTrial] = useState<Trial>('none');
  const waiting = trial === 'waiting';
  useLayoutEffect(() => {
    if (!waiting) return;
    const onKey = (event: KeyboardEvent) => {
      event.preventDefault();
      event.stopImmediatePropagation();
      const name = event.key === ' ' ? say.space : event.key;
      setTrial({ came: say.came(name, KEYS.includes(event.key)) });
    };
    const letGo = headset ? holdWhileTapped(() => setTrial({ came: say.headsetCame })) : undefined;
    addEventListener('keydown', onKey, true);
    return () => {
      removeEventListener('keydown', onKey, true);
      letGo?.();
    };
  }, [waiting, headset, say]);
  return (
    <>
      <h3>{say.keysTitle}</h3>
      <div class="cue-line">
        <Switch
          label={say.keys}
          hint={say.keysHint}
          on={keys}
          onChange={(on) => preferences.change({ keys: on })}
        />
        <Button field name={say.tryNamed(say.keysTitle)} onPress={() => setTrial('waiting')}>
          {say.tryIt}
        </Button>
        <p role="status">{waiting ? say.pressNow : trial !== 'none' && trial.came}</p>
      </div>
      {givesHeadset() ? (
        <Switch
          label={say.headset}
          hint={say.headsetHint}
          on={headset}
          onChange={(on) => preferences.change({ headset: on })}
        />
      ) : (
        <p>{say.noHeadset}</p>
      )}
    </>
  );
}
